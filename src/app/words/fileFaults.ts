import { words } from "./en/fileFaults";
import { inLanguage } from "./language";

export const fileFaultsWords = inLanguage(words, () => import("./de/fileFaults"));
