import fc from "fast-check";
import { jStat } from "jstat";
import { quantile } from "simple-statistics";
import { expect, test } from "vitest";
import { ascending } from "../../../src/domain/estimator/belief";
import { quantilesOf } from "../../../src/domain/estimator/quantile";

const size = 4096;
const chances = [0.01, 0.025, 0.05, 0.25, 0.5, 0.75, 0.95, 0.975, 0.99];
const ones = new Float32Array(size).fill(1);
const quantilesIn = (values: Float32Array, weight = ones) => quantilesOf(values, weight, ascending(values));

/** One value from each of `size` equally likely parts, in an order that is not theirs. */
function stratified(inverse: (chance: number) => number): Float32Array {
	return Float32Array.from({ length: size }, (_, i) => inverse((((i * 1237) % size) + 0.5) / size));
}

test.each([
	["rectangular on 0.51 … 0.83", (chance: number) => jStat.uniform.inv(chance, 0.51, 0.83)],
	["a beta with 2 and 5", (chance: number) => jStat.beta.inv(chance, 2, 5)],
	["a beta with 0.5 and 0.5, steep at both ends", (chance: number) => jStat.beta.inv(chance, 0.5, 0.5)],
	["a normal around 0.3, sd 0.04", (chance: number) => jStat.normal.inv(chance, 0.3, 0.04)],
])("quantilesOf(…) of a stratified sample, %s, is jstat's inverse", (_name, inverse) => {
	const found = quantilesIn(stratified(inverse));
	for (const chance of chances) expect(Math.abs(found(chance) - inverse(chance))).toBeLessThan(2e-5);
});

test.each([
	["a beta with 2 and 5", (x: number) => jStat.beta.pdf(x, 2, 5), (p: number) => jStat.beta.inv(p, 2, 5)],
	["a normal", (x: number) => jStat.normal.pdf(x, 0.5, 0.1), (p: number) => jStat.normal.inv(p, 0.5, 0.1)],
])("quantilesOf(…) of an even sample weighted by the density of %s is jstat's inverse", (_name, density, inverse) => {
	const even = stratified((chance) => chance);
	const found = quantilesIn(
		even,
		even.map((x) => 1000 * density(x)),
	);
	for (const chance of chances) expect(Math.abs(found(chance) - inverse(chance))).toBeLessThan(2e-4);
});

test("quantilesOf(…) with equal weights is simple-statistics' quantile to a step of the sample", () => {
	const values = stratified((chance) => chance ** 3);
	const found = quantilesIn(values);
	for (const chance of chances) {
		expect(Math.abs(found(chance) - quantile(Array.from(values), chance))).toBeLessThan(3 / size);
	}
});

test("quantilesOf(…) neither falls nor leaves the sample, even where all values but one share seven digits", () => {
	const value = fc.oneof(fc.double({ min: 0.3, max: 0.30001, noNaN: true }), fc.constantFrom(0, 1, 0.3));
	const samples = fc.array(fc.tuple(value, fc.double({ min: 0, max: 1, noNaN: true })), {
		minLength: 2,
		maxLength: 64,
	});
	fc.assert(
		fc.property(samples, (pairs) => {
			const values = Float32Array.from(pairs, ([x]) => x);
			const found = quantilesIn(
				values,
				Float32Array.from(pairs, ([, weight]) => weight + 1e-3),
			);
			let before = Math.min(...values);
			for (let chance = 0; chance <= 1; chance += 1 / 40) {
				const now = found(chance);
				expect(now).toBeGreaterThanOrEqual(before);
				before = now;
			}
			expect(before).toBeLessThanOrEqual(Math.max(...values));
		}),
	);
});

test("quantilesOf(…) passes over particles of no weight", () => {
	const values = Float32Array.of(0.1, 0.2, 0.3, 0.4);
	const found = quantilesOf(values, Float32Array.of(0, 1, 1, 0), ascending(values));
	expect(found(0.5)).toBeCloseTo(0.25, 6);
	expect(found(0.25)).toBeCloseTo(0.2, 6);
});

test("ascending(column) sorts exactly as comparing does", () => {
	const positive = fc.float({ min: 0, noNaN: true }).map((x) => x + 0);
	fc.assert(
		fc.property(fc.array(positive, { minLength: 1, maxLength: 200 }), (numbers) => {
			const column = Float32Array.from(numbers);
			const order = ascending(column);
			expect(Float32Array.from(order, (i) => column[i])).toEqual(column.slice().sort());
			expect(new Set(order).size).toBe(column.length);
		}),
	);
});
