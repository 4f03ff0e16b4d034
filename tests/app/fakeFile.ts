/** A file as the browser's picker gives it, with a disk that can be told to fail. */
import type { ChosenFile } from "../../src/app/chosenFile";
import type { KeeperPort } from "../../src/app/keeperPort";

export interface FakeFile {
	readonly handle: ChosenFile;
	text: string;
	permission: PermissionState;
	/** What the driver answers when he is asked. */
	answer: PermissionState;
	asked: number;
	/** Times it was replaced. */
	writes: number;
	/** Thrown with the next things done to it; null: all is well. */
	fails: { readonly on: "read" | "write" | "close"; readonly error: DOMException } | null;
}

export function fakeFile(name = "log.json", text = ""): FakeFile {
	const failing = (on: "read" | "write" | "close") => {
		if (file.fails?.on === on) throw file.fails.error;
	};
	const handle = {
		kind: "file",
		name,
		queryPermission: async () => file.permission,
		async requestPermission() {
			file.asked++;
			file.permission = file.answer;
			return file.answer;
		},
		async getFile() {
			failing("read");
			const { text } = file;
			return { text: async () => text };
		},
		async createWritable() {
			let beside = "";
			return {
				async write(part: string) {
					// Half of it is in the swap file by then.
					beside += part.slice(0, part.length / 2);
					failing("write");
					beside = part;
				},
				abort: async () => {},
				async close() {
					failing("close");
					file.text = beside;
					file.writes++;
				},
			};
		},
	} as unknown as ChosenFile;
	const file: FakeFile = {
		handle,
		text,
		permission: "granted",
		answer: "granted",
		asked: 0,
		writes: 0,
		fails: null,
	};
	return file;
}

/** Lets the fake pass where a real handle would be cloned: what is noted of files stays in this memory. */
export function rememberingFiles(files = new Map<string, unknown>()): (keeper: KeeperPort) => KeeperPort {
	const isFile = (key: string) => key.endsWith("/backup file");
	return (keeper) => ({
		...keeper,
		draft: async (key) => (isFile(key) ? files.get(key) : keeper.draft(key)),
		saveDraft: async (key, value) => (isFile(key) ? void files.set(key, value) : keeper.saveDraft(key, value)),
		dropDraft: async (key) => (isFile(key) ? void files.delete(key) : keeper.dropDraft(key)),
	});
}

export function offerPicker(pick: (options: { readonly suggestedName: string }) => Promise<ChosenFile>): void {
	Object.assign(globalThis, { showSaveFilePicker: pick });
}

export function withdrawPicker(): void {
	Reflect.deleteProperty(globalThis, "showSaveFilePicker");
}
