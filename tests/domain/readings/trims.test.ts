import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fuelDemand } from "../../../src/domain/fuel";
import { bankTrim, combinedTrim, impliedContent } from "../../../src/domain/readings/trims";

const trims = fc.double({ min: -0.5, max: 0.5, noNaN: true });
const contents = fc.double({ min: 0, max: 1, noNaN: true });

test("bankTrim() multiplies both corrections", () => {
	expect(bankTrim({ shortTerm: 0.1, longTerm: 0.1 })).toBeCloseTo(0.21, 12);
	expect(bankTrim({ shortTerm: -0.1, longTerm: 0.1 })).toBeCloseTo(-0.01, 12);
});

describe("combinedTrim()", () => {
	test("is the mean of the banks, and tells how far they are apart", () => {
		const banks = [
			{ shortTerm: 0, longTerm: 0.02 },
			{ shortTerm: 0, longTerm: 0.1 },
		];
		const { trim, spread } = combinedTrim(banks);
		expect(trim).toBeCloseTo(0.06, 12);
		expect(spread).toBeCloseTo(0.08, 12);
		expect(combinedTrim(banks.slice(0, 1)).spread).toBe(0);
	});
	test("of one bank is that bank's trim, and of two alike the same", () => {
		fc.assert(
			fc.property(trims, trims, (shortTerm, longTerm) => {
				const bank = { shortTerm, longTerm };
				expect(combinedTrim([bank]).trim).toBe(bankTrim(bank));
				expect(combinedTrim([bank, bank]).trim).toBe(bankTrim(bank));
			}),
		);
	});
});

describe("impliedContent()", () => {
	test("finds the content again whose demand the trim is", () => {
		fc.assert(
			fc.property(fc.double({ min: 0.001, max: 0.999, noNaN: true }), contents, (content, calibratedFor) => {
				const implied = impliedContent(fuelDemand(content, calibratedFor) - 1, 0.03, calibratedFor);
				expect(implied.ok && implied.value.content).toBeCloseTo(content, 9);
			}),
		);
	});
	test("agrees with the published pairs of blends and trims", () => {
		// Actual content, trim in percent on a calibration for 30 % and for 10 %; reckoned with 0.790 kg/L, to a tenth.
		const rows = [
			[0.1, -7.2, 0],
			[0.2, -3.7, 3.7],
			[0.4, 4.0, 12.1],
			[0.6, 13.1, 21.9],
			[0.83, 25.8, 35.5],
		];
		for (const [content, on30, on10] of rows) {
			for (const [trim, calibratedFor] of [
				[on30, 0.3],
				[on10, 0.1],
			]) {
				const implied = impliedContent(trim / 100, 0.03, calibratedFor);
				expect(implied.ok && Math.abs(implied.value.content - content)).toBeLessThan(0.004);
			}
		}
	});
	test("turns 3 % of trim into about 8 points of ethanol", () => {
		const implied = impliedContent(0, 0.03, 0.3);
		expect(implied.ok && implied.value.sd).toBeCloseTo(0.08, 2);
	});
	test("carries the uncertainty over as finite differences do", () => {
		fc.assert(
			fc.property(fc.double({ min: -0.05, max: 0.15, noNaN: true }), (trim) => {
				const at = (value: number) => {
					const implied = impliedContent(value, 0.03, 0.3);
					return implied.ok ? implied.value : { content: Number.NaN, sd: Number.NaN };
				};
				const slope = (at(trim + 1e-6).content - at(trim - 1e-6).content) / 2e-6;
				expect(at(trim).sd).toBeCloseTo(0.03 * slope, 6);
			}),
		);
	});
	test("says on which side a trim leaves every blend", () => {
		expect(impliedContent(-0.3, 0.03, 0.3)).toEqual({ ok: false, error: "below" });
		expect(impliedContent(0.9, 0.03, 0.3)).toEqual({ ok: false, error: "above" });
	});
});
