import { sampleCorrelation } from "simple-statistics";
import { expect, test } from "vitest";
import { seedsFor, uniform } from "../../src/domain/random";

const count = 20_000;
const numbers = (text: string) => {
	const seeds = seedsFor(text);
	return Array.from({ length: count }, () => uniform(seeds));
};

test("seedsFor(text) gives the same stream on every device: these numbers must never change", () => {
	const seeds = seedsFor("heeltap");
	expect([seeds(), seeds(), seeds()]).toEqual([2072429003, 792494510, 3505750410]);
	expect(numbers("heeltap")).toEqual(numbers("heeltap"));
});

test("uniform(seeds) lies strictly between 0 and 1 and fills the interval evenly", () => {
	const drawn = numbers("event 1");
	const bins = new Array<number>(20).fill(0);
	for (const u of drawn) {
		expect(u > 0 && u < 1).toBe(true);
		bins[Math.floor(u * 20)]++;
	}
	// Chi-squared with 19 degrees of freedom: 43.8 is exceeded once in a thousand.
	const expected = count / 20;
	expect(bins.reduce((sum, n) => sum + (n - expected) ** 2 / expected, 0)).toBeLessThan(43.8);
});

test("uniform(seeds) keeps its ends out even at the ends of the stream's numbers", () => {
	expect(uniform(() => 0)).toBeGreaterThan(0);
	expect(uniform(() => 2 ** 32 - 1)).toBeLessThan(1);
});

test("seedsFor(text) gives uncorrelated streams for ids that differ in one character", () => {
	// Four standard errors.
	const bound = 4 / Math.sqrt(count);
	expect(Math.abs(sampleCorrelation(numbers("event 1"), numbers("event 2")))).toBeLessThan(bound);
	const drawn = numbers("event 1");
	expect(Math.abs(sampleCorrelation(drawn.slice(1), drawn.slice(0, -1)))).toBeLessThan(bound);
});
