import { words } from "./en/engine";
import { inLanguage } from "./language";

export const engineWords = inLanguage(words, () => import("./de/engine"));
