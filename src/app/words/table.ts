import { words } from "./en/table";
import { inLanguage } from "./language";

export const tableWords = inLanguage(words, () => import("./de/table"));
