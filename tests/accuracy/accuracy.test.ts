/** The gate: the estimator against the oracle on every history, and its 90 % range against simulated truths. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { replay } from "../../src/domain/estimator/replay";
import { quickReplay } from "../helpers/quickReplay";
import { type BruteForceEntry, bruteForce } from "./bruteForce";
import { histories } from "./histories";
import { type Answers, figures, fingerprintOf } from "./oracle";
import { simulated } from "./simulate";

/** What model.md promises, for any history. */
const promised = { quantile: 0.004, chance: 0.01 } as const;
const kindOf = (figure: (typeof figures)[number]) => (figure === "below" || figure === "above" ? "chance" : "quantile");

const oracle: Answers[] = JSON.parse(readFileSync(join(import.meta.dirname, "oracle.json"), "utf8"));

describe("The oracle's answers", () => {
	test("are there for every history and for no other, and none is stale", () => {
		const stale = histories.filter((history) => answersTo(history.name)?.fingerprint !== fingerprintOf(history));
		expect(stale.map(({ name }) => `${name}: run node tests/accuracy/makeOracle.mjs`)).toEqual([]);
		expect(oracle.map(({ name }) => name).sort()).toEqual(histories.map(({ name }) => name).sort());
	});

	test.each(oracle)("to “$name” are sure enough to judge by", ({ error }) => {
		expect(error.quantile).toBeLessThan(promised.quantile / 5);
		expect(error.chance).toBeLessThan(promised.chance / 5);
	});

	// The two of which the oracle is surest, so that few samples do.
	const surest = [...oracle].sort((a, b) => a.error.chance - b.error.chance).slice(0, 2);
	test.each(surest)("to “$name” come out again with fewer samples and another seed", ({ name, entries }) => {
		const { car, events } = histories.find((history) => history.name === name)!;
		expect(disagreements(bruteForce(car, events, { samples: 1_000_000, seed: 99 }), entries)).toEqual([]);
	});
});

describe("The estimator agrees with the oracle, quantiles within 0.004 and chances within 0.01, after every event:", () => {
	test.each(histories)("$name", ({ name, car, events }) => {
		const found = [...replay(car, events)].map(({ event, estimate }) => ({ ...estimate, id: event.id }));
		expect(disagreements(found, answersTo(name)?.entries ?? [])).toEqual([]);
	});
});

describe("The 90 % range", () => {
	// Small samples, or it would take minutes: their error is far below what 300 histories can tell.
	const verdicts = Array.from({ length: 300 }, (_, n) => {
		const { car, events, truth } = simulated(n);
		return [...quickReplay(car, events, 4096)].map(({ estimate: { low, median, high } }, i) => ({
			final: i === truth.length - 1,
			under: truth[i] < low,
			over: truth[i] > high,
			belowMedian: truth[i] < median,
		}));
	}).flat();
	const share = (among: typeof verdicts, what: (verdict: (typeof verdicts)[number]) => boolean) =>
		among.filter(what).length / among.length;
	const final = verdicts.filter((verdict) => verdict.final);

	test("holds the truth after four stops in 90 of 100 simulated histories, give or take four", () => {
		expect(final).toHaveLength(300);
		expect(Math.abs(share(final, ({ under, over }) => !under && !over) - 0.9)).toBeLessThan(0.04);
	});

	test("holds it along the way too, missing as often below as above, with the median in the middle", () => {
		expect(Math.abs(share(verdicts, ({ under, over }) => !under && !over) - 0.9)).toBeLessThan(0.02);
		expect(Math.abs(share(verdicts, ({ under }) => under) - 0.05)).toBeLessThan(0.015);
		expect(Math.abs(share(verdicts, ({ over }) => over) - 0.05)).toBeLessThan(0.015);
		expect(Math.abs(share(verdicts, ({ belowMedian }) => belowMedian) - 0.5)).toBeLessThan(0.04);
	});
});

function answersTo(name: string): Answers | undefined {
	return oracle.find((answers) => answers.name === name);
}

/** A line for every figure that is out by more than what was promised. */
function disagreements(found: readonly BruteForceEntry[], right: readonly BruteForceEntry[]): string[] {
	expect(found.map(({ id }) => id)).toEqual(right.map(({ id }) => id));
	return found.flatMap((entry, i) =>
		figures.flatMap((figure) => {
			const [is, should] = [entry[figure], right[i][figure]];
			if (is === null || should === null) return is === should ? [] : [`${entry.id} ${figure}: ${is}, not ${should}`];
			if (Math.abs(is - should) <= promised[kindOf(figure)]) return [];
			return [`${entry.id} ${figure}: ${is.toFixed(4)}, not ${should.toFixed(4)}`];
		}),
	);
}
