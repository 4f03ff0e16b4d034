import { words } from "./en/screens";
import { inLanguage } from "./language";

export const screenWords = inLanguage(words, () => import("./de/screens"));
