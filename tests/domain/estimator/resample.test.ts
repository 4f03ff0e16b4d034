import { describe, expect, test } from "vitest";
import { absorb, initialBelief } from "../../../src/domain/estimator/absorb";
import type { Column } from "../../../src/domain/estimator/belief";
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
		// By Kish's size (Σw)²/Σw² three of five equal ones are just enough, and three of six are not.
		const even = { ...blended, weight: Float32Array.of(1, 0, 1, 0, 1) };
		expect(prepared(even, 5, seeds())).toBe(even);
		const uneven = prepared({ ...blended, weight: Float32Array.of(1, 0, 1, 0, 1, 0) }, 6, seeds());
		expect([...uneven.weight]).toEqual([1, 1, 1, 1, 1, 1]);
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

	test("carries all that belongs to a particle along, whatever it is", () => {
		const size = 256;
		const all = [
			aStart({ gauge: 0.5 }),
			aFill({ id: "a", stop: "s", place: "north", gauge: 0.3, odometerKm: 1000 }),
			aTankReading({
				id: "t",
				at: "2026-06-05T08:00:00Z",
				of: "trim",
				value: 0.05,
				sd: 0.03,
				baselineSd: 0.02,
				calibratedFor: 0.3,
			}),
			aFill({ id: "b", at: "2026-06-09T08:00:00Z", stop: "t", place: "north", gauge: 0.2, odometerKm: 1400 }),
			aFill({ id: "c", at: "2026-06-12T08:00:00Z", stop: "u", place: "south", gauge: 0.2, odometerKm: 1700 }),
		].reduce((belief, event) => absorb(belief, event, tank, size).belief, initialBelief("car", tank, size));
		// Each column holds the particle's number, so they must all tell of the same particle afterwards.
		const numbered = (value: unknown): unknown => {
			if (value instanceof Float64Array) return Float64Array.from(value.keys());
			if (value instanceof Float32Array) return Float32Array.from(value.keys());
			if (value instanceof Uint32Array || value instanceof Set || value === null || typeof value !== "object")
				return value;
			if (value instanceof Map) return new Map([...value].map(([key, each]) => [key, numbered(each)]));
			return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, numbered(each)]));
		};
		const weight = Float32Array.from({ length: size }, (_, i) => (i % 4 === 0 ? 1 : 0.01));
		const uneven = { ...(numbered({ ...all, traced: new Map([["heel", all.level]]) }) as typeof all), weight };
		const anew = prepared(uneven, size, seeds());
		const columns: unknown[] = [];
		const gather = (value: unknown): void => {
			if (value instanceof Float32Array || value instanceof Float64Array) columns.push(value);
			else if (value instanceof Map) for (const each of value.values()) gather(each);
			else if (value && typeof value === "object" && !(value instanceof Uint32Array))
				for (const each of Object.values(value)) gather(each);
		};
		const { weight: even, ...rest } = anew;
		gather(rest);
		expect(columns).toHaveLength(23);
		for (const column of columns) expect([...(column as Column)]).toEqual([...anew.level]);
		expect(anew.stop?.counted).toBeInstanceOf(Float64Array);
		expect([...even]).toEqual(new Array(size).fill(1));
		// Every fourth weighs a hundred times as much as the others: nearly all are copies of those.
		expect(anew.level.filter((particle) => particle % 4 === 0).length).toBeGreaterThan(0.95 * size);
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
