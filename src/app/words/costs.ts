import { words } from "./en/costs";
import { inLanguage } from "./language";

export const costsWords = inLanguage(words, () => import("./de/costs"));
