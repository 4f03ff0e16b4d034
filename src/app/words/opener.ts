import { words } from "./en/opener";
import { inLanguage } from "./language";

export const openerWords = inLanguage(words, () => import("./de/opener"));
