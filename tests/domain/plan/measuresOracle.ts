/**
 * The brute force's answers, kept in measuresOracle.json since they take minutes to reckon.
 * `node tests/domain/plan/makeMeasuresOracle.mjs` makes the file anew; a fingerprint of code and scene tells what is stale.
 */
import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { type Answer, bruteForceWorth, type Scene } from "./measuresBruteForce";

const flex = [0.51, 0.83] as const;
const e10 = [0.09, 0.1] as const;
const upTo10 = [0, 0.1] as const;
const usual = { labels: [flex, e10], window: [0.26, 0.34], leanBudget: 0.05 } as const;

export const scenes: readonly Scene[] = [
	{ ...usual, name: "known heel, gauge noted, click", heel: [0.2, 0.4], gaugeThen: 0.5, gaugeNow: 0.25, fill: "click" },
	{
		...usual,
		name: "unknown heel, no gauge, wide window, click",
		heel: [0, 0.85],
		gaugeThen: null,
		gaugeNow: null,
		fill: "click",
		window: [0.2, 0.5],
		leanBudget: 0.2,
	},
	{
		...usual,
		name: "unknown heel, no gauge, lean not minded, click",
		heel: [0, 0.85],
		gaugeThen: null,
		gaugeNow: null,
		fill: "click",
		leanBudget: 1,
	},
	{ ...usual, name: "known heel, gauge noted, litres", heel: [0.2, 0.4], gaugeThen: 0.5, gaugeNow: 0.25, fill: 25 },
	{ ...usual, name: "known heel, no gauge, litres", heel: [0.2, 0.4], gaugeThen: 0.5, gaugeNow: null, fill: 20 },
	{ ...usual, name: "nearly empty, click", heel: [0.09, 0.1], gaugeThen: 0.1, gaugeNow: 0.03, fill: "click" },
	{
		...usual,
		name: "wide gasoline, high window, litres",
		labels: [flex, upTo10],
		heel: [0.5, 0.7],
		gaugeThen: 0.5,
		gaugeNow: 0.3,
		fill: 24,
		window: [0.45, 0.55],
	},
	{ ...usual, name: "half-known tank, no fill", heel: [0.2, 0.5], gaugeThen: 0.5, gaugeNow: null, fill: null },
	{ ...usual, name: "unknown tank, no fill", heel: [0, 0.85], gaugeThen: null, gaugeNow: null, fill: null },
];

export interface Kept extends Answer {
	readonly name: string;
	readonly fingerprint: string;
}

const effort = { samples: 10_000, outcomes: 400, seed: 1 };

export function answers(before: readonly Kept[], say: (line: string) => void): Kept[] {
	return scenes.map((scene) => {
		const kept = before.find(({ name }) => name === scene.name);
		const fingerprint = fingerprintOf(scene);
		if (kept?.fingerprint === fingerprint) return kept;
		say(scene.name);
		const { width, inside, worths } = bruteForceWorth(scene, effort);
		const short = ({ narrowing, gain }: Answer["worths"][string]) => ({
			narrowing: Number(narrowing.toFixed(5)),
			gain: Number(gain.toFixed(5)),
		});
		const shortWorths = Object.fromEntries(Object.entries(worths).map(([name, found]) => [name, short(found)]));
		return { name: scene.name, fingerprint, width, inside, worths: shortWorths };
	});
}

/** Hangs on the brute force's code, without comments and spaces, and on the scene. */
export function fingerprintOf(scene: Scene): string {
	const code = readFileSync(join(import.meta.dirname, "measuresBruteForce.ts"), "utf8")
		.replace(/\/\*[\s\S]*?\*\//g, "")
		.replace(/^\s*\/\/.*$/gm, "")
		.replace(/\s/g, "");
	return createHash("sha256")
		.update(JSON.stringify([code, scene, effort]))
		.digest("hex");
}
