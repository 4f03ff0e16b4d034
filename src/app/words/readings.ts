import { words } from "./en/readings";
import { inLanguage } from "./language";

export const readingsWords = inLanguage(words, () => import("./de/readings"));
