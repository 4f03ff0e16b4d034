import { describe, expect, test } from "vitest";
import { absorb, initialBelief } from "../../../src/domain/estimator/absorb";
import type { Belief } from "../../../src/domain/estimator/belief";
import { estimateOf, levelOf } from "../../../src/domain/estimator/estimate";
import type { TankEvent } from "../../../src/domain/event";
import { contentRange } from "../../../src/domain/quantity";
import { bitsOf } from "../../helpers/bitsOf";
import { aFill, aLevel, aPumpReading, aStart, aTankReading, aTrimReading } from "../../helpers/logs";

const tank = { capacityL: 58 } as never;
const window = contentRange(0.26, 0.34);
const said = (belief: Belief) => estimateOf(belief, window);

function believed(...events: TankEvent[]): Belief {
	return events.reduce((belief, event) => absorb(belief, event, tank).belief, initialBelief("car", tank));
}

const blended = believed(
	aStart({ contents: { range: [0.09, 0.1] }, gauge: 0.2 }),
	aFill({ litres: 18, gauge: 0.2 }),
	aFill({ id: "second", product: { id: "E10", range: [0.09, 0.1] }, litres: 26 }),
);

describe("initialBelief(…)", () => {
	test("knows nothing: any content up to 85 %, any level", () => {
		const belief = initialBelief("car", tank);
		const { low, median, high } = said(belief);
		expect([low, median, high]).toEqual([0.0425, 0.425, 0.8075].map((x) => expect.closeTo(x, 4)));
		expect(levelOf(belief).median / 58).toBeCloseTo(0.5, 2);
	});
});

describe("A start", () => {
	test("with a range is rectangular over it", () => {
		const { low, median, high } = said(believed(aStart({ contents: { range: [0.2, 0.4] } })));
		expect([low, median, high]).toEqual([0.21, 0.3, 0.39].map((x) => expect.closeTo(x, 4)));
	});

	test("with a value is normal around it", () => {
		const { low, median, high } = said(believed(aStart({ contents: { value: 0.3, sd: 0.02 } })));
		expect([low, median, high]).toEqual([0.3 - 0.0329, 0.3, 0.3 + 0.0329].map((x) => expect.closeTo(x, 4)));
	});

	test("with a value near the end is cut at it", () => {
		const { low, median } = said(believed(aStart({ contents: { value: 0, sd: 0.1 } })));
		// Half a normal: median 0.674 sd, fifth percentile 0.063 sd.
		expect([low, median]).toEqual([0.0063, 0.0674].map((x) => expect.closeTo(x, 3)));
	});

	test("with a gauge has its level from it, spread by reading and bias", () => {
		const level = levelOf(believed(aStart({ gauge: 0.5 })));
		expect(level.median / 58).toBeCloseTo(0.5, 2);
		expect((level.high - level.low) / 58).toBeCloseTo(2 * 1.645 * Math.hypot(0.05, 0.03), 2);
	});

	test("forgets the tank of before, and nothing of the car", () => {
		const before = believed(aStart({ gauge: 0 }), aFill({ litres: 40, toClick: true }), aLevel({ gauge: 0.9 }));
		const after = absorb(before, aStart({ id: "drained", contents: { range: [0, 0.1] } }), tank).belief;
		const alone = believed(aStart({ id: "drained", contents: { range: [0, 0.1] } }));
		expect(said(after).median).toBeCloseTo(said(alone).median, 3);
		expect([...after.areas.keys()]).toEqual([...before.areas.keys()]);
		expect(mean(after, after.capacityFactor)).toBeCloseTo(mean(before, before.capacityFactor), 4);
	});
});

describe("Gauge readings alone", () => {
	test("say nothing about how large the tank is", () => {
		let belief = initialBelief("car", tank);
		for (let i = 0; i < 12; i++) belief = absorb(belief, aStart({ id: `start ${i}`, gauge: 0.4 }), tank).belief;
		expect(mean(belief, belief.capacityFactor)).toBeCloseTo(1, 5);
	});
});

describe("A reading", () => {
	test("that agrees narrows the account and surprises nobody", () => {
		const { belief, surprise } = absorb(blended, aTankReading({ value: said(blended).median }), tank);
		expect(surprise).toBeNull();
		const [before, after] = [said(blended), said(belief)];
		expect(after.high - after.low).toBeLessThan(before.high - before.low);
	});

	test.each([
		["of the tank", aTankReading({ value: 0.9, sd: 0.02 })],
		["of the tank, with an sd that makes it all but impossible", aTankReading({ value: 0.9, sd: 1e-6 })],
		["of the trim", aTrimReading({ value: 0.6, sd: 0.02 })],
		["of a pump", aPumpReading({ value: 0, sd: 0.005 })],
	])("%s far off is called out by name, and the account stands (2 % rubbish)", (_what, event) => {
		const { belief, surprise } = absorb(blended, event, tank);
		expect(surprise).toEqual({ kind: "disagrees", chance: expect.any(Number) });
		expect((surprise as { chance: number }).chance).toBeLessThan(0.01);
		const [before, after] = [said(blended), said(belief)];
		for (const figure of ["median", "low", "high"] as const) {
			expect(Math.abs(after[figure] - before[figure])).toBeLessThan(0.004);
		}
	});

	test("38.6 sd off, where the density underflows, does not silence a reading", () => {
		const known = believed(aStart({ contents: { range: [0.1, 0.6] } }));
		// Some particles lie just where exp gives out, others right at the reading.
		const { belief } = absorb(known, aTankReading({ value: 0.55, sd: 0.01 }), tank);
		expect(said(belief).low).toBeGreaterThan(0.5);
	});

	test("of a chance of one in a hundred is the edge of surprise", () => {
		const known = believed(aStart({ contents: { value: 0.3, sd: 0.03 } }));
		// Both are normal: together 0.05, and 2.576 sd on either side leave a hundredth.
		const at = (sds: number) => absorb(known, aTankReading({ value: 0.3 + sds * 0.05, sd: 0.04 }), tank).surprise;
		expect(at(2.54)).toBeNull();
		expect(at(2.61)).toEqual({ kind: "disagrees", chance: expect.closeTo(0.009, 3) });
	});

	test("of a pump is believed above the label, where the area alone would not go", () => {
		const sampled = absorb(blended, aPumpReading({ value: 0.87, sd: 0.01 }), tank).belief;
		const { belief } = absorb(
			absorb(sampled, aStart({ id: "empty", at: aPumpReading().at, gauge: 0 }), tank).belief,
			aFill({ id: "there", stop: "there", at: aPumpReading().at, place: aPumpReading().place, litres: 55, gauge: 0 }),
			tank,
		);
		expect(said(belief).high).toBeGreaterThan(0.84);
	});
});

test("A gauge that is noted again with a later fill of the stop says nothing more, to the last bit", () => {
	const size = 2 ** 8;
	const after = (gauge: Record<string, unknown>) =>
		[
			aStart({ gauge: 0.4 }),
			aFill({ id: "first", litres: 10, gauge: 0.3 }),
			aFill({ id: "second", litres: 8, ...gauge }),
		].reduce((belief, event) => absorb(belief, event, tank, size).belief, initialBelief("car", tank, size));
	expect(bitsOf(after({ gauge: 0.3 }))).toBe(bitsOf(after({})));
	expect(bitsOf(after({ gauge: 0.9 }))).toBe(bitsOf(after({})));
});

describe("A level that cannot be", () => {
	test("is left out and said to be so, and what was poured is in the tank", () => {
		const { belief, surprise } = absorb(blended, aFill({ id: "flood", stop: "flood", litres: 500 }), tank);
		expect(surprise).toEqual({ kind: "impossibleLevel" });
		expect(levelOf(belief).low).toBeGreaterThan(500);
	});

	test("is not made of a click after a sip", () => {
		const { surprise } = absorb(blended, aFill({ id: "sip", stop: "sip", litres: 2, toClick: true }), tank);
		expect(surprise).toBeNull();
	});

	test("from a nozzle that clicked early is left out, and the rest of the stop is not", () => {
		const quarter = believed(aStart({ contents: { range: [0.09, 0.1] }, gauge: 0.25 }));
		const { belief, surprise } = absorb(quarter, aFill({ litres: 12, gauge: 0.25, toClick: true }), tank);
		expect(surprise).toEqual({ kind: "impossibleLevel" });
		// Just as if no click had been noted, instead of all faith in the one particle nearest to it.
		const without = said(absorb(quarter, aFill({ litres: 12, gauge: 0.25 }), tank).belief);
		for (const figure of ["median", "low", "high"] as const) {
			expect(Math.abs(said(belief)[figure] - without[figure])).toBeLessThan(0.002);
		}
	});

	test("after a fill that was never entered is left out, and the content stays as uncertain as it was", () => {
		const empty = believed(aStart({ contents: { range: [0, 0.85] }, gauge: 0.9 }), aLevel({ id: "low", gauge: 0.1 }));
		const { belief, surprise } = absorb(empty, aLevel({ id: "full", gauge: 0.9 }), tank);
		expect(surprise).toEqual({ kind: "impossibleLevel" });
		expect(said(belief).high - said(belief).low).toBeGreaterThan(0.76);
	});
});

function mean(belief: Belief, column: Float32Array): number {
	let [sum, total] = [0, 0];
	for (let i = 0; i < column.length; i++) {
		sum += belief.weight[i] * column[i];
		total += belief.weight[i];
	}
	return sum / total;
}
