import { words } from "./en/events";
import { inLanguage } from "./language";

export const eventsWords = inLanguage(words, () => import("./de/events"));
