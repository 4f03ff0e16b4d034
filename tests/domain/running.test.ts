import { describe, expect, test } from "vitest";
import { absorb, initialBelief } from "../../src/domain/estimator/absorb";
import type { Belief } from "../../src/domain/estimator/belief";
import { levelOf } from "../../src/domain/estimator/estimate";
import type { TankEvent } from "../../src/domain/event";
import type { Fraction } from "../../src/domain/quantity";
import { runningOf, volumeRatio } from "../../src/domain/running";
import { aFill, aStart } from "../helpers/logs";

const tank = { capacityL: 58 } as never;
const size = 2 ** 14;

function since(before: Belief, ...events: TankEvent[]): Belief {
	return events.reduce((belief, event) => absorb(belief, event, tank, size).belief, before);
}

/** The n-th stop: 36 L of E10 to the click, 400 km after the one before. */
function stopAt(n: number, fields: Record<string, unknown> = {}): TankEvent {
	const at = new Date(1.78e12 + n * 6e8).toISOString();
	const product = { id: "E10", range: [0.09, 0.1] };
	const shared = { id: `fill ${n}`, stop: `stop ${n}`, at, product, odometerKm: 10_000 + 400 * n };
	return aFill({ ...shared, litres: 36, toClick: true, ...fields });
}

const started = since(initialBelief("car", tank, size), aStart({ contents: { range: [0.09, 0.1] }, gauge: 0.3 }));
const known = since(started, ...[1, 2, 3, 4, 5, 6, 7, 8].map((n) => stopAt(n)));

describe("runningOf(belief)", () => {
	test("knows nothing until a leg was measured", () => {
		expect(runningOf(started)).toBeNull();
		expect(runningOf(since(started, stopAt(1)))).toBeNull();
		expect(runningOf(since(started, stopAt(1), stopAt(2, { odometerKm: 10_000 })))).toBeNull();
		expect(runningOf(since(started, stopAt(1), stopAt(2)))).not.toBeNull();
	});

	test("gives what the car burned over the distance, more surely with every leg", () => {
		const first = runningOf(since(started, stopAt(1), stopAt(2)))!.litresPer100Km;
		const later = runningOf(known)!.litresPer100Km;
		expect(Math.abs(later.median - 9)).toBeLessThan(0.3);
		expect(later.low).toBeLessThan(9);
		expect(later.high).toBeGreaterThan(9);
		expect(later.high - later.low).toBeLessThan(0.6 * (first.high - first.low));
	});

	test("gives the way that the level is good for, with the spread of town and motorway", () => {
		const { rangeKm, litresPer100Km } = runningOf(known)!;
		const level = levelOf(known);
		expect(Math.abs(rangeKm.median / ((100 * level.median) / litresPer100Km.median) - 1)).toBeLessThan(0.01);
		// A spread of 12 % for one leg and 3 % for the change, at the least.
		expect(rangeKm.high / rangeKm.low).toBeGreaterThan(Math.exp(2 * 1.645 * 0.12));
		expect(rangeKm.high / rangeKm.low).toBeLessThan(Math.exp(2 * 1.645 * 0.16));
	});

	test("takes a fuel of less heat for more litres and less road", () => {
		const flex = stopAt(9, { litres: 36, product: { id: "drum", range: [0.85, 0.85] }, place: "workshop" });
		const { rangeKm, litresPer100Km } = runningOf(since(known, flex))!;
		const before = runningOf(known)!;
		expect(litresPer100Km.median / before.litresPer100Km.median).toBeGreaterThan(1.15);
		expect(rangeKm.median / before.rangeKm.median).toBeLessThan(0.87);
	});

	test("gives the same every time", () => {
		expect(runningOf(known)).toEqual(runningOf(structuredClone(known)));
	});
});

describe("volumeRatio(content, than)", () => {
	const ratio = (content: number, than: number) => volumeRatio(content as Fraction, than as Fraction);

	test("is the ratio of the heats in a litre", () => {
		// 43.44 MJ/kg at 0.745 kg/L against 26.95 MJ/kg at 0.789 kg/L.
		expect(ratio(1, 0)).toBeCloseTo(32.3628 / 21.26355, 4);
		expect(ratio(0.3, 0.1)).toBeCloseTo((0.9 * 32.3628 + 0.1 * 21.26355) / (0.7 * 32.3628 + 0.3 * 21.26355), 4);
	});

	test("is one for the same fuel, and undone by the way back", () => {
		expect(ratio(0.4, 0.4)).toBe(1);
		expect(ratio(0.85, 0.1) * ratio(0.1, 0.85)).toBeCloseTo(1, 12);
	});
});
