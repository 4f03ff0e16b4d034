/** Backups in words: when, how much, and what stands in the way of one. */
import type { Trouble } from "./automaticBackup";
import { type Backup, type BackupNotes, entriesSince } from "./backupNotes";
import { ago, date } from "./format";

/** When the last backup was made, and what it lacks. */
export function lastBackupWords({ last }: BackupNotes, entries: number, now: number): string {
	if (!last) return `No backup has left this phone: ${count(entries)} ${entries === 1 ? "is" : "are"} here only.`;
	const made = `${madeWords(last, now)}, with ${count(last.entries)}.`;
	if (last.entries > entries) return `${made} That is more than the ${entries} here: open it to bring the others back.`;
	const since = entriesSince(last, entries);
	if (since === 0) return `${made} Nothing was added since.`;
	return `${made} ${count(since)} since then ${since === 1 ? "is" : "are"} here only.`;
}

function madeWords({ at, how }: Backup, now: number): string {
	const when = ago(at, now);
	switch (how) {
		case "saved":
			return `Last backup: saved ${when}`;
		case "sent":
			return `Last backup: sent ${when}`;
		case "written":
			return `Last backup: written ${when}`;
		case "opened":
			return `Last backup: a file that was opened here ${when}`;
	}
}

/** What is not backed up, as a reminder says it first. */
export function missingWords({ last }: BackupNotes, entries: number): string {
	const since = entriesSince(last, entries);
	if (since === entries) return `${count(entries)} of the log ${entries === 1 ? "is" : "are"} in no backup.`;
	return `${count(since)} since the backup of ${date(last?.at ?? "")} ${since === 1 ? "is" : "are"} in none.`;
}

/** Why a reminder is worth a tap. */
export function riskWords(kept: boolean | null, safari: boolean): string {
	if (safari)
		return "Safari’s engine deletes the log after seven days of use without a visit, unless the app is on the home screen.";
	if (kept) return "What is in no backup is lost with the phone.";
	return "What is in no backup is lost with the phone, and the browser may clear it when space runs short.";
}

/** Where the log writes itself and does not. */
export const troubleWords: Readonly<Record<Trouble, string>> = {
	ask: "The browser will ask you once more before the app may write to it.",
	refused: "The browser does not let the app write to it any more: allow it again, or choose another file.",
	gone: "It is no longer where it was: choose another file.",
	fuller: "It has entries that this phone lacks, so it is left alone: open it as a backup, and it is written again.",
	other: "It holds the log of another car, so it is left alone: choose another file.",
	failed:
		"It could not be written. What was in it is still whole, and the app tries again with the next save and the next start.",
};

/** "12 entries". */
export function count(entries: number): string {
	return `${entries} ${entries === 1 ? "entry" : "entries"}`;
}
