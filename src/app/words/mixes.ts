import { words } from "./en/mixes";
import { inLanguage } from "./language";

export const mixesWords = inLanguage(words, () => import("./de/mixes"));
