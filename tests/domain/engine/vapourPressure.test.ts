import fc from "fast-check";
import { expect, test } from "vitest";
import { vapourPressure } from "../../../src/domain/engine/vapourPressure";
import { fraction } from "../../../src/domain/quantity";

const of = (content: number, base: number) => vapourPressure(fraction(content), base);
const off = (value: number, published: number) => Math.abs(value / published - 1);

/** kPa per psi, NIST SP 811. */
const psi = 6.894757;

test.each([
	[1, 3.7],
	[2, 6.0],
	[3, 7.2],
	[4, 7.8],
	[5, 8.0],
	[6, 8.0],
	[7, 7.9],
	[8, 7.9],
	[9, 7.8],
	[10, 7.8],
])(
	"vapourPressure agrees with Directive 98/70/EC, annex III, within two percent: E%i, 60 kPa and %f",
	(percent, more) => {
		// As amended by 2011/63/EU (read in a stored copy): what ethanol may add to summer petrol of 60 kPa.
		expect(off(of(percent / 100, 60), 60 + more)).toBeLessThan(0.02);
	},
);

/**
 * EPA MOVES, TankFuelGenerator, step 100 (source read): Reddy's correlation, psi. Below 7 % its power of the content gives 1
 * psi at 1 %, against 0.5 in annex III, so it is not asked there; at 100 % it misses its own 2.3 psi by 4 %.
 */
function reddy(percent: number, base: number): number {
	const ofGasoline = -7e-7 * percent ** 3 + 0.0002 * percent ** 2 + 0.0024 * percent + 1;
	const ofEthanol = 46.321 * percent ** -0.8422;
	return ofGasoline * (1 - percent / 100) * base + ofEthanol * (percent / 100) * 2.3;
}

test.each([7, 8, 9, 10, 11, 12, 13])(
	"vapourPressure agrees with EPA MOVES within two percent from E10 to E85, %i psi",
	(base) => {
		for (let percent = 10; percent <= 85; percent += 5) {
			expect(off(of(percent / 100, base * psi), reddy(percent, base) * psi)).toBeLessThan(0.02);
		}
	},
);

test("vapourPressure of pure ethanol is the 2.3 psi of DOE AFDC and what its Antoine equation gives", () => {
	expect(off(of(1, 60), 2.3 * psi)).toBeLessThan(0.01);
	// Landolt-Börnstein IV/20B (coefficients read in public code): log10(p/kPa) = 7.33675 − 1648.22/(T − 42.232), 310.93 K.
	expect(off(of(1, 60), 10 ** (7.33675 - 1648.22 / (310.93 - 42.232)))).toBeLessThan(0.01);
});

test("vapourPressure rises by about 1 psi at 10 %, and E15 and E20 are not to be told from E10 (NREL memo, 2012)", () => {
	expect(Math.abs(of(0.1, 9 * psi) / psi - 10)).toBeLessThan(0.2);
	expect(off(of(0.15, 9 * psi), of(0.1, 9 * psi))).toBeLessThan(0.01);
	expect(off(of(0.2, 9 * psi), of(0.1, 9 * psi))).toBeLessThan(0.02);
});

test.each([
	// Hsieh et al., Atmospheric Environment 36 (2002) 403, table 1, kPa (from memory); the gasoline alone had 53.7. Gasolines
	// differ by as much, and annex III and MOVES both stand for gasolines that ethanol raises more.
	[0.05, 59.3],
	[0.1, 59.6],
	[0.2, 58.3],
	[0.3, 56.8],
])("vapourPressure reads high by 2 to 5 in 100 for one measured gasoline at %f, %f kPa", (content, measured) => {
	expect(of(content, 53.7) / measured).toBeGreaterThan(1.02);
	expect(of(content, 53.7) / measured).toBeLessThan(1.05);
});

const bases = fc.double({ min: 48, max: 90, noNaN: true });

test("vapourPressure has one maximum, between 4 and 10 %, and returns to the gasoline's between 34 and 57 %", () => {
	fc.assert(
		fc.property(bases, (base) => {
			const curve = Array.from({ length: 1001 }, (_, i) => of(i / 1000, base));
			const top = curve.indexOf(Math.max(...curve));
			expect(top).toBeGreaterThanOrEqual(40);
			expect(top).toBeLessThanOrEqual(100);
			for (let i = 1; i <= 1000; i++) expect(Math.sign(curve[i] - curve[i - 1])).toBe(i <= top ? 1 : -1);
			const back = curve.findIndex((value, i) => i > top && value < base);
			expect(back).toBeGreaterThan(340);
			expect(back).toBeLessThan(570);
		}),
		{ numRuns: 30 },
	);
});

test("vapourPressure rises with the gasoline's, in a straight line", () => {
	fc.assert(
		fc.property(fc.double({ min: 0, max: 1, noNaN: true }), bases, bases, (content, one, other) => {
			const middle = of(content, (one + other) / 2);
			expect(middle).toBeCloseTo((of(content, one) + of(content, other)) / 2, 9);
			expect(of(content, one + 1)).toBeGreaterThanOrEqual(of(content, one));
		}),
	);
});
