/** How long mangled log files take to be taken or refused, and what memory. */
import { setFlagsFromString } from "node:v8";
import { runInNewContext } from "node:vm";
import fc from "fast-check";
import { hostileFiles } from "../helpers/hostileLogs";
import { importingPhone } from "../helpers/importing";

export interface ImportFigures {
	readonly imported: number;
	readonly refused: number;
	/** Whether each was taken whole or refused whole; else what was not, by what was done to the file. */
	readonly faults: readonly string[];
	/** Of the slowest, ms. */
	readonly worstMs: number;
	/** What was done to it. */
	readonly worst: string;
	/** Most that one file made the process's values grow by, MB. */
	readonly memory: number;
}

export async function measureImports(files: number): Promise<ImportFigures> {
	const phone = await importingPhone("measured");
	const faults: string[] = [];
	let [imported, refused, worstMs, worst, most] = [0, 0, 0, "", 0];
	setFlagsFromString("--expose-gc");
	const collect = runInNewContext("gc") as () => void;
	// In batches, for the files themselves not to be what fills the memory.
	for (let seed = 1; imported + refused + faults.length < files; seed++) {
		for (const { bytes, done } of fc.sample(hostileFiles, { seed, numRuns: 50 })) {
			if (bytes.length > 100_000) collect();
			const before = used();
			try {
				const { outcome, ms } = await phone.take(bytes);
				if (outcome === "imported") imported++;
				else refused++;
				if (ms > worstMs) [worstMs, worst] = [ms, done];
			} catch (error) {
				faults.push(`${done}: ${String(error)}`);
			}
			most = Math.max(most, used() - before);
		}
	}
	phone.close();
	return { imported, refused, faults, worstMs, worst, memory: most };
}

/** Memory of the process's values, MB. */
function used(): number {
	const { heapUsed, external } = process.memoryUsage();
	return (heapUsed + external) / 1e6;
}
