import { words } from "./en/money";
import { inLanguage } from "./language";

export const moneyWords = inLanguage(words, () => import("./de/money"));
