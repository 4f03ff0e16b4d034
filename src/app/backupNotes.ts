/** What the phone remembers of a car's backups, under keys that go with the car and stay out of its log. */

/** A log that left the phone, or came in: what a file elsewhere holds. */
export interface Backup {
	/** ISO 8601. */
	readonly at: string;
	/** Entries in it. */
	readonly entries: number;
	readonly how: "saved" | "sent" | "written" | "opened";
}

/** "Not now": when it was said, and at how many entries. */
export interface Postponed {
	readonly at: string;
	readonly entries: number;
}

export interface BackupNotes {
	readonly last: Backup | null;
	readonly postponed: Postponed | null;
}

/** Where notes are kept: the model for a screen, the keeper for what runs behind it. */
export interface NoteStore {
	draft(key: string): Promise<unknown>;
	saveDraft(key: string, value: unknown): Promise<unknown>;
}

export async function backupNotes(store: NoteStore, carId: string): Promise<BackupNotes> {
	const { last, postponed } = ((await store.draft(keyOf(carId))) ?? {}) as Partial<BackupNotes>;
	return { last: last ?? null, postponed: postponed ?? null };
}

/** Call when a backup has left. It also ends a "Not now". */
export async function noteBackup(store: NoteStore, carId: string, last: Backup): Promise<void> {
	await store.saveDraft(keyOf(carId), { last, postponed: null });
}

/** A file that was opened is a backup like any other, unless a fuller one is known. */
export async function noteOpened(store: NoteStore, carId: string, opened: Backup): Promise<void> {
	const { last } = await backupNotes(store, carId);
	if (opened.entries > (last?.entries ?? 0)) await noteBackup(store, carId, opened);
}

export async function notePostponed(store: NoteStore, carId: string, postponed: Postponed): Promise<void> {
	await store.saveDraft(keyOf(carId), { ...(await backupNotes(store, carId)), postponed });
}

/** Entries that are in no backup. One that holds more than the log is of another state of it, and vouches for nothing. */
export function entriesSince(last: Backup | null, entries: number): number {
	return last && last.entries <= entries ? entries - last.entries : entries;
}

/** Entries in a log file that the app itself has made. */
export function entriesIn(text: string): number {
	return (JSON.parse(text) as { readonly events: readonly unknown[] }).events.length;
}

function keyOf(carId: string): string {
	return `${carId}/backup`;
}
