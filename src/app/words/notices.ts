import { words } from "./en/notices";
import { inLanguage } from "./language";

export const noticesWords = inLanguage(words, () => import("./de/notices"));
