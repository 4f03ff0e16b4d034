/** The browser's own file system as a folder, and turns among the tabs that use it. */
import { within } from "./patience";
import { type Folder, type Rescue, rescueIn } from "./rescue";
import { type InTurn, inTurns } from "./turns";

/** Only workers have it, and no typing of the page knows it. */
interface SyncFile {
	write(data: Uint8Array, options: { at: number }): number;
	getSize(): number;
	flush(): void;
	close(): void;
}
type FileHandle = FileSystemFileHandle & { createSyncAccessHandle?(): Promise<SyncFile> };
type Directory = FileSystemDirectoryHandle & { keys(): AsyncIterable<string> };

const answerWithinMs = 5_000;

/** Null where the browser has no such file system, or does not let the app have it. */
export async function rescueHere(name: string): Promise<Rescue | null> {
	try {
		const root = await within(navigator.storage.getDirectory(), answerWithinMs);
		const folder = folderOf((await root.getDirectoryHandle(`${name}-rescue`, { create: true })) as Directory);
		return rescueIn(folder, turnsOf(`${name}-rescue`));
	} catch {
		return null;
	}
}

export function folderOf(directory: Directory): Folder {
	return {
		async names() {
			const names: string[] = [];
			for await (const name of directory.keys()) names.push(name);
			return names;
		},
		read: async (name) => (await (await directory.getFileHandle(name)).getFile()).text(),
		async append(name, text) {
			const handle: FileHandle = await directory.getFileHandle(name, { create: true });
			const bytes = new TextEncoder().encode(text);
			if (handle.createSyncAccessHandle) appendNow(await handle.createSyncAccessHandle(), bytes);
			else await appendLater(handle, bytes);
		},
		remove: (name) => directory.removeEntry(name),
	};
}

function appendNow(file: SyncFile, bytes: Uint8Array): void {
	try {
		if (file.write(bytes, { at: file.getSize() }) < bytes.length) throw new Error("the rescue copy has no room left");
		file.flush();
	} finally {
		file.close();
	}
}

async function appendLater(handle: FileSystemFileHandle, data: Uint8Array<ArrayBuffer>): Promise<void> {
	const { size } = await handle.getFile();
	const file = await handle.createWritable({ keepExistingData: true });
	await file.write({ type: "write", position: size, data });
	await file.close();
}

/** One at a time, among all tabs where the browser can do that. */
function turnsOf(name: string): InTurn {
	const inTurn = inTurns();
	return (work) =>
		inTurn(() =>
			within(navigator.locks ? navigator.locks.request(name, work).then((result) => result) : work(), answerWithinMs),
		);
}
