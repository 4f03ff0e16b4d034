/** A whole log, read once from end to end, into what it tells. */
import { type Finding, findingOf } from "../domain/datalog/finding";
import { readFuelSystem } from "../domain/datalog/fuelSystem";
import { gridBuilder, type Taken } from "../domain/datalog/grid";
import type { Row } from "../domain/datalog/layout";
import { readLogNumber } from "../domain/datalog/logNumber";
import { instantOf, readLogTime } from "../domain/datalog/logTime";
import { timeUnitOf } from "../domain/datalog/resolveUnit";
import type { Column, Columns, Unit } from "../domain/datalog/role";
import { piecesOf } from "./encoding";
import { fingerprint } from "./fingerprint";
import type { OpenedLog } from "./openLog";
import { rowReader } from "./rows";

/** Why a row is skipped. */
export type Skip = Exclude<Taken, "taken"> | "otherWidth";

export interface LogRead {
	readonly finding: Finding;
	/** Rows that count. */
	readonly rows: number;
	readonly skipped: readonly { readonly why: Skip; readonly count: number; readonly firstLine: number }[];
	/** When the recording ended, ms since 1970; null where the log has no dates. */
	readonly ended: number | null;
	/** The same for every copy of the file, however its columns are read. */
	readonly fingerprint: string;
}

/** `columns` must name the time. Rejects where the file cannot be read. */
export async function readLog(
	file: Blob,
	log: OpenedLog,
	columns: Columns,
	progress: (share: number) => void,
): Promise<LogRead> {
	const taker = rowTaker(log, columns);
	const reader = rowReader(log);
	const print = fingerprint();
	for await (const { text, share } of piecesOf(file, log.encoding)) {
		print.add(text);
		taker.take(reader.push(text));
		progress(share);
	}
	taker.take(reader.end());
	return { ...taker.finish(), fingerprint: print.digits() };
}

function rowTaker({ firstData, headers, mark, rows: sample }: OpenedLog, columns: Columns) {
	const timeAt = columns.findIndex((column) => column?.role === "time");
	const named = columns.flatMap((column, at) => (column && at !== timeAt ? [{ ...column, at }] : []));
	const times = sample.map((row) => row[timeAt] ?? "");
	const timeUnit = timeUnitOf(times, columns[timeAt]?.unit ?? null, mark);
	const grid = gridBuilder(
		named.map(({ role }) => role),
		timeUnit === "clock",
	);
	const values = new Float64Array(named.length);
	const skips = new Map<Skip, { count: number; firstLine: number }>();
	let line = 0;
	let rows = 0;
	let last = Number.NaN;

	function add(row: Row): Taken | "otherWidth" {
		if (Math.abs(row.length - headers.length) > 1) return "otherWidth";
		const at = readLogTime(row[timeAt] ?? "", timeUnit, mark);
		for (let i = 0; i < named.length; i++) {
			const text = row[named[i].at] ?? "";
			values[i] = named[i].role === "fuelSystem" ? readFuelSystem(text) : readLogNumber(text, mark);
		}
		const taken = grid.add(at, values);
		if (taken === "taken") last = at;
		return taken;
	}

	return {
		take(batch: readonly Row[]): void {
			for (const row of batch) {
				if (line++ < firstData || (row.length === 1 && row[0].trim() === "")) continue;
				const taken = add(row);
				if (taken === "taken") rows++;
				else skips.set(taken, counted(skips.get(taken), line));
			}
		},
		finish(): Omit<LogRead, "fingerprint"> {
			const time: Column & { readonly unit: Unit } = { role: "time", unit: timeUnit };
			const finding = findingOf(grid.finish(), named);
			return {
				finding: {
					...finding,
					columns: [{ ...time, guessed: columns[timeAt]?.unit !== timeUnit }, ...finding.columns],
				},
				rows,
				skipped: [...skips].map(([why, found]) => ({ why, ...found })),
				ended: endOf(last, timeUnit, times),
			};
		},
	};
}

function counted(before: { count: number; firstLine: number } | undefined, line: number) {
	return before ? { ...before, count: before.count + 1 } : { count: 1, firstLine: line };
}

/** Dates without an offset are the phone's own time. */
function endOf(seconds: number, unit: Unit, times: readonly string[]): number | null {
	const instant = instantOf(seconds);
	if (instant === null || unit !== "clock" || times.some((time) => /(z|[+-]\d\d:?\d\d)\s*$/i.test(time)))
		return instant;
	return Date.parse(new Date(instant).toISOString().replace("Z", ""));
}
