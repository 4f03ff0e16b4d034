import { words } from "./en/measures";
import { inLanguage } from "./language";

export const measuresWords = inLanguage(words, () => import("./de/measures"));
