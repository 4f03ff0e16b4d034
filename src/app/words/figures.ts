import { words } from "./en/figures";
import { inLanguage } from "./language";

export const figuresWords = inLanguage(words, () => import("./de/figures"));
