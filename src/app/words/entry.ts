import { words } from "./en/entry";
import { inLanguage } from "./language";

export const entryScreenWords = inLanguage(words, () => import("./de/entry"));
