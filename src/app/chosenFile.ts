/** A file of the driver's choice that the app may write to again and again: Chromium 86 on computers, 132 on Android. */

import { backupWords } from "./words/backup";

/** No typing of the page knows these yet (WICG File System Access). */
export interface ChosenFile extends FileSystemFileHandle {
	queryPermission(descriptor: { mode: "readwrite" }): Promise<PermissionState>;
	requestPermission(descriptor: { mode: "readwrite" }): Promise<PermissionState>;
}
type Picker = (options: {
	suggestedName: string;
	types: { description: string; accept: Record<string, string[]> }[];
}) => Promise<ChosenFile>;

const writing = { mode: "readwrite" } as const;

export function canChooseFile(): boolean {
	return picker() !== undefined;
}

/**
 * Asks for a file, and empties it where there is one of that name: write to it at once. Null: the driver chose none. Call it
 * soon after a tap.
 */
export async function chooseFile(suggestedName: string): Promise<ChosenFile | null> {
	const types = [{ description: backupWords().fileType, accept: { "application/json": [".json"] } }];
	try {
		return (await picker()?.({ suggestedName, types })) ?? null;
	} catch (error) {
		if (error instanceof DOMException && error.name === "AbortError") return null;
		throw error;
	}
}

/** Without asking. */
export function permissionFor(file: ChosenFile): Promise<PermissionState> {
	return file.queryPermission(writing);
}

/** Asks the driver; call it with a tap. */
export function askPermission(file: ChosenFile): Promise<PermissionState> {
	return file.requestPermission(writing);
}

/** All or nothing: the browser writes beside the file and puts the new one in its place when it is whole. */
export async function replaceContents(file: ChosenFile, text: string): Promise<void> {
	const stream = await file.createWritable();
	try {
		await stream.write(text);
	} catch (error) {
		await stream.abort().catch(() => {});
		throw error;
	}
	await stream.close();
}

function picker(): Picker | undefined {
	return (globalThis as { readonly showSaveFilePicker?: Picker }).showSaveFilePicker;
}
