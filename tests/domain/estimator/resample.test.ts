import { describe, expect, test } from "vitest";
import { absorb, initialBelief } from "../../../src/domain/estimator/absorb";
import { estimateOf } from "../../../src/domain/estimator/estimate";
import { fittingSize, prepared } from "../../../src/domain/estimator/resample";
import { largeSample, smallSample } from "../../../src/domain/estimator/sampleSize";
import { seedsFor } from "../../../src/domain/random";
import { aFill, aStart, aTankReading } from "../../helpers/logs";

const tank = { capacityL: 58 } as never;
const blended = absorb(
	absorb(initialBelief("car", tank), aStart({ gauge: 0.3 }), tank).belief,
	aFill({ gauge: 0.25 }),
	tank,
).belief;
const read = absorb(blended, aTankReading({ value: 0.4, sd: 0.01 }), tank).belief;

describe("fittingSize(belief)", () => {
	test("is large for a young account, and for one whose content is little known", () => {
		expect(fittingSize(blended)).toBe(largeSample);
		expect(fittingSize({ ...initialBelief("car", tank), age: 100 })).toBe(largeSample);
	});

	test("is small for an account of some age whose content is known", () => {
		expect(fittingSize({ ...blended, age: 11 })).toBe(largeSample);
		expect(fittingSize({ ...blended, age: 12 })).toBe(smallSample);
	});
});

describe("prepared(belief, size, seeds)", () => {
	const seeds = () => seedsFor("event");

	test("leaves a sample alone whose weights are even enough", () => {
		expect(prepared(blended, largeSample, seeds())).toBe(blended);
	});

	test.each([
		["of the same size", largeSample, 2e-4],
		["of a quarter of it", smallSample, 5e-4],
	])("draws an uneven one anew, %s, and moves no figure by more than a hair", (_name, size, hair) => {
		const anew = prepared(read, size, seeds());
		expect(anew.weight).toHaveLength(size);
		expect(new Set(anew.weight)).toEqual(new Set([1]));
		const window = [0.26, 0.34] as never;
		const [before, after] = [read, anew].map((belief) => estimateOf(belief, window));
		for (const figure of ["median", "low", "high", "above", "below"] as const) {
			expect(Math.abs(after[figure]! - before[figure]!)).toBeLessThan(hair);
		}
	});

	test("brings the particles into ascending order of content, all columns together", () => {
		const anew = prepared(read, smallSample, seeds());
		expect(anew.content).toEqual(anew.content.slice().sort());
		expect(anew.order).toEqual(Uint32Array.from({ length: smallSample }, (_, i) => i));
		const { level, content, stop } = anew;
		for (const [i, ethanol] of stop!.pouredEthanol.entries()) {
			const before = level[i] - stop!.poured[i];
			expect(Math.abs(level[i] * content[i] - ethanol - before * stop!.contentBefore[i])).toBeLessThan(1e-4);
		}
	});
});
