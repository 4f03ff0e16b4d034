import { words } from "./en/fuelSystem";
import { inLanguage } from "./language";

export const fuelSystemWords = inLanguage(words, () => import("./de/fuelSystem"));
