import { words } from "./en/codes";
import { inLanguage } from "./language";

export const codesWords = inLanguage(words, () => import("./de/codes"));
