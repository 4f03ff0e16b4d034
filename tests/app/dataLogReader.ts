/** Stands in for the worker that reads data logs, with its own code, in the page: jsdom has no workers. */
import type { LogReader } from "../../src/app/logReader";
import { openLog } from "../../src/datalog/openLog";
import { readLog } from "../../src/datalog/readLog";

interface Reader {
	/** Reading waits for it. */
	hold: Promise<void> | null;
	/** Reading ends with it. */
	fault: Error | null;
	opened: number;
	closed: number;
}

export const reader: Reader = { hold: null, fault: null, opened: 0, closed: 0 };

export async function startLogReader(): Promise<LogReader> {
	return {
		open(file) {
			reader.opened++;
			return openLog(file);
		},
		async read(file, columns, tell) {
			const log = await openLog(file);
			if (!log.ok) throw new Error(log.error);
			tell(0.5);
			await reader.hold;
			if (reader.fault) throw reader.fault;
			return readLog(file, log.value, columns, tell);
		},
		close() {
			reader.closed++;
		},
	};
}
