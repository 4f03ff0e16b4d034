/** The backup that writes itself: after every save the log replaces what is in a file that the driver chose. */
import { backupNotes, entriesIn, type NoteStore, noteBackup } from "./backupNotes";
import { type ChosenFile, permissionFor, replaceContents } from "./chosenFile";

/**
 * Why nothing was written. `ask`: the browser wants the driver's word again; `refused`: he said no; `gone`: the file is not where it
 * was; `fuller`: it has entries that the phone lacks; `other`: it holds another car's log; `failed`: anything else.
 */
export type Trouble = "ask" | "refused" | "gone" | "fuller" | "other" | "failed";

/** One a car. */
export interface AutomaticFile {
	readonly handle: ChosenFile;
	/** ISO 8601; null: not yet. */
	readonly writtenAt: string | null;
}

export interface Kept extends AutomaticFile {
	readonly trouble: Trouble | null;
}

/** Where the log and the notes come from. */
export interface Desk extends NoteStore {
	/** Null: it could not be read. */
	exportLog(carId: string): Promise<string | null>;
}

/** Under this key a car's file is kept: it goes with the car, and no second copy of the data could hold it. */
export function fileKey(carId: string): string {
	return `${carId}/backup file`;
}

/** Brings a car's file up to date where it has one. Never asks anything. `at`: now, ISO 8601. */
export async function keepFile(desk: Desk, carId: string, at: string): Promise<Kept | null> {
	return inTurn(async () => {
		const file = (await desk.draft(fileKey(carId))) as AutomaticFile | undefined;
		if (typeof file?.handle?.createWritable !== "function") return null;
		const permission = await permissionFor(file.handle).catch(() => "denied" as const);
		if (permission !== "granted") return { ...file, trouble: permission === "prompt" ? "ask" : "refused" };
		const text = await desk.exportLog(carId);
		const outcome = text === null ? "failed" : await bringUpToDate(file.handle, text);
		if (text === null || (outcome !== "written" && outcome !== "same")) return { ...file, trouble: outcome as Trouble };
		const entries = entriesIn(text);
		const { last } = await backupNotes(desk, carId);
		if (outcome === "same" && file.writtenAt !== null && last?.entries === entries) return { ...file, trouble: null };
		const written = { handle: file.handle, writtenAt: at };
		await desk.saveDraft(fileKey(carId), written);
		await noteBackup(desk, carId, { at, entries, how: "written" });
		return { ...written, trouble: null };
	});
}

async function bringUpToDate(file: ChosenFile, text: string): Promise<"written" | "same" | Trouble> {
	try {
		const there = await (await file.getFile()).text();
		if (there === text) return "same";
		const lost = lostWith(there, text);
		if (lost) return lost;
		await replaceContents(file, text);
		return "written";
	} catch (error) {
		return error instanceof DOMException && error.name === "NotFoundError" ? "gone" : "failed";
	}
}

/** What overwriting would destroy: a phone that has lost its log must not take the file with it. */
function lostWith(there: string, here: string): "fuller" | "other" | null {
	const [old, fresh] = [contentsOf(there), contentsOf(here)];
	if (!old || !fresh) return null;
	if (old.carId !== fresh.carId) return "other";
	return [...old.ids].every((id) => fresh.ids.has(id)) ? null : "fuller";
}

/** Null where it is no log: the driver chose to replace it. */
function contentsOf(text: string): { readonly carId: unknown; readonly ids: ReadonlySet<unknown> } | null {
	try {
		const { car, events } = JSON.parse(text);
		return { carId: car.id, ids: new Set(events.map(({ id }: { readonly id: unknown }) => id)) };
	} catch {
		return null;
	}
}

/** One at a time among all tabs: the file of the slower one must not be the older log. */
function inTurn<T>(work: () => Promise<T>): Promise<T> {
	const locks = navigator.locks as LockManager | undefined;
	return locks ? locks.request("heeltap-backup", work).then((result) => result) : work();
}
