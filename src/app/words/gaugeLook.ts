import { words } from "./en/gaugeLook";
import { inLanguage } from "./language";

export const gaugeLookWords = inLanguage(words, () => import("./de/gaugeLook"));
