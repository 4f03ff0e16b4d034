import fc from "fast-check";
import { expect, test } from "vitest";
import { fromLitres, litresPer, toLitres } from "../../src/domain/units";

test("A US gallon is 231 cubic inches of 2.54 cm each: 3.785 411 784 L (NIST SP 811, appendix B)", () => {
	expect(litresPer.gal).toBeCloseTo((231 * 2.54 ** 3) / 1000, 12);
	// As printed in SP 811, table B.8, to seven figures.
	expect(litresPer.gal.toPrecision(7)).toBe("3.785412");
});

test("An imperial gallon is 4.546 09 L (Weights and Measures Act 1985, schedule 1; NIST SP 811, appendix B)", () => {
	expect(litresPer["imp gal"]).toBe(4.54609);
	expect(litresPer["imp gal"] / litresPer.gal).toBeCloseTo(1.20095, 5);
});

test("toLitres(amount, unit) undoes fromLitres(volume, unit)", () => {
	expect(toLitres(16, "gal")).toBeCloseTo(60.566588544, 9);
	fc.assert(
		fc.property(
			fc.double({ min: 0, max: 2000, noNaN: true }),
			fc.constantFrom("L", "gal", "imp gal"),
			(volume, unit) => {
				expect(toLitres(fromLitres(volume, unit), unit)).toBeCloseTo(volume, 9);
			},
		),
	);
});

test("toLitres(amount, unit) refuses less than nothing", () => {
	expect(() => toLitres(-1, "gal")).toThrow("litres must be zero or more");
});
