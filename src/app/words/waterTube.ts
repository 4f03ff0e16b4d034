import { words } from "./en/waterTube";
import { inLanguage } from "./language";

export const waterTubeWords = inLanguage(words, () => import("./de/waterTube"));
