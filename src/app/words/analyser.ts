import { words } from "./en/analyser";
import { inLanguage } from "./language";

export const analyserWords = inLanguage(words, () => import("./de/analyser"));
