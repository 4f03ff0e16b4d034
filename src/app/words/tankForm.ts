import { words } from "./en/tankForm";
import { inLanguage } from "./language";

export const tankFormWords = inLanguage(words, () => import("./de/tankForm"));
