import { words } from "./en/dataLog";
import { inLanguage } from "./language";

export const dataLogWords = inLanguage(words, () => import("./de/dataLog"));
