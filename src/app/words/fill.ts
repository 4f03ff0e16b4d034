import { words } from "./en/fill";
import { inLanguage } from "./language";

export const fillWords = inLanguage(words, () => import("./de/fill"));
