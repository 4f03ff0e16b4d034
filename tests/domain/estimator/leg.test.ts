import { describe, expect, test } from "vitest";
import { absorb, initialBelief } from "../../../src/domain/estimator/absorb";
import type { Belief } from "../../../src/domain/estimator/belief";
import { estimateOf, levelOf } from "../../../src/domain/estimator/estimate";
import { litresForOne } from "../../../src/domain/estimator/leg";
import { prepared } from "../../../src/domain/estimator/resample";
import type { TankEvent } from "../../../src/domain/event";
import { seedsFor } from "../../../src/domain/random";
import { runningOf } from "../../../src/domain/running";
import { bitsOf } from "../../helpers/bitsOf";
import { aFill, aLevel, aStart, aTankReading } from "../../helpers/logs";

const tank = { capacityL: 58 } as never;
const sharp = { capacityL: 58, clickSd: 0.001 } as never;
const size = 2 ** 15;
const E10 = { id: "E10", range: [0.09, 0.1] };

/** What is believed after the events, and the surprise of the last. */
function believed(events: readonly TankEvent[], car = tank) {
	return since(initialBelief("car", car, size), events, car);
}

function since(before: Belief, events: readonly TankEvent[], car = tank) {
	type Believed = Pick<ReturnType<typeof absorb>, "belief" | "surprise">;
	return events.reduce(({ belief }: Believed, event): Believed => absorb(belief, event, car, size), {
		belief: before,
		surprise: null,
	});
}

/** The n-th stop, of E10 unless it says otherwise. */
function stopAt(n: number, fields: Record<string, unknown>): TankEvent {
	return aFill({
		id: `fill ${n}`,
		stop: `stop ${n}`,
		at: new Date(1.78e12 + n * 6e8).toISOString(),
		product: E10,
		...fields,
	});
}

const start = aStart({ contents: { range: [0.09, 0.1] }, gauge: 0.25 });
const full = stopAt(1, { litres: 44, toClick: true, odometerKm: 10_000 });
/** Six times 30 L over 400 km. */
const known = believed([
	start,
	full,
	...[1, 2, 3, 4, 5, 6].map((n) => stopAt(1 + n, { litres: 30, toClick: true, odometerKm: 10_000 + 400 * n })),
]).belief;
const figures = ({ belief }: { belief: Belief }) => {
	const { low, median, high } = estimateOf(belief, null);
	const level = levelOf(belief);
	return [low, median, high, level.low / 58, level.median / 58, level.high / 58];
};
const expectSame = (found: { belief: Belief }, right: { belief: Belief }, within: number) => {
	for (const [i, figure] of figures(found).entries()) expect(Math.abs(figure - figures(right)[i])).toBeLessThan(within);
};
const without = (events: readonly TankEvent[]) =>
	events.map((event) => {
		const { odometerKm: _, ...rest } = event as TankEvent & { odometerKm?: number };
		return rest as TankEvent;
	});

describe("A leg between two odometers", () => {
	/** Litres of E10 at 9.5 % that do what a litre of gasoline does. */
	const forOne = (43.44 * 0.745) / (43.44 * 0.745 * 0.905 + 26.95 * 0.789 * 0.095);
	/** Quantiles of the consumption, L/100 km of E10, by summing over a grid: lognormal prior times a likelihood. */
	const onGrid = (likelihood: (perKm: number) => number) => {
		const grid = Array.from({ length: 6000 }, (_, i) => {
			const z = (i - 3000) / 600;
			const perKm = 0.09 * forOne * Math.exp(0.4 * z);
			return { perKm, weight: Math.exp(-0.5 * z * z) * likelihood(perKm) };
		});
		const total = grid.reduce((sum, { weight }) => sum + weight, 0);
		return [0.05, 0.5, 0.95].map((share) => {
			let reached = 0;
			let i = 0;
			while (reached < share * total) reached += grid[i++].weight;
			return 100 * grid[i - 1].perKm;
		});
	};
	const expectConsumption = (belief: Belief, right: readonly number[]) => {
		const { low, median, high } = runningOf(belief)!.litresPer100Km;
		for (const [i, figure] of [low, median, high].entries()) {
			expect(Math.abs(figure / right[i] - 1)).toBeLessThan(0.015);
		}
	};

	test("from click to click teaches the consumption what Bayes’ rule says", () => {
		const { belief, surprise } = believed(
			[start, full, stopAt(2, { litres: 30, toClick: true, odometerKm: 10_400 })],
			sharp,
		);
		expect(surprise).toBeNull();
		const density = (perKm: number) => Math.exp(-0.5 * ((30 / (400 * perKm) - 1) / 0.12) ** 2) / perKm;
		expectConsumption(belief, onGrid(density));
	});

	test("that the car got through without running dry says that it does not drink much", () => {
		const { belief } = believed([start, full, stopAt(2, { litres: 5, odometerKm: 10_900 })], sharp);
		const chanceOfEnough = (perKm: number) => {
			// The chance that 900 km times one plus 12 % of a standard normal took no more than 58 L, by summing.
			const most = (58 / (900 * perKm) - 1) / 0.12;
			let [below, all] = [0, 0];
			for (let z = -8; z < 8; z += 0.02) {
				const weight = Math.exp(-0.5 * z * z);
				all += weight;
				if (z <= most) below += weight;
			}
			return below / all;
		};
		expectConsumption(belief, onGrid(chanceOfEnough));
	});

	test("tells the level where neither gauge nor click does", () => {
		const last = stopAt(8, { litres: 1e-3, odometerKm: 12_600 });
		const level = levelOf(since(known, [last]).belief);
		expect(Math.abs(level.median - (58 - 15))).toBeLessThan(0.6);
		expect(level.high - level.low).toBeLessThan(9);
		const untold = levelOf(since(known, without([last])).belief);
		expect(untold.high - untold.low).toBeGreaterThan(48);
	});

	test("says the same when its odometer is given with a later fill of the stop", () => {
		const first = { stop: "last", litres: 10, product: { id: "E85", range: [0.51, 0.83] } };
		const second = { stop: "last", litres: 8, gauge: 0.5 };
		const atOnce = since(known, [stopAt(8, { ...first, odometerKm: 12_700 }), stopAt(9, second)]);
		const late = since(known, [stopAt(8, first), stopAt(9, { ...second, odometerKm: 12_700 })]);
		expectSame(late, atOnce, 0.004);
		expect(late.belief.odometer).toBe(12_700);
	});

	test("says the same when its odometer is given after a reading of the tank", () => {
		const first = { stop: "last", litres: 10, product: { id: "E85", range: [0.51, 0.83] } };
		const reading = aTankReading({ at: "2026-07-30T12:00:00Z", value: 0.24, sd: 0.03 });
		const second = { stop: "last", litres: 8 };
		const before = since(known, [stopAt(8, { ...first, odometerKm: 12_700 }), reading, stopAt(9, second)]);
		const later = since(known, [stopAt(8, first), reading, stopAt(9, { ...second, odometerKm: 12_700 })]);
		expectSame(later, before, 0.008);
	});

	test("does not count where the stop between has no odometer, or the account began anew", () => {
		for (const between of [stopAt(2, { litres: 20 }), aStart({ id: "anew", gauge: 0.8 }), aLevel({ gauge: 0.6 })]) {
			const events = [start, full, between, stopAt(3, { litres: 10, odometerKm: 10_400 })];
			const [found, right] = [believed(events), believed(without(events))];
			expect(bitsOf([found.belief.content, found.belief.weight])).toBe(
				bitsOf([right.belief.content, right.belief.weight]),
			);
			expect(found.belief.consumption).toBeNull();
		}
	});

	test("takes the first odometer of a stop and no other", () => {
		const first = stopAt(8, { stop: "last", litres: 5, odometerKm: 12_600 });
		const second = stopAt(9, { stop: "last", litres: 5, odometerKm: 12_900 });
		expect(bitsOf(since(known, [first, second]))).toBe(bitsOf(since(known, [first, ...without([second])])));
	});

	test("has draws of its stop's own, whichever entry brings it", () => {
		const small = prepared(known, 2 ** 8, seedsFor("small"));
		const consumptionBy = (id: string, stop: string) =>
			bitsOf(absorb(small, stopAt(8, { id, stop, litres: 5, odometerKm: 12_600 }), tank, 2 ** 8).belief.consumption);
		expect(consumptionBy("one", "here")).toBe(consumptionBy("other", "here"));
		expect(consumptionBy("one", "there")).not.toBe(consumptionBy("one", "here"));
	});

	test("of no length between two stops is neither leg nor fault", () => {
		const across = stopAt(8, { litres: 30, odometerKm: 12_400 });
		const found = since(known, [across]);
		expect(found.surprise).toBeNull();
		expectSame(found, since(known, without([across])), 0.002);
		expect(since(found.belief, [stopAt(9, { litres: 20, odometerKm: 12_700 })]).belief.stop?.leg).not.toBeNull();
	});

	test("of no length between a look at the gauge and a stop is neither leg nor fault", () => {
		const look = aLevel({ gauge: 0.6, odometerKm: 12_600, at: "2026-07-30T12:00:00Z" });
		const there = stopAt(8, { litres: 10, odometerKm: 12_600 });
		for (const events of [
			[look, there],
			[there, look],
		]) {
			const { belief, surprise } = since(known, events);
			expect(surprise).toBeNull();
			expect(belief.stop?.leg).toBeNull();
			expect(belief.odometer).toBe(12_600);
		}
	});

	test("leaves a consumption that a new start does not forget", () => {
		const { belief } = since(known, [aStart({ id: "anew" })]);
		expect(bitsOf(belief.consumption)).toBe(bitsOf(known.consumption));
		expect(belief.odometer).toBeNull();
	});
});

describe("A distance that cannot be", () => {
	const impossible = { kind: "impossibleDistance" };
	const told = { litres: 30, gauge: 0.5, toClick: true };

	test.each([
		["that runs backwards", 12_000],
		["of a thousandth of a kilometre", 12_400.001],
		["ten times too short for what was burned", 12_440],
		["ten times too long for what was in the tank", 16_400],
		["of a digit too many", 124_000],
	])("%s is left out and said to be so, and gauge and click still count", (_what, odometerKm) => {
		const last = stopAt(8, { ...told, odometerKm });
		const found = since(known, [last]);
		expect(found.surprise).toEqual(impossible);
		expectSame(found, since(known, without([last])), 0.002);
		expect(bitsOf(found.belief.consumption)).toBe(bitsOf(since(known, [stopAt(8, told)]).belief.consumption));
	});

	test("is no end of a leg, and its odometer no beginning of one", () => {
		const slip = stopAt(8, { ...told, odometerKm: 1 });
		const { belief, surprise } = since(known, [slip, stopAt(9, { litres: 20, odometerKm: 13_200 })]);
		expect(surprise).toBeNull();
		expect(belief.stop?.leg).toBeNull();
		expect(since(belief, [stopAt(10, { litres: 20, odometerKm: 13_400 })]).belief.stop?.leg).not.toBeNull();
	});

	test("leaves the consumption unknown if it was the first", () => {
		const { belief, surprise } = believed([start, full, stopAt(2, { ...told, odometerKm: 9_000 })]);
		expect(surprise).toEqual(impossible);
		expect(belief.consumption).toBeNull();
	});

	test("is found out by a later click of the same stop", () => {
		const first = { stop: "last", litres: 10 };
		const click = { stop: "last", litres: 20, toClick: true };
		const early = since(known, [stopAt(8, { ...first, odometerKm: 12_450 })]);
		expect(early.surprise).toBeNull();
		const found = absorb(early.belief, stopAt(9, click), tank, size);
		expect(found.surprise).toEqual(impossible);
		expectSame(found, since(known, [stopAt(8, first), stopAt(9, click)]), 0.006);
		expect(found.belief.stop?.leg).toBeNull();
	});

	test("is not blamed for litres that fit no tank, and no leg begins there", () => {
		const { belief, surprise } = since(known, [stopAt(8, { litres: 500, odometerKm: 12_800 })]);
		expect(surprise).toEqual({ kind: "impossibleLevel" });
		expect(since(belief, [stopAt(9, { litres: 5, odometerKm: 13_000 })]).belief.stop?.leg).toBeNull();
	});

	test("is not blamed for a nozzle that clicked though the tank was half empty", () => {
		const { belief: half } = since(known, [stopAt(8, { litres: 5, odometerKm: 12_800 })]);
		const found = since(half, [stopAt(9, { litres: 1, toClick: true, odometerKm: 12_900 })]);
		expect(found.surprise).toEqual({ kind: "impossibleLevel" });
		expectSame(found, since(half, [stopAt(9, { litres: 1, odometerKm: 12_900 })]), 0.004);
		expect(found.belief.stop?.leg).not.toBeNull();
	});
});

describe("A belief with odometers", () => {
	test("goes on from a structured clone as if it had never been put away", () => {
		const stop = { stop: "last", litres: 6 };
		const inStop = since(known, [stopAt(8, { ...stop, odometerKm: 12_600 })]).belief;
		for (const [before, next] of [
			[known, stopAt(8, { litres: 5, odometerKm: 12_600 })],
			[inStop, stopAt(9, { ...stop, toClick: true })],
		] as const) {
			expect(bitsOf(since(structuredClone(before), [next]))).toBe(bitsOf(since(before, [next])));
		}
	});

	test("keeps what belongs together when its sample is drawn afresh", () => {
		const { belief } = since(known, [stopAt(8, { litres: 5, odometerKm: 12_600 })]);
		const { consumption, stop } = prepared(belief, size / 2, seedsFor("afresh"));
		expect(bitsOf(stop!.legStart!.level)).toBe(bitsOf(stop!.levelBound));
		const { expected, consumptionBefore } = stop!.leg!;
		const asked = consumption!.map((perKm, i) => perKm * 200 * litresForOne(stop!.contentBefore[i] as never));
		expect(Math.max(...asked.map((litres, i) => Math.abs(expected[i] / litres - 1)))).toBeLessThan(1e-6);
		// From leg to leg the consumption changes by 3 percent.
		const squares = consumption!.reduce((sum, is, i) => sum + (is / consumptionBefore![i] - 1) ** 2, 0);
		expect(Math.abs(Math.sqrt(squares / consumption!.length) - 0.03)).toBeLessThan(0.003);
	});
});
