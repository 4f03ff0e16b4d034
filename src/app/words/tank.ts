import { words } from "./en/tank";
import { inLanguage } from "./language";

export const tankWords = inLanguage(words, () => import("./de/tank"));
