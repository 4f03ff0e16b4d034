import { words } from "./en/report";
import { inLanguage } from "./language";

export const reportWords = inLanguage(words, () => import("./de/report"));
