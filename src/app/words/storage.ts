import { words } from "./en/storage";
import { inLanguage } from "./language";

export const storageWords = inLanguage(words, () => import("./de/storage"));
