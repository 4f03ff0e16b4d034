import { words } from "./en/shell";
import { inLanguage } from "./language";

export const shellWords = inLanguage(words, () => import("./de/shell"));
