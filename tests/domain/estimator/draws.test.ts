import { sampleCorrelation } from "simple-statistics";
import { expect, test } from "vitest";
import { type Draws, drawsFor } from "../../../src/domain/estimator/draws";
import { seedsFor } from "../../../src/domain/random";

const size = 4096;
const draws = (id = "event 1"): Draws => drawsFor(size, seedsFor(id));

/** How many of the numbers fall in each of `count` equal parts of 0 … 1. */
function perStratum(numbers: Iterable<number>, count: number): Set<number> {
	const hits = new Array<number>(count).fill(0);
	for (const u of numbers) hits[Math.floor(u * count)]++;
	return new Set(hits);
}

test("Draws.uniforms() hits every stratum once", () => {
	const source = draws();
	for (let call = 0; call < 60; call++) expect(perStratum(source.uniforms(), size)).toEqual(new Set([1]));
});

test("Draws.normals() are the middles of equal parts of the normal distribution, each once", () => {
	const sorted = draws().normals().sort();
	const z = draws("event 2").normals().sort();
	expect(sorted).toEqual(z);
	expect(sorted[size / 2]).toBeCloseTo(-sorted[size / 2 - 1], 12);
	const mean = sorted.reduce((sum, x) => sum + x, 0) / size;
	const variance = sorted.reduce((sum, x) => sum + x * x, 0) / size;
	expect(mean).toBeCloseTo(0, 12);
	// The tails beyond the outermost middles are missing.
	expect(variance).toBeCloseTo(1, 2);
});

test("Successive draws are uncorrelated with each other and with the order of the particles", () => {
	const source = draws();
	const columns = Array.from({ length: 51 }, (_, i) => Array.from(i % 2 ? source.normals() : source.uniforms()));
	const ranks = columns[0].map((_, i) => i);
	// Five standard errors of independent draws: over a thousand pairs are looked at.
	const bound = 5 / Math.sqrt(size);
	for (let i = 0; i < columns.length; i++) {
		expect(Math.abs(sampleCorrelation(columns[i], ranks))).toBeLessThan(bound);
		for (let j = 0; j < i; j++) expect(Math.abs(sampleCorrelation(columns[i], columns[j]))).toBeLessThan(bound);
	}
});

test("Draws of two events are uncorrelated", () => {
	const first = draws("event 1");
	const second = draws("event 2");
	for (let call = 0; call < 10; call++) {
		const correlation = sampleCorrelation(Array.from(first.uniforms()), Array.from(second.uniforms()));
		expect(Math.abs(correlation)).toBeLessThan(4 / Math.sqrt(size));
	}
});

test("Two draws fill the square: no strip of the one leaves a gap in the other", () => {
	const source = draws();
	const cells = new Array<number>(256).fill(0);
	const [u, v] = [source.uniforms(), source.uniforms()];
	for (let i = 0; i < size; i++) cells[16 * Math.floor(u[i] * 16) + Math.floor(v[i] * 16)]++;
	// Sixteen expected in each, sd four or less.
	expect(Math.min(...cells)).toBeGreaterThan(0);
	expect(Math.max(...cells)).toBeLessThan(40);
});

test("Draws hang on the id and on nothing else", () => {
	expect(draws("event 1").uniforms()).toEqual(draws("event 1").uniforms());
	expect(draws("event 1").uniforms()).not.toEqual(draws("event 2").uniforms());
});
