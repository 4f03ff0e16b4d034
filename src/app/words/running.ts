import { words } from "./en/running";
import { inLanguage } from "./language";

export const runningWords = inLanguage(words, () => import("./de/running"));
