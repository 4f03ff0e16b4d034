import { words } from "./en/methods";
import { inLanguage } from "./language";

export const methodsWords = inLanguage(words, () => import("./de/methods"));
