import { words } from "./en/car";
import { inLanguage } from "./language";

export const carWords = inLanguage(words, () => import("./de/car"));
