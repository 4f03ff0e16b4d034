import { words } from "./en/refusals";
import { inLanguage } from "./language";

export const refusalsWords = inLanguage(words, () => import("./de/refusals"));
