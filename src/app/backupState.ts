/** How the active car stands with its backups, looked at anew. */
import { isInvented } from "./App";
import { isoWithOffset } from "./app";
import { type Desk, type Kept, keepFile } from "./automaticBackup";
import { type BackupNotes, backupNotes } from "./backupNotes";
import { type Reminder, reminderFor } from "./backupReminder";
import { isKept } from "./keptData";
import type { Model } from "./model";

export interface BackupState {
	readonly carId: string;
	readonly notes: BackupNotes;
	/** Whether the browser has promised to keep the data; null: it does not say. */
	readonly kept: boolean | null;
	/** Where the log writes itself; null: nowhere. */
	readonly file: Kept | null;
	readonly due: Reminder | null;
}

/** Brings the file up to date, where there is one, and tells the model. */
export async function lookAtBackups(model: Pick<Model, "state" | "backedUp">, desk: Desk, now: number): Promise<void> {
	const { car, account, damage } = model.state();
	if (!car || account?.car.id !== car.id) return;
	const { id } = car;
	// What lost a part of the log would take it from the file, too.
	const file = damage ? null : await keepFile(desk, id, isoWithOffset(now));
	const [notes, kept] = await Promise.all([backupNotes(desk, id), isKept()]);
	const { events } = account;
	const begun = events.length > 0 ? Date.parse(events[0].at) : now;
	const standing = { notes, entries: events.length, begun, kept, stuck: file !== null && file.trouble !== null };
	if (model.state().car?.id !== id) return;
	model.backedUp({ carId: id, notes, kept, file, due: isInvented(id) ? null : reminderFor(standing, now) });
}
