import { words } from "./en/places";
import { inLanguage } from "./language";

export const placesWords = inLanguage(words, () => import("./de/places"));
