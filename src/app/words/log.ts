import { words } from "./en/log";
import { inLanguage } from "./language";

export const logScreenWords = inLanguage(words, () => import("./de/log"));
