import { words } from "./en/doubt";
import { inLanguage } from "./language";

export const doubtWords = inLanguage(words, () => import("./de/doubt"));
