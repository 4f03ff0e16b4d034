import fc from "fast-check";
import { expect, test } from "vitest";
import {
	contentAtDemand,
	flowAtPressure,
	injectorDemand,
	litresPerHourPerCcPerMin,
	openLoopLambda,
	pumpDemand,
	trimNeeded,
} from "../../../src/domain/engine/fuelling";
import { usualGasoline } from "../../../src/domain/engine/gasoline";
import { fuelDemand, heatPerLitre } from "../../../src/domain/fuel";
import { fraction } from "../../../src/domain/quantity";

const contents = fc.double({ min: 0, max: 1, noNaN: true }).map(fraction);

test("openLoopLambda is what was commanded on the blend calibrated for, and leaner with more ethanol", () => {
	fc.assert(
		fc.property(contents, contents, (content, calibratedFor) => {
			expect(openLoopLambda(0.82, calibratedFor, calibratedFor)).toBe(0.82);
			const leaner = openLoopLambda(0.82, content, calibratedFor) - 0.82;
			if (Math.abs(content - calibratedFor) > 1e-9) expect(Math.sign(leaner)).toBe(Math.sign(content - calibratedFor));
		}),
	);
});

test("openLoopLambda of a calibration for E30 at 0.80 is 0.833 on E40", () => {
	// Air per litre by hand: 14.6 · 0.745 and 9.0 · 0.789 kg/L, so K(E30) = 9.7442 and K(E40) = 9.3666.
	expect(openLoopLambda(0.8, fraction(0.4), fraction(0.3))).toBeCloseTo((0.8 * 9.7442) / 9.3666, 4);
	expect(trimNeeded(fraction(0.4), fraction(0.3))).toBeCloseTo(9.7442 / 9.3666 - 1, 4);
});

test("pumpDemand and injectorDemand are 1 on gasoline and rise with the content, for any gasoline", () => {
	const gasolines = fc.record({
		density: fc.double({ min: 0.72, max: 0.775, noNaN: true }),
		stoichiometricRatio: fc.double({ min: 14.3, max: 14.8, noNaN: true }),
	});
	// A hundredth of a percent apart or not at all: contents nearer than rounding have the same demand, give or take its last bit.
	const apart = fc.integer({ min: 0, max: 10_000 }).map((n) => fraction(n / 10_000));
	fc.assert(
		fc.property(apart, apart, gasolines, (one, other, varied) => {
			const base = { ...usualGasoline, ...varied };
			expect(pumpDemand(fraction(0), base)).toBe(1);
			expect(injectorDemand(fraction(0), base)).toBe(1);
			const [less, more] = [fraction(Math.min(one, other)), fraction(Math.max(one, other))];
			expect(pumpDemand(more, base)).toBeGreaterThanOrEqual(pumpDemand(less, base));
			expect(injectorDemand(more, base)).toBeGreaterThanOrEqual(injectorDemand(less, base));
			expect(injectorDemand(more, base)).toBeGreaterThanOrEqual(pumpDemand(more, base));
		}),
	);
});

test("pumpDemand stays within one percent of what equal heat would ask for, and never below it", () => {
	fc.assert(
		fc.property(contents, (content) => {
			const byHeat = heatPerLitre(fraction(0)) / heatPerLitre(content);
			expect(pumpDemand(content) / byHeat).toBeGreaterThanOrEqual(1 - 1e-12);
			expect(pumpDemand(content) / byHeat).toBeLessThan(1.01);
		}),
	);
});

test("pumpDemand agrees with the Swedish table by heat within 2 %: E85 in summer and in winter, ethanol", () => {
	// kWh per m³ of spbi.se, read in a stored copy: 9100, 6300, 6650 and 5900.
	expect(Math.abs(pumpDemand(fraction(0.85)) / (9100 / 6300) - 1)).toBeLessThan(0.02);
	expect(Math.abs(pumpDemand(fraction(0.75)) / (9100 / 6650) - 1)).toBeLessThan(0.02);
	expect(Math.abs(pumpDemand(fraction(1)) / (9100 / 5900) - 1)).toBeLessThan(0.02);
});

test("contentAtDemand undoes fuelDemand", () => {
	fc.assert(
		fc.property(contents, contents, (content, calibratedFor) => {
			const found = contentAtDemand(fuelDemand(content, calibratedFor), calibratedFor);
			// The very ends may fall outside by rounding.
			if (content > 1e-9 && content < 1 - 1e-9) expect(found).toBeCloseTo(content, 9);
		}),
	);
});

test("contentAtDemand is null where no blend has the demand", () => {
	expect(contentAtDemand(0.99, fraction(0))).toBeNull();
	expect(contentAtDemand(1.6, fraction(0))).toBeNull();
	expect(contentAtDemand(1, fraction(0))).toBe(0);
});

test("flowAtPressure goes with the root of the pressure", () => {
	expect(flowAtPressure(550, 300, 300)).toBe(550);
	expect(flowAtPressure(550, 300, 1200)).toBe(1100);
});

test("litresPerHourPerCcPerMin turns 1000 cc/min into 60 L/h", () => {
	expect(1000 * litresPerHourPerCcPerMin).toBe(60);
});
