import fc from "fast-check";
import { median } from "simple-statistics";
import { describe, expect, test } from "vitest";
import { usualSpread } from "../../../src/domain/datalog/constants";
import { blockMeans, medianOf, robustMean, sdOfMean, weightedMedian } from "../../../src/domain/datalog/robust";

const value = fc.double({ min: -0.5, max: 0.5, noNaN: true });
const part = fc.record({
	value,
	weight: fc.integer({ min: 1, max: 9 }),
	sd: fc.double({ min: 0, max: 0.1, noNaN: true }),
});
const parts = fc.array(part, { minLength: 1, maxLength: 12 });

describe("weightedMedian()", () => {
	test("is the median of the values, each as often as it weighs", () => {
		fc.assert(
			fc.property(parts, (parts) => {
				const each = parts.flatMap(({ value, weight }) => new Array<number>(weight).fill(value));
				expect(weightedMedian(parts)).toBeCloseTo(median(each), 12);
			}),
		);
	});
});

describe("robustMean()", () => {
	test("moves with its stretches and does not mind their order", () => {
		fc.assert(
			fc.property(parts, value, (parts, by) => {
				const moved = parts.map((part) => ({ ...part, value: part.value + by })).reverse();
				const [a, b] = [robustMean(parts), robustMean(moved)];
				expect(b.value).toBeCloseTo(a.value + by, 10);
				expect(b.between).toBeCloseTo(a.between, 10);
				expect(b.within).toBeCloseTo(a.within, 10);
			}),
		);
	});
	test("is not carried away by a third of odd stretches", () => {
		const good = Array.from({ length: 8 }, (_, i) => ({ value: 0.05 + i / 1000, weight: 20, sd: 0 }));
		const odd = Array.from({ length: 3 }, () => ({ value: 0.9, weight: 20, sd: 0 }));
		expect(robustMean([...good, ...odd]).value).toBeLessThan(0.06);
	});
	test("knows one stretch no better than stretches usually agree", () => {
		expect(robustMean([{ value: 0.1, weight: 60, sd: 0.002 }])).toMatchObject({ value: 0.1, within: 0.002 });
		expect(robustMean([{ value: 0.1, weight: 60, sd: 0 }]).between).toBeGreaterThanOrEqual(usualSpread);
	});
	test("gets surer with more stretches, and less sure the further they lie apart", () => {
		const made = (count: number, apart: number) =>
			robustMean(Array.from({ length: count }, (_, i) => ({ value: (i % 2) * apart, weight: 20, sd: 0.01 })));
		expect(made(16, 0.02).between).toBeLessThan(made(4, 0.02).between);
		expect(made(16, 0.02).within).toBeCloseTo(0.01 / 4, 10);
		expect(made(16, 0.1).between).toBeGreaterThan(made(16, 0.02).between);
	});
});

test("medianOf() and blockMeans() leave out what is missing", () => {
	expect(medianOf(Float32Array.of(3, Number.NaN, 1, 2))).toBe(2);
	expect(medianOf(Float32Array.of(1, 9, 3, 4), 2)).toBe(3.5);
	expect(medianOf(Float32Array.of(Number.NaN))).toBeNaN();
	const values = Float32Array.of(1, Number.NaN, 3, 5, 7, 100);
	expect([...blockMeans(values, { from: 0, to: 5 }, 2)]).toEqual([1, 4]);
	expect([...blockMeans(values, { from: 0, to: 1 }, 2)]).toEqual([1]);
});

test("sdOfMean() is the standard error of the blocks, and what is usual for a single one", () => {
	expect(sdOfMean(Float32Array.of(1, 2, 3))).toBeCloseTo(Math.sqrt(1 / 3), 7);
	expect(sdOfMean(Float32Array.of(1))).toBe(usualSpread);
});
