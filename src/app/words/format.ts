import { words } from "./en/format";
import { inLanguage } from "./language";

export const formatWords = inLanguage(words, () => import("./de/format"));
