import { describe, expect, test } from "vitest";
import {
	type LawfulBelief,
	lawfulClick,
	lawfulFill,
	lawfulGauge,
	lawfulOpen,
	lawfulStart,
} from "../../../src/domain/estimator/lawful";
import { replay } from "../../../src/domain/estimator/replay";
import { contentRange } from "../../../src/domain/quantity";
import { toLitres } from "../../../src/domain/units";
import { aCar, aFill, aStart } from "../../helpers/logs";

const e10 = contentRange(0.09, 0.1);
const flexFuel = contentRange(0.51, 0.83);
const capacity = 50;
const known = (content: readonly [number, number], level: readonly [number, number]): LawfulBelief => ({
	content: contentRange(...content),
	level,
	stop: null,
});

describe("Three parts gasoline and one part E85 “make E30” (common practice)", () => {
	const gallons = (amount: number) => toLitres(amount, "gal");
	const capacityL = gallons(16);

	test("in an empty tank they make 19.5 to 28.25 %, never 30", () => {
		const stop = lawfulOpen(known([0, 0.85], [0, 0]));
		const gasoline = lawfulFill(stop, gallons(12), e10, capacityL);
		const { content } = lawfulFill(gasoline, gallons(4), flexFuel, capacityL);
		// (12 · 0.09 + 4 · 0.51) / 16 and (12 · 0.10 + 4 · 0.83) / 16.
		expect(content[0]).toBeCloseTo(0.195, 12);
		expect(content[1]).toBeCloseTo(0.2825, 12);
		expect(content[1]).toBeLessThan(0.3);
	});

	test("the order of the two pumps makes no difference", () => {
		const stop = lawfulOpen(known([0, 0.85], [0, 0]));
		const flex = lawfulFill(stop, gallons(4), flexFuel, capacityL);
		const { content } = lawfulFill(flex, gallons(12), e10, capacityL);
		expect(content[0]).toBeCloseTo(0.195, 12);
		expect(content[1]).toBeCloseTo(0.2825, 12);
	});

	test("a whole log, from E10 with the gauge near zero, stays below 30 % at the high end, and E30 is likely missed", () => {
		const window = { id: "e30", name: "E30", calibratedFor: 0.3, window: [0.26, 0.34] };
		const car = aCar({ tank: { capacityL }, calibrations: [window] });
		const events = [
			aStart({ contents: { range: [0.09, 0.1] }, gauge: 0.02 }),
			aFill({ id: "gas", stop: "s", product: { id: "e10", range: e10 }, litres: gallons(12), gauge: 0.02 }),
			aFill({ id: "flex", stop: "s", product: { id: "flex", range: flexFuel }, litres: gallons(4) }),
		];
		const { estimate } = [...replay(car, events)][2];
		expect(estimate.high).toBeLessThan(0.3);
		expect(estimate.lawfulHigh).toBeLessThan(0.3);
		expect(estimate.below).toBeGreaterThan(0.6);
		expect(estimate.above).toBeLessThan(0.001);
	});
});

test("lawfulStart(…) without a gauge allows every level up to a capacity three sd above the rated", () => {
	expect(lawfulStart(e10, capacity).level).toEqual([0, capacity * 1.045]);
});

test("lawfulStart(…) with a gauge allows three sd of reading and bias, and three of the capacity", () => {
	const [low, high] = lawfulStart(e10, capacity, 0.5, 0.05).level;
	expect(low).toBeCloseTo((0.5 - 0.24) * capacity * 0.955, 12);
	expect(high).toBeCloseTo((0.5 + 0.24) * capacity * 1.045, 12);
	// No further than what a tank holds at most.
	expect(lawfulStart(e10, capacity, 1, 0.5).level).toEqual([0, expect.closeTo(1.08 * 1.045 * capacity, 12)]);
});

test("lawfulOpen(…) lets the level fall to nothing and the content be", () => {
	const open = lawfulOpen(known([0.2, 0.3], [30, 40]));
	expect(open.level).toEqual([0, 40]);
	expect(open.content).toEqual([0.2, 0.3]);
});

test("lawfulGauge(…) narrows the level before a stop's first fill even after it", () => {
	const stop = lawfulOpen(known([0, 0], [0, 50]));
	const filled = lawfulFill(stop, 20, flexFuel, capacity);
	const read = lawfulGauge(filled, 0.3, 0, capacity);
	const most = (0.3 + 0.09) * capacity * 1.045;
	expect(read.content[0]).toBeCloseTo((20 * 0.51) / (20 + most), 12);
	expect(read.level[1]).toBeCloseTo(20 + most, 12);
});

test("lawfulFill(…) takes the level before as no more than leaves room for what was poured", () => {
	const { level, content } = lawfulFill(lawfulOpen(known([0, 0], [50, 50])), 45, flexFuel, capacity);
	const most = 1.08 * 1.045 * capacity;
	expect(level).toEqual([45, expect.closeTo(most, 12)]);
	expect(content[0]).toBeCloseTo((45 * 0.51) / most, 12);
	expect(content[1]).toBeCloseTo(0.83, 12);
});

test("lawfulFill(…) between stops changes nothing", () => {
	const between = known([0, 0.1], [10, 20]);
	expect(lawfulFill(between, 10, flexFuel, capacity)).toBe(between);
	expect(lawfulClick(between, 0.02, capacity)).toBe(between);
	expect(lawfulGauge(between, 0.5, 0.05, capacity)).toBe(between);
});

test("lawfulClick(…) says that the tank is full within three sd", () => {
	const filled = lawfulFill(lawfulOpen(known([0.1, 0.1], [0, 50])), 30, e10, capacity);
	const { level } = lawfulClick(filled, 0.02, capacity);
	expect(level[0]).toBeCloseTo(0.955 * 0.94 * capacity, 12);
	expect(level[1]).toBeCloseTo(1.045 * 1.06 * capacity, 12);
});

test("Evidence that excludes what was believed is left out", () => {
	const stop = lawfulOpen(known([0, 0], [0, 10]));
	expect(lawfulGauge(stop, 1, 0.05, capacity).level).toEqual([0, 10]);
	expect(lawfulFill(stop, 500, e10, capacity).level).toEqual([500, 510]);
});

test("Nothing poured into nothing leaves the content as it was", () => {
	expect(lawfulFill(lawfulOpen(known([0.2, 0.3], [0, 0])), 0, e10, capacity).content).toEqual([0.2, 0.3]);
});
