import { words } from "./en/trims";
import { inLanguage } from "./language";

export const trimsWords = inLanguage(words, () => import("./de/trims"));
