import { words } from "./en/pours";
import { inLanguage } from "./language";

export const poursWords = inLanguage(words, () => import("./de/pours"));
