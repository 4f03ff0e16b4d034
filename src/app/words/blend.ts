import { words } from "./en/blend";
import { inLanguage } from "./language";

export const blendWords = inLanguage(words, () => import("./de/blend"));
