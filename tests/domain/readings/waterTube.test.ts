import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { mixtureDensity } from "../../../src/domain/readings/ethanolWater";
import { methodSd, strongLayer, type WaterTube, waterTubeContent } from "../../../src/domain/readings/waterTube";

/** The layer that so much ethanol and water make: forwards, where the code goes backwards. */
function layerOf(ethanolMl: number, waterMl: number): number {
	const [ethanol, water] = [ethanolMl * mixtureDensity(1), waterMl * mixtureDensity(0)];
	return (ethanol + water) / mixtureDensity(ethanol / (ethanol + water));
}
function tubeOf(content: number, fuelMl: number, waterMl: number): WaterTube {
	return { fuelMl, waterMl, layerMl: layerOf(content * fuelMl, waterMl) };
}
function found(tube: WaterTube, readToMl = 0.5, own?: number) {
	const result = waterTubeContent(tube, readToMl, own);
	if (!result.ok) throw new Error(result.error);
	return result.value;
}

const contents = fc.double({ min: 0, max: 1, noNaN: true });
const volumes = fc.double({ min: 5, max: 500, noNaN: true });

describe("waterTubeContent()", () => {
	test("finds any content again, whatever the volumes", () => {
		fc.assert(
			fc.property(contents, volumes, volumes, (content, fuel, water) => {
				expect(found(tubeOf(content, fuel, water)).content).toBeCloseTo(content, 6);
			}),
		);
	});

	test("corrects what the uncorrected formula reads too low", () => {
		const missing = (content: number, fuel: number, water: number) =>
			100 * (content - found(tubeOf(content, fuel, water)).uncorrected);
		// 1.2 and 2.6 points at 30 %; the rest of the table was reckoned from other densities, to a tenth.
		expect(missing(0.3, 90, 10)).toBeCloseTo(1.25, 1);
		expect(missing(0.3, 50, 50)).toBeCloseTo(2.64, 1);
		const table: readonly (readonly [number, number, Record<number, number>])[] = [
			[90, 10, { 10: 9.3, 20: 19.0, 30: 28.8 }],
			[80, 20, { 10: 9.1, 20: 18.5, 30: 28.1, 50: 47.5, 74: 71.1, 83: 80.0 }],
			[50, 50, { 10: 9.2, 20: 18.3, 30: 27.4, 50: 45.7, 74: 68.2, 83: 76.7 }],
		];
		for (const [fuel, water, reads] of table) {
			for (const [content, read] of Object.entries(reads)) {
				const { uncorrected } = found(tubeOf(Number(content) / 100, fuel, water));
				expect(Math.abs(100 * uncorrected - read), `${content} % in ${fuel} + ${water}`).toBeLessThan(0.12);
			}
		}
	});

	test("reads more ethanol from a larger layer, and less from more water or more fuel", () => {
		fc.assert(
			fc.property(fc.double({ min: 0.02, max: 0.9, noNaN: true }), volumes, volumes, (content, fuel, water) => {
				const tube = tubeOf(content, fuel, water);
				const read = found(tube).content;
				expect(found({ ...tube, layerMl: tube.layerMl * 1.001 }).content).toBeGreaterThan(read);
				expect(found({ ...tube, waterMl: water * 1.001 }).content).toBeLessThan(read);
				expect(found({ ...tube, fuelMl: fuel * 1.001 }).content).toBeLessThan(read);
			}),
		);
	});

	test("carries the reading of the volumes over to the content as finite differences do", () => {
		fc.assert(
			fc.property(
				fc.double({ min: 0.05, max: 0.9, noNaN: true }),
				fc.double({ min: 20, max: 100, noNaN: true }),
				fc.double({ min: 10, max: 100, noNaN: true }),
				fc.double({ min: 0.05, max: 1, noNaN: true }),
				(content, fuel, water, readTo) => {
					const tube = tubeOf(content, fuel, water);
					const step = 1e-4;
					const slope = (of: keyof WaterTube) =>
						(found({ ...tube, [of]: tube[of] + step }).content - found({ ...tube, [of]: tube[of] - step }).content) /
						(2 * step);
					const slopes = (["fuelMl", "waterMl", "layerMl"] as const).map(slope);
					const expected = (Math.hypot(...slopes) * readTo) / Math.sqrt(3);
					expect(found(tube, readTo, 0).sd / expected).toBeCloseTo(1, 4);
				},
			),
		);
	});

	test("adds the method's own uncertainty, larger above 40 %", () => {
		expect([0, 0.3, 0.4, 0.41, 0.9].map(methodSd)).toEqual([0.02, 0.02, 0.02, 0.04, 0.04]);
		const tube = tubeOf(0.3, 50, 50);
		const reading = found(tube, 0.5, 0).sd;
		// Half a millilitre either way on 50 mL: eight tenths of a point.
		expect(reading).toBeGreaterThan(0.006);
		expect(reading).toBeLessThan(0.012);
		expect(found(tube, 0.5).sd).toBeCloseTo(Math.hypot(reading, 0.02), 12);
		expect(found(tube, 0.5, 0.05).sd).toBeCloseTo(Math.hypot(reading, 0.05), 12);
	});

	test("takes what the reading explains as none or all, and refuses what it does not", () => {
		const tube = { fuelMl: 50, waterMl: 50, layerMl: 49.2 };
		expect(found(tube).content).toBe(0);
		expect(waterTubeContent({ ...tube, layerMl: 48 }, 0.5)).toEqual({ ok: false, error: "layerLost" });
		const whole = tubeOf(1, 50, 50);
		expect(found({ ...whole, layerMl: whole.layerMl + 0.5 }).content).toBe(1);
		const more = { ...whole, layerMl: whole.layerMl + 5 };
		expect(waterTubeContent(more, 0.5)).toEqual({ ok: false, error: "layerTooLarge" });
	});

	test("tells a layer too strong to keep the gasoline out", () => {
		expect(found(tubeOf(0.3, 90, 10)).layerStrength).toBeLessThan(strongLayer);
		expect(found(tubeOf(0.5, 90, 10)).layerStrength).toBeGreaterThan(strongLayer);
		expect(found(tubeOf(0.83, 50, 50)).layerStrength).toBeLessThan(strongLayer);
	});

	test("never leaves the scale and never says it is sure, whatever was read", () => {
		const any = fc.double({ min: 1, max: 5000, noNaN: true });
		fc.assert(
			fc.property(any, any, any, fc.double({ min: 0.01, max: 50, noNaN: true }), (fuelMl, waterMl, layerMl, readTo) => {
				const result = waterTubeContent({ fuelMl, waterMl, layerMl }, readTo);
				if (!result.ok) return;
				const { content, sd, layerStrength } = result.value;
				expect(content).toBeGreaterThanOrEqual(0);
				expect(content).toBeLessThanOrEqual(1);
				expect(sd).toBeGreaterThanOrEqual(0.02);
				expect(sd).toBeLessThan(Infinity);
				expect(Number.isFinite(layerStrength)).toBe(true);
			}),
			{ numRuns: 2000 },
		);
	});
});
