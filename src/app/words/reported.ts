import { words } from "./en/reported";
import { inLanguage } from "./language";

export const reportedWords = inLanguage(words, () => import("./de/reported"));
