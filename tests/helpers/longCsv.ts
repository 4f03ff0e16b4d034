/** Logs of any size on disk, written line by line. */
import { closeSync, openSync, writeSync } from "node:fs";
import type { Drive } from "./drive";
import { csvLines } from "./logCsv";

/** Writes a log of so many bytes, give or take a line; returns how many rows it has. */
export function writeLongCsv(path: string, bytes: number, drive: Omit<Drive, "seconds">): number {
	const file = openSync(path, "w");
	let written = 0;
	let rows = -1;
	let waiting = "";
	for (const line of csvLines({ ...drive, seconds: Infinity }, { without: [] })) {
		waiting += line;
		rows++;
		if (waiting.length < 2 ** 20 && written + waiting.length < bytes) continue;
		written += writeSync(file, waiting);
		waiting = "";
		if (written >= bytes) break;
	}
	closeSync(file);
	return rows;
}
