import { words } from "./en/hand";
import { inLanguage } from "./language";

export const handWords = inLanguage(words, () => import("./de/hand"));
