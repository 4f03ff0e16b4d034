import { words } from "./en/live";
import { inLanguage } from "./language";

export const liveWords = inLanguage(words, () => import("./de/live"));
