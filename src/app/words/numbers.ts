import { words } from "./en/numbers";
import { inLanguage } from "./language";

export const numbersWords = inLanguage(words, () => import("./de/numbers"));
