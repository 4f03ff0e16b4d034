import fc from "fast-check";
import { jStat } from "jstat";
import { expect, test } from "vitest";
import { exp, log, normalChance, normalDensity, normalQuantile } from "../../src/domain/elementary";

const ulp = 2 ** -52;
const many = { numRuns: 20_000 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

test("exp(x) is within an ulp or so of Math.exp wherever the result is a normal number", () => {
	fc.assert(
		fc.property(between(-708, 709.782712893384), (x) => {
			expect(Math.abs(exp(x) / Math.exp(x) - 1)).toBeLessThan(2 * ulp);
		}),
		many,
	);
});

test("exp(x) is right in every power of two, to the last that is a number", () => {
	for (let k = -1021; k <= 1023; k++)
		for (const part of [-0.49, 0, 0.49]) {
			const x = (k + part) * Math.LN2;
			expect(Math.abs(exp(x) / Math.exp(x) - 1)).toBeLessThan(2 * ulp);
		}
	expect(exp(709.782712893384) / 2 ** 1023).toBeCloseTo(2, 10);
});

test("exp(x) underflows to 0 without a gap: never NaN, never rising", () => {
	let before = exp(-708);
	for (let x = -708; x > -747; x -= 1 / 1024) {
		const now = exp(x);
		expect(now).toBeLessThanOrEqual(before);
		expect(Math.abs(now - Math.exp(x))).toBeLessThanOrEqual(5e-324);
		before = now;
	}
	expect(before).toBe(0);
});

test("exp(x) holds at its ends", () => {
	expect([exp(0), exp(-Infinity), exp(Infinity), exp(710)]).toEqual([1, 0, Infinity, Infinity]);
	expect(Math.abs(exp(1) - Math.E)).toBeLessThanOrEqual(2 * ulp);
	expect(exp(Number.NaN)).toBeNaN();
});

test("log(x) is within an ulp or so of Math.log", () => {
	const positive = fc.oneof(between(5e-324, 2), between(0.9, 1.1), between(1, 1.7e308));
	fc.assert(
		fc.property(positive, (x) => {
			expect(Math.abs(log(x) - Math.log(x))).toBeLessThanOrEqual(2 * ulp * Math.abs(Math.log(x)));
		}),
		many,
	);
});

test("log(x) holds at its ends", () => {
	expect([log(1), log(0), log(-1), log(Infinity)]).toEqual([0, -Infinity, -Infinity, Infinity]);
	expect(log(5e-324)).toBeCloseTo(Math.log(5e-324), 10);
	expect(log(Number.NaN)).toBeNaN();
});

test("normalDensity(z) is jstat's", () => {
	for (const z of [-5, -1, 0, 0.3, 2, 7]) expect(normalDensity(z)).toBeCloseTo(jStat.normal.pdf(z, 0, 1), 14);
});

test("normalChance(z) is jstat's to 1e-14", () => {
	for (let z = -6; z <= 6; z += 0.01) {
		expect(Math.abs(normalChance(z) - jStat.normal.cdf(z, 0, 1))).toBeLessThan(1e-14);
	}
});

test("normalChance(z) keeps its relative accuracy far down the lower tail", () => {
	// The tail by its asymptotic series, whose error is below the first term left out (Abramowitz and Stegun, 26.2.12).
	for (const z of [12, 20, 30]) {
		const series = 1 - 1 / z ** 2 + 3 / z ** 4 - 15 / z ** 6 + 105 / z ** 8 - 945 / z ** 10;
		expect(normalChance(-z) / ((Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI) / z) * series)).toBeCloseTo(1, 7);
	}
	expect([normalChance(-40), normalChance(40)]).toEqual([0, 1]);
});

test("normalQuantile(p) is jstat's", () => {
	for (let p = 0.001; p < 1; p += 0.001) {
		expect(Math.abs(normalQuantile(p) - jStat.normal.inv(p, 0, 1))).toBeLessThan(1e-11);
	}
	// Published: GUM, table G.1 and any table of the normal distribution.
	expect(normalQuantile(0.975)).toBeCloseTo(1.959963984540054, 14);
	expect(normalQuantile(0.95)).toBeCloseTo(1.6448536269514722, 14);
});

test("normalQuantile(normalChance(z)) is z again", () => {
	for (let z = -37; z <= 5; z += 0.25) expect(normalQuantile(normalChance(z))).toBeCloseTo(z, 8);
	expect([normalQuantile(0), normalQuantile(0.5), normalQuantile(1)]).toEqual([-Infinity, 0, Infinity]);
});
