import fc from "fast-check";
import { expect, test } from "vitest";
import { ascending, reweighted } from "../../../src/domain/estimator/belief";

const column = (...values: number[]) => Float32Array.from(values);

test("ascending() sorts any numbers from zero up, and leaves equal ones in their order", () => {
	const value = fc.oneof(
		fc.constantFrom(0, 2 ** -149, 2 ** -126, 0.5, 1, 65535, 65536, 3e38, Infinity),
		fc.float({ min: 0, noNaN: true, noDefaultInfinity: true }).map(Math.abs),
	);
	fc.assert(
		fc.property(fc.array(value, { maxLength: 40 }), (values) => {
			const byComparing = [...values.keys()].sort((a, b) => values[a] - values[b] || a - b);
			// Infinity less Infinity is no number: those are equal as well.
			expect([...ascending(column(...values))].map((i) => values[i])).toEqual(byComparing.map((i) => values[i]));
			if (!values.includes(Infinity)) expect([...ascending(column(...values))]).toEqual(byComparing);
		}),
		{ numRuns: 40 },
	);
	expect([...ascending(column(9, 1, 2, 3).subarray(1))]).toEqual([0, 1, 2]);
});

test("reweighted() multiplies and brings the largest to 1; of nothing, and of what is beyond all numbers, it makes none", () => {
	expect(reweighted(column(1, 0.5, 1, 0), Float64Array.of(2, 8, 0, 99))).toEqual(column(0.5, 1, 0, 0));
	expect(reweighted(column(1, 1), Float64Array.of(1e-300, 5e-301))).toEqual(column(1, 0.5));
	expect(reweighted(column(1, 0.5), Float64Array.of(0, 0))).toBeNull();
	expect(reweighted(column(1, 0.5), Float64Array.of(Infinity, 1))).toBeNull();
	expect(reweighted(column(1, 0.5), Float64Array.of(Number.NaN, 1))).toBeNull();
});
