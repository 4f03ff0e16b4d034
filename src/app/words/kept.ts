import { words } from "./en/kept";
import { inLanguage } from "./language";

export const keptWords = inLanguage(words, () => import("./de/kept"));
