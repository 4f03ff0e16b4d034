/** The worker that reads data logs, for as long as a screen needs it. */

import type { OpenedLog } from "../datalog/openLog";
import type { LogRead } from "../datalog/readLog";
import type { Refusal } from "../datalog/refusal";
import type { ReaderInWorker } from "../datalog/worker";
import type { Columns } from "../domain/datalog/role";
import type { Result } from "../domain/result";
import { addressOf } from "./scripts";

export interface LogReader {
	open(file: File): Promise<Result<OpenedLog, Refusal>>;
	/** Tells the share that is read now and then. Rejects where the file cannot be read to its end. */
	read(file: File, columns: Columns, tell: (share: number) => void): Promise<LogRead>;
	/** Ends it, whatever it is at. */
	close(): void;
}

export async function startLogReader(): Promise<LogReader> {
	const worker = new Worker(addressOf("dataLog"), { type: "module", name: "data log" });
	const broken = new Promise<never>((_, reject) => {
		worker.onerror = (event) => reject(new Error(event.message));
	});
	broken.catch(() => {});
	const { proxy, wrap } = await import("comlink");
	const remote = wrap<ReaderInWorker>(worker);
	return {
		open: (file) => Promise.race([remote.open(file), broken]),
		read: (file, columns, tell) => Promise.race([remote.read(file, columns, proxy(tell)), broken]),
		close: () => worker.terminate(),
	};
}
