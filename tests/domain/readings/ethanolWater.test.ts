import { expect, test } from "vitest";
import { densitySlope, mixtureDensity } from "../../../src/domain/readings/ethanolWater";

test("mixtureDensity() agrees with the table of Perry's Chemical Engineers' Handbook, 7th edition, at 20 °C", () => {
	// Percent by weight and kg/L; older measurements than those behind OIML R 22. From 20 % on from memory.
	const handbook = [
		[0, 0.99823],
		[2, 0.99453],
		[5, 0.98938],
		[8, 0.98478],
		[10, 0.98187],
		[12, 0.9791],
		[20, 0.96864],
		[30, 0.95382],
		[40, 0.93518],
		[50, 0.91384],
		[60, 0.89113],
		[70, 0.86766],
		[80, 0.84344],
		[90, 0.81797],
		[100, 0.78934],
	];
	for (const [percent, density] of handbook)
		expect(Math.abs(mixtureDensity(percent / 100) - density * 1000), `${percent} %`).toBeLessThan(0.12);
});

test("mixtureDensity() gives the strengths by volume of the International Alcoholometric Tables", () => {
	// Percent by mass that are so many percent by volume at 20 °C (OIML R 22, table; from memory).
	const table = [
		[33.3, 40],
		[42.43, 50],
		[62.39, 70],
		[93.84, 96],
	];
	for (const [mass, volume] of table) {
		const strength = ((mass / 100) * mixtureDensity(mass / 100)) / mixtureDensity(1);
		expect(strength * 100).toBeCloseTo(volume, 1);
	}
	expect(mixtureDensity(1)).toBeCloseTo(789.24, 1);
});

test("mixing equal volumes loses three and a half percent of them", () => {
	const [ethanol, water] = [50 * mixtureDensity(1), 50 * mixtureDensity(0)];
	const volume = (ethanol + water) / mixtureDensity(ethanol / (ethanol + water));
	expect(volume).toBeCloseTo(96.5, 1);
});

test("densitySlope() is the slope of mixtureDensity()", () => {
	for (let p = 0.01; p < 1; p += 0.01) {
		const step = 1e-5;
		const slope = (mixtureDensity(p + step) - mixtureDensity(p - step)) / (2 * step);
		expect(densitySlope(p)).toBeCloseTo(slope, 3);
	}
});
