import { words } from "./en/stop";
import { inLanguage } from "./language";

export const stopWords = inLanguage(words, () => import("./de/stop"));
