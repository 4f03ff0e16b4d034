import fc from "fast-check";
import { expect, test } from "vitest";
import { ethanol, usualGasoline } from "../../../src/domain/engine/gasoline";
import { propertiesOf } from "../../../src/domain/engine/properties";
import { blendDensity, blendStoichiometricRatio, fuelDemand, heatPerLitre } from "../../../src/domain/fuel";
import { fraction } from "../../../src/domain/quantity";
import { litresPer } from "../../../src/domain/units";

const at = (content: number, base = usualGasoline) => propertiesOf(fraction(content), base);
const off = (value: number, published: number) => Math.abs(value / published - 1);

/** International table Btu per pound, MJ/kg; exact (NIST SP 811, appendix B). */
const btuPerLb = 2.326e-3;
/** MJ; lb is 0.453 592 37 kg. */
const btu = btuPerLb * 0.45359237;

/**
 * "Energiinnehåll, densitet och koldioxidutsläpp", table of the Swedish petroleum and biofuel institute (spbi.se, read in a
 * stored copy): gasoline without ethanol, with 5 %, winter E85 with 75 %, summer E85 with 85 %, ethanol.
 */
const swedish = [
	{ content: 0, kWhPerM3: 9100, kgPerM3: 750 },
	{ content: 0.05, kWhPerM3: 8940, kgPerM3: 752 },
	{ content: 0.75, kWhPerM3: 6650, kgPerM3: 779 },
	{ content: 0.85, kWhPerM3: 6300, kgPerM3: 783 },
	{ content: 1, kWhPerM3: 5900, kgPerM3: 790 },
];

test.each(swedish)(
	"densityKgPerL agrees with the Swedish table within one percent at $content",
	({ content, kgPerM3 }) => {
		expect(off(at(content).densityKgPerL, kgPerM3 / 1000)).toBeLessThan(0.01);
	},
);

test.each(swedish)(
	"densityKgPerL agrees within two in a thousand at $content where the gasoline is theirs",
	({ content, kgPerM3 }) => {
		const base = { ...usualGasoline, density: 0.75 };
		expect(off(at(content, base).densityKgPerL, kgPerM3 / 1000)).toBeLessThan(0.002);
	},
);

test.each([
	// Hsieh et al., Atmospheric Environment 36 (2002) 403, table 1, kg/L at 15.5 °C (from memory).
	{ content: 0.05, kgPerL: 0.7591 },
	{ content: 0.1, kgPerL: 0.7608 },
	{ content: 0.2, kgPerL: 0.7645 },
	{ content: 0.3, kgPerL: 0.7682 },
])(
	"densityKgPerL follows the measured blends of Hsieh et al. within two in a thousand at $content",
	({ content, kgPerL }) => {
		expect(off(at(content, { ...usualGasoline, density: 0.7575 }).densityKgPerL, kgPerL)).toBeLessThan(0.002);
	},
);

test.each(swedish)("lowerHeatingValueMJPerL agrees with the Swedish table within two percent at $content", (row) => {
	const { content, kWhPerM3 } = row;
	expect(off(at(content).lowerHeatingValueMJPerL, (kWhPerM3 * 3.6) / 1000)).toBeLessThan(0.02);
});

test("lowerHeatingValueMJPerL falls as ORNL's Transportation Energy Data Book, table B.4, says: gasohol and ethanol", () => {
	// Net Btu/gal: gasoline 115,400, gasohol (E10) 112,417, ethanol 75,670 (read in a secondary copy).
	const gasoline = at(0).lowerHeatingValueMJPerL;
	expect(off(at(0.1).lowerHeatingValueMJPerL / gasoline, 112_417 / 115_400)).toBeLessThan(0.02);
	expect(off(at(1).lowerHeatingValueMJPerL / gasoline, 75_670 / 115_400)).toBeLessThan(0.02);
});

test("lowerHeatingValueMJPerL agrees with the DOE AFDC table: 116,090 and 76,330 Btu/gal, E10 between them by volume", () => {
	const perGallon = (content: number) => (at(content).lowerHeatingValueMJPerL * litresPer.gal) / btu;
	expect(off(perGallon(0), 116_090)).toBeLessThan(0.005);
	expect(off(perGallon(0.1), 112_114)).toBeLessThan(0.005);
	expect(off(perGallon(1), 76_330)).toBeLessThan(0.005);
});

test("lowerHeatingValueMJPerKg agrees with the DOE AFDC table: 18,676 and 11,585 Btu/lb", () => {
	expect(off(at(0).lowerHeatingValueMJPerKg, 18_676 * btuPerLb)).toBeLessThan(0.001);
	expect(off(at(1).lowerHeatingValueMJPerKg, 11_585 * btuPerLb)).toBeLessThan(0.001);
});

test("lowerHeatingValueMJPerKgOfMixture agrees with the DOE AFDC table: 1,290 and 1,280 Btu per lb of air", () => {
	const perKgOfAir = (content: number) =>
		(at(content).lowerHeatingValueMJPerKgOfMixture * (1 + at(content).stoichiometricRatio)) /
		at(content).stoichiometricRatio;
	expect(off(perKgOfAir(0), 1290 * btuPerLb)).toBeLessThan(0.02);
	expect(off(perKgOfAir(1), 1280 * btuPerLb)).toBeLessThan(0.02);
});

test.each([
	// UNECE Regulation 83, fuels of the emission tests, E5 and E85; Regulation (EU) 136/2014, E10 (from memory).
	{ fuel: "UNECE E5", content: 0.05, h: 1.89, o: 0.016 },
	{ fuel: "EU E10", content: 0.1, h: 1.93, o: 0.033 },
	{ fuel: "UNECE E85", content: 0.85, h: 2.74, o: 0.385 },
	// 40 CFR 1065.655, table of default fuel compositions (from memory).
	{ fuel: "CFR gasoline", content: 0, h: 1.85, o: 0 },
	{ fuel: "CFR E10", content: 0.1, h: 1.92, o: 0.03 },
	{ fuel: "CFR E15", content: 0.15, h: 1.95, o: 0.05 },
	{ fuel: "CFR E85", content: 0.85, h: 2.73, o: 0.38 },
	{ fuel: "CFR ethanol", content: 1, h: 3, o: 0.5 },
])("stoichiometricRatio is within two percent of what burns the carbon and hydrogen of $fuel", ({ content, h, o }) => {
	// Abridged standard atomic weights, IUPAC 2021; dry air of CIPM-2007 (from memory).
	const oxygenMoles = 1 + h / 4 - o / 2;
	const balance = (oxygenMoles * (28.96546 / 0.20939)) / (12.011 + 1.008 * h + 15.999 * o);
	expect(off(at(content).stoichiometricRatio, balance)).toBeLessThan(0.02);
});

test("oxygenMassFraction at 10 % is the 3.7 % m/m that EN 228 allows at 10 % V/V, within 2 %", () => {
	expect(off(at(0.1).oxygenMassFraction, 0.037)).toBeLessThan(0.02);
	expect(off(at(1).oxygenMassFraction, 15.999 / 46.07)).toBeLessThan(0.001);
});

test("heatOfVaporisationKJPerKg agrees with the DOE AFDC table: about 150 and 396 Btu/lb", () => {
	expect(off(at(0).heatOfVaporisationKJPerKg, 150 * btuPerLb * 1000)).toBeLessThan(0.01);
	expect(off(at(1).heatOfVaporisationKJPerKg, 396 * btuPerLb * 1000)).toBeLessThan(0.001);
});

test("heatOfVaporisationKJPerKg agrees with NREL's measurements (OSTI 1242469): gasoline 325 to 375, E50 650 to 700", () => {
	expect(at(0).heatOfVaporisationKJPerKg).toBeGreaterThanOrEqual(325);
	expect(at(0).heatOfVaporisationKJPerKg).toBeLessThanOrEqual(375);
	expect(at(0.5).heatOfVaporisationKJPerKg).toBeGreaterThan(650 * 0.98);
	expect(at(0.5).heatOfVaporisationKJPerKg).toBeLessThan(700);
});

test("heatOfVaporisationKJPerKgOfMixture agrees with the DOE AFDC table: 44 Btu per lb of air for ethanol", () => {
	const { heatOfVaporisationKJPerKgOfMixture, stoichiometricRatio } = at(1);
	const perKgOfAir = (heatOfVaporisationKJPerKgOfMixture * (1 + stoichiometricRatio)) / stoichiometricRatio;
	expect(off(perKgOfAir, 44 * btuPerLb * 1000)).toBeLessThan(0.02);
});

test("ethanolMassFraction and ethanolMoleFraction count what is in a litre", () => {
	const grams = { ethanol: 0.3 * 789, gasoline: 0.7 * 745 };
	const moles = { ethanol: grams.ethanol / 46.07, gasoline: grams.gasoline / 102.5 };
	expect(at(0.3).ethanolMassFraction).toBeCloseTo(grams.ethanol / (grams.ethanol + grams.gasoline), 12);
	expect(at(0.3).ethanolMoleFraction).toBeCloseTo(moles.ethanol / (moles.ethanol + moles.gasoline), 12);
});

const contents = fc.double({ min: 0, max: 1, noNaN: true }).map(fraction);
const gasolines = fc.record({
	density: fc.double({ min: 0.72, max: 0.775, noNaN: true }),
	stoichiometricRatio: fc.double({ min: 14.3, max: 14.8, noNaN: true }),
	lowerHeatingValue: fc.double({ min: 42, max: 44.5, noNaN: true }),
	heatOfVaporisation: fc.double({ min: 325, max: 375, noNaN: true }),
	molarMass: fc.double({ min: 90, max: 115, noNaN: true }),
	ron: fc.double({ min: 80, max: 102, noNaN: true }),
	mon: fc.double({ min: 76, max: 89, noNaN: true }),
	ronInteraction: fc.constant(0),
	monInteraction: fc.constant(0),
	vapourPressure: fc.double({ min: 45, max: 100, noNaN: true }),
});

test("propertiesOf(content, gasoline) is finite and above zero everywhere, but for the ethanol in gasoline", () => {
	fc.assert(
		fc.property(contents, gasolines, (content, base) => {
			const { content: _, ethanolMassFraction, ethanolMoleFraction, oxygenMassFraction, ...rest } = at(content, base);
			for (const value of Object.values(rest)) expect(value > 0 && value < Infinity).toBe(true);
			for (const share of [ethanolMassFraction, ethanolMoleFraction, oxygenMassFraction]) {
				expect(share >= 0 && share <= 1).toBe(true);
			}
		}),
	);
});

test("propertiesOf(0, gasoline) is the gasoline and propertiesOf(1, gasoline) is ethanol", () => {
	fc.assert(
		fc.property(gasolines, (base) => {
			for (const [content, pure] of [
				[0, base],
				[1, ethanol],
			] as const) {
				const row = at(content, base);
				expect(row.densityKgPerL).toBeCloseTo(pure.density, 12);
				expect(row.stoichiometricRatio).toBeCloseTo(pure.stoichiometricRatio, 10);
				expect(row.lowerHeatingValueMJPerKg).toBeCloseTo(pure.lowerHeatingValue, 10);
				expect(row.heatOfVaporisationKJPerKg).toBeCloseTo(pure.heatOfVaporisation, 9);
				expect(row.vapourPressureKPa).toBeCloseTo(pure.vapourPressure, 9);
				expect(row.ron).toBeCloseTo(pure.ron, 10);
				expect(row.mon).toBeCloseTo(pure.mon, 10);
			}
			expect(at(0, base).volumeDemand).toBe(1);
		}),
	);
});

test("propertiesOf(content, gasoline) rises and falls with the content as the components do", () => {
	fc.assert(
		fc.property(contents, contents, gasolines, (one, other, base) => {
			const [less, more] = [at(Math.min(one, other), base), at(Math.max(one, other), base)];
			const slack = 1 + 1e-12;
			for (const name of [
				"densityKgPerL",
				"ethanolMassFraction",
				"ethanolMoleFraction",
				"oxygenMassFraction",
				"heatOfVaporisationKJPerKg",
				"heatOfVaporisationKJPerKgOfMixture",
				"ron",
				"mon",
				"volumeDemand",
			] as const) {
				expect(more[name] * slack).toBeGreaterThanOrEqual(less[name]);
			}
			for (const name of ["stoichiometricRatio", "lowerHeatingValueMJPerKg", "lowerHeatingValueMJPerL"] as const) {
				expect(more[name]).toBeLessThanOrEqual(less[name] * slack);
			}
		}),
	);
});

test("propertiesOf(content) agrees with the functions that the account of the tank uses", () => {
	fc.assert(
		fc.property(contents, (content) => {
			const row = at(content);
			expect(row.densityKgPerL).toBe(blendDensity(content));
			expect(row.stoichiometricRatio).toBe(blendStoichiometricRatio(content));
			expect(row.lowerHeatingValueMJPerL).toBe(heatPerLitre(content));
			expect(row.volumeDemand).toBe(fuelDemand(content, 0));
		}),
	);
});
