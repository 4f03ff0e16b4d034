/** Worked examples of JCGM 101:2008 (GUM Supplement 1), clause 9.2, through our draws and our quantiles. */
import { expect, test } from "vitest";
import { ascending } from "../../../src/domain/estimator/belief";
import { drawsFor } from "../../../src/domain/estimator/draws";
import { quantilesOf } from "../../../src/domain/estimator/quantile";
import { seedsFor } from "../../../src/domain/random";

const size = 2 ** 20;
/** The standard's own, for u = 2.0 to two figures, is 0.05 (7.9.2); tight enough here to tell 3.88 from 3.92. */
const tolerance = 0.019;
const draws = drawsFor(size, seedsFor("JCGM 101"));
const normal = () => draws.normals();
/** Rectangular around 0 with the given standard deviation. */
const rectangular = (sd: number) => draws.uniforms().map((u) => Math.sqrt(3) * sd * (2 * u - 1));

/** The additive model of 9.2.1, Y = X1 + X2 + X3 + X4. */
function summary(inputs: readonly Float64Array[]) {
	const sum = Float32Array.from({ length: size }, (_, i) => inputs.reduce((total, x) => total + x[i], 0));
	const quantile = quantilesOf(sum, new Float32Array(size).fill(1), ascendingSigned(sum));
	const mean = sum.reduce((total, y) => total + y, 0) / size;
	const variance = sum.reduce((total, y) => total + (y - mean) ** 2, 0) / (size - 1);
	return { mean, u: Math.sqrt(variance), low: quantile(0.025), high: quantile(0.975) };
}

/** The core orders contents and levels, which are never negative. */
function ascendingSigned(column: Float32Array): Uint32Array {
	return ascending(column.map((y) => y + 1000));
}

test("Four standard normals add up to y = 0, u = 2.00, 95 % within ±3.92 (9.2.2, table 2)", () => {
	const { mean, u, low, high } = summary([normal(), normal(), normal(), normal()]);
	expect(mean).toBeCloseTo(0, 2);
	expect(u.toFixed(2)).toBe("2.00");
	expect(Math.abs(low + 3.92)).toBeLessThan(tolerance);
	expect(Math.abs(high - 3.92)).toBeLessThan(tolerance);
});

test("Four rectangular inputs of unit sd give y = 0, u = 2.00, 95 % within ±3.88 and not the ±3.92 of the GUM (9.2.3, table 3)", () => {
	const { mean, u, low, high } = summary([1, 1, 1, 1].map(rectangular));
	expect(mean).toBeCloseTo(0, 2);
	expect(u.toFixed(2)).toBe("2.00");
	expect(Math.abs(low + 3.88)).toBeLessThan(tolerance);
	expect(Math.abs(high - 3.88)).toBeLessThan(tolerance);
});

test("One input of ten times the spread gives y = 0, u = 10.1, 95 % within ±17.0 and not the ±19.9 of the GUM (9.2.4, table 4)", () => {
	const { mean, u, low, high } = summary([1, 1, 1, 10].map(rectangular));
	expect(Math.abs(mean)).toBeLessThan(0.05);
	// √103 = 10.149.
	expect(Math.abs(u - 10.149)).toBeLessThan(0.01);
	expect(Math.abs(low + 17)).toBeLessThan(0.05);
	expect(Math.abs(high - 17)).toBeLessThan(0.05);
});
