import { mean as meanOf, sampleCorrelation, standardDeviation } from "simple-statistics";
import { describe, expect, test } from "vitest";
import { initialBelief } from "../../../src/domain/estimator/absorb";
import type { Belief } from "../../../src/domain/estimator/belief";
import { drawsFor } from "../../../src/domain/estimator/draws";
import { deliver, sample } from "../../../src/domain/estimator/pump";
import type { Product } from "../../../src/domain/event";
import { instant } from "../../../src/domain/quantity";
import { seedsFor } from "../../../src/domain/random";
import { aPumpReading } from "../../helpers/logs";

const size = 16384;
const width = 0.32;
const flexFuel = { id: "E85", range: [0.51, 0.83] } as unknown as Product;
const fresh = initialBelief("car", { capacityL: 58 } as never, size);

let calls = 0;
/** What a pump gives on a day, and what is believed of pumps after it. */
function bought(belief: Belief, day: number, place?: string, product = flexFuel) {
	const at = instant(new Date(1.7e12 + day * 8.64e7).toISOString());
	return deliver(belief, product, place, at, drawsFor(size, seedsFor(`purchase ${calls++}`)));
}

const mean = (column: ArrayLike<number>) => meanOf(Array.from(column));
const sd = (column: ArrayLike<number>) => standardDeviation(Array.from(column));
const less = (a: ArrayLike<number>, b: ArrayLike<number>) => Array.from(a, (x, i) => x - b[i]);
const areaOf = ({ areas }: Belief) => [...areas.values()][0].column;
const offsetOf = ({ places }: Belief) => [...places.values()][0].column;

describe("A pump never seen before", () => {
	const { delivered } = bought(fresh, 0);

	test("delivers a rectangular area level plus an offset of an eighth of the range", () => {
		expect(mean(delivered)).toBeCloseTo(0.67, 3);
		expect(sd(delivered)).toBeCloseTo(Math.hypot(width / Math.sqrt(12), width / 8), 3);
	});

	test("is out of its lawful range about once in twenty on either side", () => {
		for (const out of [delivered.filter((x) => x < 0.51), delivered.filter((x) => x > 0.83)]) {
			// A rectangle blurred by a normal loses 0.3989 · (1/8) beyond each end.
			expect(out.length / size).toBeCloseTo(0.3989 / 8, 2);
		}
	});

	test("is clipped to nothing and everything, and not to its label", () => {
		const wide = { id: "any", range: [0, 1] } as unknown as Product;
		const { delivered } = bought(fresh, 0, undefined, wide);
		expect([Math.min(...delivered), Math.max(...delivered)]).toEqual([0, 1]);
	});

	test("of a fuel known exactly delivers just that", () => {
		const drum = { id: "drum", range: [0.85, 0.85] } as unknown as Product;
		expect(new Set(bought(fresh, 0, "shed", drum).delivered)).toEqual(new Set([Math.fround(0.85)]));
	});
});

describe("Pumps of one area", () => {
	test("err together: what is common to two places is the area level", () => {
		const first = bought(fresh, 0, "north");
		const second = bought(first.belief, 0, "south");
		const common = width ** 2 / 12;
		const correlation = sampleCorrelation(Array.from(first.delivered), Array.from(second.delivered));
		expect(correlation).toBeCloseTo(common / (common + (width / 8) ** 2), 1);
	});

	test("drift by a hundredth of the range per root of a day", () => {
		const first = bought(fresh, 0);
		const after = bought(first.belief, 25);
		// Five hundredths; the walls take a little of it away.
		const moved = sd(less(areaOf(after.belief), areaOf(first.belief))) / width;
		expect(moved).toBeLessThan(0.051);
		expect(moved).toBeGreaterThan(0.045);
	});

	test("never drift out of the range, and stay rectangular for a lifetime", () => {
		const area = areaOf(bought(bought(fresh, 0).belief, 36_500).belief);
		expect(Math.min(...area)).toBeGreaterThanOrEqual(Math.fround(0.51));
		expect(Math.max(...area)).toBeLessThanOrEqual(Math.fround(0.83));
		expect(mean(area)).toBeCloseTo(0.67, 2);
		expect(sd(area)).toBeCloseTo(width / Math.sqrt(12), 2);
	});

	test("stand still where the clock did, or ran backwards", () => {
		const first = bought(fresh, 10, "north");
		for (const day of [10, 3]) expect(bought(first.belief, day, "north").delivered).toEqual(first.delivered);
	});
});

describe("A place", () => {
	test.each([
		[9, Math.exp(-0.2)],
		[45, Math.exp(-1)],
		[135, Math.exp(-3)],
	])("revisited after %i days still has its offset by %f", (days, kept) => {
		const first = bought(fresh, 0, "north");
		const again = bought(first.belief, days, "north");
		const [before, after] = [first, again].map(({ belief }) => Array.from(offsetOf(belief)));
		expect(sampleCorrelation(before, after)).toBeCloseTo(kept, 1);
		expect(sd(after)).toBeCloseTo(width / 8, 3);
	});

	test("has an offset of its own for every product, and none is kept for a fill at no place", () => {
		const first = bought(fresh, 0, "north").belief;
		const second = bought(first, 0, "north", { id: "E10", range: [0.09, 0.1] } as unknown as Product).belief;
		expect(second.places.size).toBe(2);
		expect(bought(fresh, 0).belief.places.size).toBe(0);
	});

	test("not seen for most of a year is dropped, so that a long log does not grow without end", () => {
		const first = bought(fresh, 0, "north").belief;
		expect(bought(first, 300, "south").belief.places.size).toBe(2);
		expect(bought(first, 330, "south").belief.places.size).toBe(1);
	});
});

describe("A sample from a pump", () => {
	test("leaves of area and offset what Bayes leaves of them, on a grid", () => {
		const { belief } = sample(fresh, aPumpReading({ value: 0.9, sd: 0.02 }), drawsFor(size, seedsFor("sample")));
		const [area, offset] = [areaOf(belief), offsetOf(belief)];
		// The area rectangular, the offset normal, the reading 98 % normal and 2 % rubbish.
		const grid = { mean: 0, weight: 0 };
		for (let a = 0.5105; a < 0.83; a += 0.001) {
			for (let d = -0.2; d < 0.2; d += 0.001) {
				const normal = (x: number, s: number) => Math.exp((-0.5 * x * x) / s ** 2) / (s * Math.sqrt(2 * Math.PI));
				const weight = normal(d, 0.04) * (0.98 * normal(0.9 - Math.min(1, a + d), 0.02) + 0.02);
				grid.mean += weight * (a + d);
				grid.weight += weight;
			}
		}
		let [sum, total] = [0, 0];
		for (let i = 0; i < size; i++) {
			sum += belief.weight[i] * (area[i] + offset[i]);
			total += belief.weight[i];
		}
		expect(Math.abs(sum / total - grid.mean / grid.weight)).toBeLessThan(0.002);
	});
});
