import { words } from "./en/calibration";
import { inLanguage } from "./language";

export const calibrationWords = inLanguage(words, () => import("./de/calibration"));
