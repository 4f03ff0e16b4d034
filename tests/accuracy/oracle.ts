/**
 * The oracle's answers, kept in oracle.json since they take minutes to reckon. `node tests/accuracy/makeOracle.mjs` brings
 * the file up to date; a fingerprint of history and oracle tells which answers are stale.
 */
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { type BruteForceEntry, bruteForce } from "./bruteForce";
import { histories } from "./histories";
import type { History } from "./historyParts";

export const figures = ["median", "low", "high", "below", "above"] as const;

export interface Answers {
	readonly name: string;
	readonly fingerprint: string;
	/** Largest standard error of the figures below, from the spread of the runs. */
	readonly error: { readonly quantile: number; readonly chance: number };
	/** Mean of the runs. */
	readonly entries: readonly BruteForceEntry[];
}

/** Independent runs, and samples in each. */
const runs = 4;
const samples = 4_000_000;

/** The answers for every history; those that are still good are taken from `before`. */
export function upToDate(before: readonly Answers[], say: (line: string) => void): Answers[] {
	return histories.map((history) => {
		const kept = before.find(({ name }) => name === history.name);
		if (kept?.fingerprint === fingerprintOf(history)) return kept;
		say(history.name);
		return answersFor(history);
	});
}

/** Parts of the oracle that only some histories need: the mark of their lines, their file, the field that calls for them. */
const parts = [
	{ mark: "odometer", file: "bruteForceLegs.ts", field: "odometerKm" },
	{ mark: "baseline", file: "bruteForceBaselines.ts", field: "baselineSd" },
];

/** Hangs on the history and on the oracle's code, without comments, spaces and the parts that it does not need. */
export function fingerprintOf({ car, events }: History): string {
	const code = parts.reduce(
		(left, { mark, file, field }) =>
			events.some((event) => field in event)
				? left + codeOf(file)
				: left.replace(new RegExp(`^.*// ${mark}$`, "gm"), ""),
		codeOf("bruteForce.ts"),
	);
	return createHash("sha256")
		.update(JSON.stringify([bare(code), car, events, runs, samples]))
		.digest("hex");
}

function codeOf(file: string): string {
	return readFileSync(join(import.meta.dirname, file), "utf8");
}

function bare(code: string): string {
	return code
		.replace(/\/\*[\s\S]*?\*\//g, "")
		.replace(/^\s*\/\/.*$/gm, "")
		.replace(/\s/g, "");
}

function answersFor(history: History): Answers {
	const all = Array.from({ length: runs }, (_, run) =>
		bruteForce(history.car, history.events, { samples, seed: run + 1 }),
	);
	const error = { quantile: 0, chance: 0 };
	const entries = all[0].map((first, i): BruteForceEntry => {
		const mean = (figure: (typeof figures)[number]) => {
			const values = all.map((run) => run[i][figure] ?? Number.NaN);
			const middle = values.reduce((sum, value) => sum + value / runs, 0);
			const squares = values.reduce((sum, value) => sum + (value - middle) ** 2, 0);
			const kind = figure === "below" || figure === "above" ? "chance" : "quantile";
			error[kind] = Math.max(error[kind], Math.sqrt(squares / (runs - 1) / runs) || 0);
			return Number(middle.toFixed(6));
		};
		const windowed = first.below !== null;
		return {
			id: first.id,
			median: mean("median"),
			low: mean("low"),
			high: mean("high"),
			below: windowed ? mean("below") : null,
			above: windowed ? mean("above") : null,
		};
	});
	return { name: history.name, fingerprint: fingerprintOf(history), error, entries };
}
