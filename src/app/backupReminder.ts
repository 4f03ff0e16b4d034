/** When to remind of a backup, and how loudly. */
import { type BackupNotes, entriesSince } from "./backupNotes";

export type Reminder = "quiet" | "strong";

export interface Standing {
	readonly notes: BackupNotes;
	/** Entries in the log now. */
	readonly entries: number;
	/** When the log begins, ms. */
	readonly begun: number;
	/** Whether the browser has promised to keep the data; null: it does not say. */
	readonly kept: boolean | null;
	/** The log should be written to a file by itself, and is not. */
	readonly stuck: boolean;
}

/** A log so short is typed again sooner than saved. */
const worthless = 3;
const dayMs = 86_400_000;
/** Either is enough; all common practice. */
const quiet = { entries: 10, days: 30 };
const strong = { entries: 30, days: 90 };
const strongUnkept = { entries: 15, days: 45 };
const postponedFor = { entries: 10, days: 30 };

/** Null: not now. `now` in ms. */
export function reminderFor({ notes, entries, begun, kept, stuck }: Standing, now: number): Reminder | null {
	const { last, postponed } = notes;
	const missing = entriesSince(last, entries);
	if (entries <= worthless || missing === 0) return null;
	const since = missing < entries && last ? Date.parse(last.at) : begun;
	const passed = (limit: typeof quiet, count: number, from: number) =>
		count >= limit.entries || now - from >= limit.days * dayMs;
	if (postponed && !passed(postponedFor, entries - postponed.entries, Date.parse(postponed.at))) return null;
	if (passed(kept ? strong : strongUnkept, missing, since)) return "strong";
	return stuck || passed(quiet, missing, since) ? "quiet" : null;
}
