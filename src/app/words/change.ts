import { words } from "./en/change";
import { inLanguage } from "./language";

export const changeWords = inLanguage(words, () => import("./de/change"));
