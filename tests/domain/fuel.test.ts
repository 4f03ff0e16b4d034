import { expect, test } from "vitest";
import {
	blendDensity,
	blendStoichiometricRatio,
	density,
	fuelDemand,
	heatPerLitre,
	lowerHeatingValue,
	stoichiometricRatio,
} from "../../src/domain/fuel";
import { fraction } from "../../src/domain/quantity";
import { litresPer } from "../../src/domain/units";

/** International table Btu per pound, MJ/kg; exact (NIST SP 811, appendix B). */
const btuPerLb = 2.326e-3;
/** MJ; lb is 0.453 592 37 kg. */
const btu = btuPerLb * 0.45359237;

test("Ethanol's stoichiometric ratio follows from C2H5OH + 3 O2 → 2 CO2 + 3 H2O", () => {
	// Abridged standard atomic weights, IUPAC 2021 (Pure Appl. Chem. 94 (2022) 573).
	const [C, H, O] = [12.011, 1.008, 15.999];
	// Dry air, CIPM-2007 (Picard et al., Metrologia 45 (2008) 149, table 1; from memory): mole fraction of O2, molar mass.
	const [oxygen, airMass] = [0.20939, 28.96546];
	const ratio = (3 * (airMass / oxygen)) / (2 * C + 6 * H + O);
	expect(ratio).toBeCloseTo(9.008, 3);
	expect(Math.abs(ratio - stoichiometricRatio.ethanol)).toBeLessThan(0.01);
});

test("Densities agree with Heywood, Internal Combustion Engine Fundamentals, table D.4 (from memory)", () => {
	// Gasoline 0.72 to 0.78; ethanol 0.785, half a percent from the 0.789 of 20 °C, less than 5 K of warmth make.
	expect(density.gasoline).toBeGreaterThan(0.72);
	expect(density.gasoline).toBeLessThan(0.78);
	expect(Math.abs(density.ethanol / 0.785 - 1)).toBeLessThan(0.006);
});

test("Densities agree with the specific gravities of the DOE AFDC fuel properties table", () => {
	// At 60 °F, where water has 0.999 kg/L: gasoline 0.72 to 0.78, ethanol 0.794. Ours holds at 20 °C, 4.4 K warmer: 0.5 % less.
	const water = 0.999;
	expect(density.gasoline).toBeGreaterThan(0.72 * water);
	expect(density.gasoline).toBeLessThan(0.78 * water);
	expect(Math.abs((density.ethanol * (1 + 1.09e-3 * 4.4)) / (0.794 * water) - 1)).toBeLessThan(0.002);
});

test("Stoichiometric ratios agree with Heywood's table D.4 (from memory) and with the DOE AFDC table", () => {
	expect(stoichiometricRatio).toEqual({ gasoline: 14.6, ethanol: 9.0 });
	// AFDC has 14.7 for gasoline: gasolines differ by that much.
	expect(Math.abs(stoichiometricRatio.gasoline - 14.7)).toBeLessThan(0.11);
});

test("Lower heating values agree with the DOE AFDC table by mass: 18,676 and 11,585 Btu/lb", () => {
	expect(lowerHeatingValue.gasoline).toBeCloseTo(18_676 * btuPerLb, 2);
	expect(lowerHeatingValue.ethanol).toBeCloseTo(11_585 * btuPerLb, 2);
});

test("Lower heating values agree with Heywood's table D.4 (from memory) as far as gasolines do", () => {
	// 44.0 and 26.9 MJ/kg.
	expect(Math.abs(lowerHeatingValue.gasoline / 44.0 - 1)).toBeLessThan(0.02);
	expect(Math.abs(lowerHeatingValue.ethanol / 26.9 - 1)).toBeLessThan(0.005);
});

test("heatPerLitre(content) agrees with the DOE AFDC table by volume: 116,090 and 76,330 Btu/gal", () => {
	expect(Math.abs(heatPerLitre(fraction(0)) / ((116_090 * btu) / litresPer.gal) - 1)).toBeLessThan(0.005);
	expect(Math.abs(heatPerLitre(fraction(1)) / ((76_330 * btu) / litresPer.gal) - 1)).toBeLessThan(0.005);
});

test("heatPerLitre(content) gives the losses drivers know: E10 three to four percent less than E0, E85 15 to 27 less than E10", () => {
	// fueleconomy.gov: −3 to −4 % and −15 to −27 %.
	const loss = (content: number, from: number) => 1 - heatPerLitre(fraction(content)) / heatPerLitre(fraction(from));
	expect(loss(0.1, 0)).toBeGreaterThan(0.03);
	expect(loss(0.1, 0)).toBeLessThan(0.04);
	expect(loss(0.51, 0.1)).toBeGreaterThan(0.13);
	expect(loss(0.83, 0.1)).toBeLessThan(0.27);
});

test("blendDensity(content) runs straight from gasoline to ethanol", () => {
	expect(blendDensity(fraction(0))).toBe(density.gasoline);
	expect(blendDensity(fraction(1))).toBe(density.ethanol);
	expect(blendDensity(fraction(0.5))).toBeCloseTo((density.gasoline + density.ethanol) / 2, 12);
});

test("blendStoichiometricRatio(content) is about 14.1 for E10 and 9.8 for E85, as tuners reckon (common practice)", () => {
	// They start from gasoline at 14.7, we from 14.6: 0.09 at E10.
	expect(Math.abs(blendStoichiometricRatio(fraction(0.1)) - 14.1)).toBeLessThan(0.1);
	expect(Math.abs(blendStoichiometricRatio(fraction(0.85)) - 9.8)).toBeLessThan(0.05);
});

test("blendStoichiometricRatio(content) mixes by mass", () => {
	const content = 0.3;
	const ethanolMass = (content * density.ethanol) / blendDensity(fraction(content));
	expect(blendStoichiometricRatio(fraction(content))).toBeCloseTo(14.6 * (1 - ethanolMass) + 9.0 * ethanolMass, 12);
});

test.each([
	// Content, lambda on a calibration for E10 and for E30: research/domain, section 10, reckoned with ethanol at 0.790 kg/L.
	[0, 0.965, 0.896],
	[0.1, 1, 0.928],
	[0.2, 1.037, 0.963],
	[0.25, 1.057, 0.981],
	[0.3, 1.077, 1],
	[0.35, 1.099, 1.02],
	[0.4, 1.121, 1.04],
	[0.5, 1.168, 1.084],
	[0.6, 1.219, 1.131],
	[0.74, 1.298, 1.205],
	[0.83, 1.355, 1.258],
])("fuelDemand(%f, …) gives lambda %f on a calibration for E10 and %f on one for E30", (content, onE10, onE30) => {
	// Half of the last printed digit, and 0.001 of ethanol's density.
	expect(Math.abs(fuelDemand(content, 0.1) - onE10)).toBeLessThan(0.0015);
	expect(Math.abs(fuelDemand(content, 0.3) - onE30)).toBeLessThan(0.0015);
});

test("fuelDemand(content, calibratedFor) is above 1, lean, with more ethanol than calibrated for, and 1 with just that", () => {
	expect(fuelDemand(0.4, 0.3)).toBeGreaterThan(1);
	expect(fuelDemand(0.2, 0.3)).toBeLessThan(1);
	expect(fuelDemand(0.3, 0.3)).toBe(1);
	expect(fuelDemand(0.2, 0.1) * fuelDemand(0.3, 0.2)).toBeCloseTo(fuelDemand(0.3, 0.1), 12);
});
