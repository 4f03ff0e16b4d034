/** What a fuel trim would show, before and after earlier trims taught the car's baseline. */
import { describe, expect, test } from "vitest";
import { instrumentOf, type Reading } from "../../../src/domain/plan/instrument";
import { baselineShare } from "../../../src/domain/readings/trims";
import { aStanding } from "./standings";

const weight = Float32Array.of(1, 3);

/** Two particles, with a baseline learned for an E30 calibration. */
function standing(mean: readonly number[], variance: readonly number[]) {
	const baseline = { mean: Float32Array.from(mean), variance: Float32Array.from(variance), at: 0, sd: 0.025 };
	const belief = { weight, baselines: new Map(mean.length > 0 ? [[0.3, baseline]] : []) };
	return { ...aStanding([10, 0.1, 40], [20, 0.5, 30]), weight, gauge: null, belief } as never;
}

const trim = (calibratedFor: number, when: "before" | "after") => ({ kind: "trim", calibratedFor, when }) as Reading;
const unknown = standing([], []);
const known = standing([0.02, -0.04], [0.0004, 0.0001]);

describe("A fuel trim", () => {
	test("shows nothing on the fuel that the calibration is for, and more on more ethanol", () => {
		const { truth, rubbish } = instrumentOf(trim(0.5, "before"), unknown);
		expect(truth(1, 0.9)).toBeCloseTo(0, 9);
		expect(truth(0, 0.9)).toBeLessThan(-0.1);
		expect(rubbish).toBe(true);
		const burned = instrumentOf(trim(0.5, "after"), unknown).truth;
		expect(burned(0, 0.5)).toBeCloseTo(0, 9);
		expect(burned(0, 0.9)).toBeGreaterThan(0.1);
	});

	test("of a car with a known baseline shows both as factors", () => {
		for (const when of ["before", "after"] as const) {
			const [alone, both] = [unknown, known].map((each) => instrumentOf(trim(0.3, when), each).truth);
			for (const [particle, baseline] of [0.02, -0.04].entries())
				expect(1 + both(particle, 0.7)).toBeCloseTo((1 + alone(particle, 0.7)) * (1 + baseline), 6);
		}
		expect(instrumentOf(trim(0.2, "before"), known).truth(0, 0)).toBe(
			instrumentOf(trim(0.2, "before"), unknown).truth(0, 0),
		);
	});

	test("is the surer the better the baseline is known, by squares", () => {
		const sd = (calibratedFor: number, of: typeof known) => instrumentOf(trim(calibratedFor, "before"), of).sd(0);
		expect(sd(0.3, unknown)).toBe(0.03);
		expect(sd(0.2, known)).toBe(0.03);
		const repeat = 0.03 ** 2 * (1 - baselineShare ** 2);
		// One part of 0.0004 and three of 0.0001.
		expect(sd(0.3, known) ** 2).toBeCloseTo(repeat + 0.000175, 9);
		expect(sd(0.3, standing([0, 0], [0, 0])) ** 2).toBeCloseTo(repeat, 9);
		expect(sd(0.3, standing([0, 0], [0.000625, 0.000625]))).toBeCloseTo(0.03, 9);
	});
});
