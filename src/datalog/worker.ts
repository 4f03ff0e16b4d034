/** Reads logs away from the page's thread. */
import { expose } from "comlink";
import type { Columns } from "../domain/datalog/role";
import { openLog } from "./openLog";
import { readLog } from "./readLog";

/** The page is told how far it is this often, ms. */
const tellEveryMs = 100;

const reader = {
	open: openLog,
	/** Rejects where the file cannot be read to its end. */
	async read(file: Blob, columns: Columns, tell: (share: number) => void) {
		const opened = await openLog(file);
		if (!opened.ok) throw new DOMException(`changed since it was opened: ${opened.error}`, "NotReadableError");
		let told = performance.now();
		return readLog(file, opened.value, columns, (share) => {
			if (performance.now() - told < tellEveryMs) return;
			told = performance.now();
			tell(share);
		});
	},
};

export type ReaderInWorker = typeof reader;

expose(reader);
