import { words } from "./en/device";
import { inLanguage } from "./language";

export const deviceWords = inLanguage(words, () => import("./de/device"));
