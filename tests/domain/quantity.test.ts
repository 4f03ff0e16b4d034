import { expect, test } from "vitest";
import {
	contentRange,
	daysBetween,
	type Fraction,
	fraction,
	instant,
	type Litres,
	litres,
} from "../../src/domain/quantity";

test("litres(x) takes zero and more, and nothing else", () => {
	expect(litres(0)).toBe(0);
	expect(litres(41.27)).toBe(41.27);
	for (const bad of [-3, -1e-9, Number.NaN, Infinity]) {
		expect(() => litres(bad)).toThrow(`litres must be zero or more, got ${bad}`);
	}
});

test("fraction(x) takes 0 to 1, and nothing else", () => {
	expect([fraction(0), fraction(0.3), fraction(1)]).toEqual([0, 0.3, 1]);
	for (const bad of [-0.01, 1.01, 30, Number.NaN]) {
		expect(() => fraction(bad)).toThrow(`fraction must be from 0 to 1, got ${bad}`);
	}
});

test("contentRange(low, high) refuses ends out of order or out of 0 to 1", () => {
	expect(contentRange(0.51, 0.83)).toEqual([0.51, 0.83]);
	expect(contentRange(0.85, 0.85)).toEqual([0.85, 0.85]);
	expect(() => contentRange(0.83, 0.51)).toThrow("range must run from low to high, got 0.83 to 0.51");
	expect(() => contentRange(0.51, Number.NaN)).toThrow("range must run from low to high");
	expect(() => contentRange(51, 83)).toThrow("fraction must be from 0 to 1, got 51");
});

test("instant(text) reads the offset, so that one moment is one number", () => {
	expect(instant("2026-06-01T17:30:00+02:00")).toBe(instant("2026-06-01T15:30:00Z"));
	expect(instant("1970-01-02T00:00:00Z")).toBe(86_400_000);
	expect(() => instant("yesterday")).toThrow("time must be ISO 8601, got yesterday");
});

test("daysBetween(from, to) counts days of 24 hours, and none where the clock ran backwards", () => {
	const noon = instant("2026-03-28T12:00:00+01:00");
	// The clocks went forward in between: the same wall time is an hour sooner.
	expect(daysBetween(noon, instant("2026-03-29T12:00:00+02:00"))).toBeCloseTo(23 / 24, 12);
	expect(daysBetween(noon, noon)).toBe(0);
	expect(daysBetween(instant("2026-03-29T12:00:00+02:00"), noon)).toBe(0);
});

test("quantities of different kinds are not each other, nor bare numbers", () => {
	// @ts-expect-error a fraction is not a volume
	const volume: Litres = fraction(0.3);
	// @ts-expect-error a number has no unit
	const content: Fraction = 0.3;
	expect([volume, content]).toEqual([0.3, 0.3]);
});
