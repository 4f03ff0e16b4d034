import { words } from "./en/picker";
import { inLanguage } from "./language";

export const pickerWords = inLanguage(words, () => import("./de/picker"));
