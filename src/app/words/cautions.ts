import { words } from "./en/cautions";
import { inLanguage } from "./language";

export const cautionsWords = inLanguage(words, () => import("./de/cautions"));
