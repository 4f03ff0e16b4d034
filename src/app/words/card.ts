import { words } from "./en/card";
import { inLanguage } from "./language";

export const cardWords = inLanguage(words, () => import("./de/card"));
