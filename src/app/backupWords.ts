/** Backups in words: when, how much, and what stands in the way of one. */
import type { Trouble } from "./automaticBackup";
import { type BackupNotes, entriesSince } from "./backupNotes";
import { ago, date } from "./format";
import { backupWords } from "./words/backup";

/** When the last backup was made, and what it lacks. */
export function lastBackupWords({ last }: BackupNotes, entries: number, now: number): string {
	const words = backupWords();
	if (!last) return words.never(entries);
	const made = words.made[last.how](ago(last.at, now), last.entries);
	const since = entriesSince(last, entries);
	if (last.entries > entries) return `${made} ${words.fuller(entries)}`;
	return `${made} ${since === 0 ? words.nothingSince : words.since(since)}`;
}

/** What is not backed up, as a reminder says it first. */
export function missingWords({ last }: BackupNotes, entries: number): string {
	const since = entriesSince(last, entries);
	const { inNone, inNoneSince } = backupWords();
	return since === entries ? inNone(entries) : inNoneSince(since, date(last?.at ?? ""));
}

/** Why a reminder is worth a tap. */
export function riskWords(kept: boolean | null, safari: boolean): string {
	return backupWords().risks[safari ? "weekly" : kept ? "kept" : "unkept"];
}

/** Where the log writes itself and does not. */
export function troubleWords(trouble: Trouble): string {
	return backupWords().troubles[trouble];
}
