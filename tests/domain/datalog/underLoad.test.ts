import { describe, expect, test } from "vitest";
import { modelSd } from "../../../src/domain/datalog/constants";
import { reportedEthanol } from "../../../src/domain/datalog/ethanolReading";
import { readFuelSystem } from "../../../src/domain/datalog/fuelSystem";
import { plotOf } from "../../../src/domain/datalog/plot";
import type { Role } from "../../../src/domain/datalog/role";
import { steadyTrim } from "../../../src/domain/datalog/trimReading";
import { agreementOf, underLoad } from "../../../src/domain/datalog/underLoad";
import { fuelDemand } from "../../../src/domain/fuel";
import type { Drive } from "../../helpers/drive";
import { gridOf, gridWith, plain } from "../../helpers/driveGrid";

const withLambda: readonly Role[] = [...plain, "lambda", "commanded"];

function pulled(drive: Partial<Drive>, roles = withLambda) {
	const grid = gridOf({ seed: "pulls", trim: 0.08, pulls: true, seconds: 1500, ...drive }, roles);
	return { load: underLoad(grid), trim: steadyTrim(grid)?.found ?? null };
}

describe("lambda under load", () => {
	test("over the commanded one is the demand of the fuel, lean for more ethanol and rich for less", () => {
		for (const content of [0.1, 0.3, 0.5]) {
			const truth = fuelDemand(content, 0.3) - 1;
			const found = pulled({ trim: truth }).load?.found;
			expect(Math.abs((found?.value ?? 1) - truth)).toBeLessThan(0.015);
			expect(Math.abs((found?.value ?? 1) - truth)).toBeLessThan(1.645 * (found?.sd ?? 0));
			expect(found?.commanded).toBeCloseTo(0.85, 2);
			expect(found?.sd).toBeGreaterThanOrEqual(modelSd);
		}
	});
	test("agrees with the trims of a car that does not carry them, and is void on one that does", () => {
		const free = pulled({});
		expect(free.load?.found && agreementOf(free.load.found, free.trim)).toBe("agree");
		const carried = pulled({ carried: true });
		expect(Math.abs(carried.load?.found?.value ?? 1)).toBeLessThan(0.02);
		expect(carried.load?.found && agreementOf(carried.load.found, carried.trim)).toBe("carried");
	});
	test("needs both lambdas and something that tells the load", () => {
		expect(pulled({}, [...plain, "lambda"]).load).toBeNull();
		expect(pulled({}, ["speed", "lambda", "commanded"]).load).toBeNull();
		expect(pulled({}, ["manifold", "lambda", "commanded"]).load?.found).not.toBeNull();
		expect(pulled({ pulls: false }).load).toMatchObject({ found: null, corrected: 0 });
	});
	test("is not read cold", () => {
		expect(pulled({ coolantFrom: 10, seconds: 300 }).load?.found).toBeNull();
	});
	test("leaves out pulls in which the short-term trims are at work", () => {
		const steps = 40;
		const flat = (value: number) => new Array<number>(steps).fill(value);
		const pull = { load: flat(0.95), lambda: flat(0.9), commanded: flat(0.85), coolant: flat(90) };
		const moving = Array.from({ length: steps }, (_, i) => 0.05 + 0.01 * (i % 3));
		expect(underLoad(gridWith({ ...pull, short1: flat(0) }))?.found?.value).toBeCloseTo(0.9 / 0.85 - 1, 6);
		expect(underLoad(gridWith({ ...pull, short1: moving }))).toMatchObject({ found: null, corrected: 1 });
		// Where the loop says that it is open, a mixture commanded at 1 will do.
		const lean = { ...pull, commanded: flat(1), lambda: flat(1.06), short1: flat(0) };
		expect(underLoad(gridWith(lean))?.found).toBeNull();
		expect(underLoad(gridWith({ ...lean, fuelSystem: flat(0) }))?.found?.value).toBeCloseTo(0.06, 6);
	});
});

describe("agreementOf()", () => {
	const reading = (value: number) => ({ value, sd: 0.03, within: 0, between: 0, banks: 0, model: 0.03 });
	test("never takes a mixture that fits for news about the fuel", () => {
		expect(agreementOf(reading(0), reading(0.08))).toBe("carried");
		expect(agreementOf(reading(-0.01), reading(-0.09))).toBe("carried");
		expect(agreementOf(reading(0.01), reading(0.02))).toBe("agree");
		expect(agreementOf(reading(0.07), reading(0.09))).toBe("agree");
		expect(agreementOf(reading(0.12), reading(0.02))).toBe("differ");
		expect(agreementOf(reading(-0.08), reading(0.08))).toBe("differ");
		expect(agreementOf(reading(0.05), null)).toBe("alone");
	});
});

describe("the content that the car reports", () => {
	const reported = (values: readonly number[]) => reportedEthanol(gridWith({ ethanol: values }));
	test("is taken from the end of the log, with its spread", () => {
		const values = Array.from({ length: 90 }, (_, i) => (i < 30 ? 0.2 : 0.4) + (i % 2) * 0.01);
		const found = reported(values);
		expect(found?.value).toBeCloseTo(0.405, 2);
		expect(found?.atFirst).toBeCloseTo(0.205, 2);
		expect(found?.spread).toBeGreaterThan(0.004);
		expect(found?.spread).toBeLessThan(0.02);
	});
	test("is none where it stands at zero throughout, or outside of what is possible", () => {
		expect(reported(new Array(30).fill(0))).toBeNull();
		expect(reported(new Array(30).fill(2.55))).toBeNull();
		expect(reported(new Array(30).fill(Number.NaN))).toBeNull();
	});
});

test("readFuelSystem() knows the codes and the letters of J1979", () => {
	const read = (texts: string) => texts.split("|").map(readFuelSystem);
	expect(read("2|16|CL|CL-Fault|closed loop")).toEqual([1, 1, 1, 1, 1]);
	expect(read("1|4|8|OL|OL-Drive|Open loop")).toEqual([0, 0, 0, 0, 0, 0]);
	expect(read("0|32|?|")).toEqual([Number.NaN, Number.NaN, Number.NaN, Number.NaN]);
});

test("plotOf() keeps the furthest values and leaves gaps open", () => {
	const values = Float32Array.from({ length: 1000 }, (_, i) => (i >= 400 && i < 600 ? Number.NaN : Math.sin(i / 50)));
	values[777] = 5;
	const grid = gridWith({ total: [...values] });
	const { low, mean, high, seconds } = plotOf(values, grid, 100);
	expect(mean).toHaveLength(100);
	expect(seconds).toBe(500);
	expect(high[77]).toBe(5);
	expect(mean[50]).toBeNaN();
	for (let i = 0; i < 100; i++) if (!Number.isNaN(mean[i])) expect(low[i] <= mean[i] && mean[i] <= high[i]).toBe(true);
	// Parts of ten values each.
	const total = (column: Float32Array) => column.reduce((sum, value) => sum + (Number.isNaN(value) ? 0 : value), 0);
	expect(10 * total(mean)).toBeCloseTo(total(values), 3);
});
