import { words } from "./en/why";
import { inLanguage } from "./language";

export const whyWords = inLanguage(words, () => import("./de/why"));
