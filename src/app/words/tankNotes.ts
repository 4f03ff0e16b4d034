import { words } from "./en/tankNotes";
import { inLanguage } from "./language";

export const tankNotesWords = inLanguage(words, () => import("./de/tankNotes"));
