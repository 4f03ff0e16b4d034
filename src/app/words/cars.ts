import { words } from "./en/cars";
import { inLanguage } from "./language";

export const carsWords = inLanguage(words, () => import("./de/cars"));
