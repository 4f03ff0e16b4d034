import { words } from "./en/setup";
import { inLanguage } from "./language";

export const setupWords = inLanguage(words, () => import("./de/setup"));
