/**
 * Histories for the long way round. Its answers are kept in whyOracle.json since they take minutes to reckon;
 * `node tests/domain/why/makeWhyOracle.mjs` makes the file anew, a fingerprint of code and history tells what is stale.
 */
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { type PlainHistory, type PlainWorth, plainWhy } from "./plainWhy";

const flex = { low: 0.51, high: 0.83 };
const e10 = { low: 0.09, high: 0.1 };
const upTo10 = { low: 0, high: 0.1 };

export const plainHistories: readonly (PlainHistory & { readonly name: string })[] = [
	{
		name: "gauges at both stops and a click at the last",
		capacity: 58,
		start: { low: 0, high: 0.4, gauge: 0.5 },
		daysBetween: 9,
		stops: [
			{ gauge: 0.25, pours: [{ ...flex, litres: 14 }] },
			{
				gauge: 0.3,
				click: true,
				pours: [
					{ ...flex, litres: 10 },
					{ ...e10, litres: 30 },
				],
			},
		],
	},
	{
		name: "no gauge, a reading of the tank after the first stop",
		capacity: 50,
		start: { low: 0.09, high: 0.1, gauge: 0.4 },
		daysBetween: 30,
		stops: [
			{ pours: [{ ...flex, litres: 15 }], reading: [0.42, 0.025] },
			{ gauge: 0.2, pours: [{ ...flex, litres: 12 }] },
		],
	},
	{
		name: "nothing said of the level at the last stop",
		capacity: 58,
		start: { low: 0, high: 0.85, gauge: 0.2 },
		daysBetween: 14,
		stops: [
			{ click: true, pours: [{ ...upTo10, litres: 44 }] },
			{
				pours: [
					{ ...flex, litres: 15 },
					{ ...upTo10, litres: 8 },
				],
			},
		],
	},
];

export interface KeptAnswer {
	readonly name: string;
	readonly fingerprint: string;
	readonly worths: Readonly<Record<string, PlainWorth>>;
}

const samples = 2_000_000;

/** Hangs on the code, without comments and spaces, and on the history. */
export function fingerprintOf(history: PlainHistory): string {
	const code = readFileSync(join(import.meta.dirname, "plainWhy.ts"), "utf8")
		.replace(/\/\*[\s\S]*?\*\//g, "")
		.replace(/^\s*\/\/.*$/gm, "")
		.replace(/\s/g, "");
	return createHash("sha256")
		.update(JSON.stringify([code, history, samples]))
		.digest("hex")
		.slice(0, 16);
}

/** What `before` has still right, and the rest reckoned anew. */
export function answers(before: readonly KeptAnswer[], tell: (name: string) => void): KeptAnswer[] {
	return plainHistories.map((history) => {
		const { name } = history;
		const fingerprint = fingerprintOf(history);
		const kept = before.find((answer) => answer.name === name && answer.fingerprint === fingerprint);
		if (kept) return kept;
		tell(name);
		const worths = [...plainWhy(history, samples, 7)].map(
			([what, { share, width }]) => [what, { share: rounded(share), width: rounded(width) }] as const,
		);
		return { name, fingerprint, worths: Object.fromEntries(worths) };
	});
}

function rounded(value: number): number {
	return Number(value.toFixed(5));
}
