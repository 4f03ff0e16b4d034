import { words } from "./en/plan";
import { inLanguage } from "./language";

export const planScreenWords = inLanguage(words, () => import("./de/plan"));
