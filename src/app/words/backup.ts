import { words } from "./en/backup";
import { inLanguage } from "./language";

export const backupWords = inLanguage(words, () => import("./de/backup"));
