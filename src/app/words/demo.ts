import { words } from "./en/demo";
import { inLanguage } from "./language";

export const demoWords = inLanguage(words, () => import("./de/demo"));
