/** Readings from drives whose trim is known. */
import { describe, expect, test } from "vitest";
import { modelSd } from "../../../src/domain/datalog/constants";
import { findingOf } from "../../../src/domain/datalog/finding";
import type { Role } from "../../../src/domain/datalog/role";
import { steadyTrim } from "../../../src/domain/datalog/trimReading";
import { fuelDemand } from "../../../src/domain/fuel";
import { seedsFor, uniform } from "../../../src/domain/random";
import { impliedContent } from "../../../src/domain/readings/trims";
import { type Drive, normal } from "../../helpers/drive";
import { gridOf, plain } from "../../helpers/driveGrid";

const bothBanks: readonly Role[] = [...plain, "short2", "long2"];

function read(drive: Omit<Drive, "seed"> & { readonly seed?: string }, roles = plain) {
	const steady = steadyTrim(gridOf({ seed: "drive", rate: 4, ...drive }, roles));
	if (!steady) throw new Error("no trims in the log");
	return steady;
}

describe("the trim of a simulated drive", () => {
	test("is the one that the fuel asks for", () => {
		for (const trim of [-0.08, 0, 0.06, 0.15]) {
			const { found } = read({ trim });
			expect(Math.abs((found?.value ?? 1) - trim)).toBeLessThan(0.015);
		}
	});

	test("rests on all its stretches together, which with what is left out make up the log", () => {
		const { found, stretches, left } = read({ trim: 0.06, seconds: 600 });
		const told = stretches.reduce((sum, { fromS, toS }) => sum + (toS - fromS), 0);
		expect(stretches.length).toBeGreaterThan(1);
		expect(found?.seconds).toBeCloseTo(told, 9);
		expect(told + Object.values(left).reduce((sum, each) => sum + each, 0)).toBeCloseTo(600, 0);
	});

	test("leaves out the cold start, where the trims are other ones", () => {
		const { found, left, stretches } = read({ trim: 0.05, coolantFrom: 5, seconds: 1500 });
		expect(left.cold).toBeGreaterThan(300);
		expect(stretches[0].fromS).toBeGreaterThan(300);
		expect(Math.abs((found?.value ?? 1) - 0.05)).toBeLessThan(0.015);
	});

	test("leaves out idle, where they lie five percent higher", () => {
		const { left, stretches } = read({ trim: 0.05, perPoint: 0 });
		expect(left.idle).toBeGreaterThan(40);
		for (const { trim } of stretches) expect(Math.abs(trim - 0.05)).toBeLessThan(0.02);
	});

	test("finds nothing where the foot never rests, and says so", () => {
		const { found, left } = read({ trim: 0.05, restless: true, rate: 10 });
		expect(found).toBeNull();
		expect(left.unsteady).toBeGreaterThan(500);
	});

	test("finds nothing where the trims are not at work", () => {
		const { found, left } = read({ trim: 0.05, frozen: true });
		expect(found).toBeNull();
		expect(left.frozen).toBeGreaterThan(300);
	});

	test("is the mean of both banks, and less sure the further they lie apart", () => {
		const { found } = read({ trim: 0.05, banks: [0.04, -0.04] }, bothBanks);
		expect(Math.abs((found?.value ?? 1) - 0.05)).toBeLessThan(0.015);
		expect(found?.banksApart[0]).toBeGreaterThan((found?.banksApart[1] ?? 1) + 0.06);
		expect(found?.banks).toBeGreaterThan(0.03);
		expect(read({ trim: 0.05, banks: [0, 0] }, bothBanks).found?.banks).toBeLessThan(0.005);
	});

	test("combines short and long term as factors", () => {
		const { trims } = read({ trim: 0.1, beat: 0 });
		const { means } = gridOf({ seed: "drive", rate: 4, trim: 0.1, beat: 0 });
		const at = trims.both.findIndex((value) => value > 0.05);
		expect(1 + trims.both[at]).toBeCloseTo((1 + (means.short1?.[at] ?? 0)) * (1 + (means.long1?.[at] ?? 0)), 6);
	});

	test("needs both trims of a bank, or the total", () => {
		const grid = gridOf({ seed: "drive", trim: 0.05, seconds: 60 }, ["speed", "throttle", "short1", "long2"]);
		expect(steadyTrim(grid)).toBeNull();
		const total = { ...grid, means: { ...grid.means, total: grid.means.short1 } } as typeof grid;
		expect(steadyTrim(total)?.trims.both).toEqual(grid.means.short1);
	});

	test("survives a noisy loop and slow logging", () => {
		for (const rate of [0.5, 1, 20]) {
			const { found } = read({ trim: 0.07, rate, beat: 0.05, seconds: 1200 });
			expect(Math.abs((found?.value ?? 1) - 0.07), `${rate} rows a second`).toBeLessThan(0.02);
		}
	});
});

describe("the stated uncertainty", () => {
	const seeds = seedsFor("many drives");
	const drives = Array.from({ length: 120 }, (_, i) => {
		const content = 0.05 + 0.8 * uniform(seeds);
		const truth = fuelDemand(content, 0.3) - 1;
		// What a trim tells of the fuel at all: meters and injectors of this car are off by so much.
		const ofCar = modelSd * normal(seeds);
		const drive = { seed: `drive ${i}`, trim: truth + ofCar, perPoint: 0.005 + 0.02 * uniform(seeds), seconds: 600 };
		const { found } = read(drive);
		if (!found) throw new Error(`drive ${i} has no steady stretch`);
		return { content, truth, drive, found };
	});
	const share = (holds: (each: (typeof drives)[number]) => boolean) => drives.filter(holds).length / drives.length;

	test("holds the truth within 90 % limits in at least 90 % of the drives", () => {
		expect(share(({ truth, found }) => Math.abs(found.value - truth) <= 1.645 * found.sd)).toBeGreaterThanOrEqual(0.9);
	});
	test("is no wider than it need be: within one standard uncertainty lie about two thirds", () => {
		const within = share(({ truth, found }) => Math.abs(found.value - truth) <= found.sd);
		expect(within).toBeGreaterThan(0.58);
		expect(within).toBeLessThan(0.82);
	});
	test("of the stretches alone holds what this car trims in at least 90 % of the drives", () => {
		const statistical = ({ within, between }: { within: number; between: number }) => Math.hypot(within, between);
		expect(
			share(({ drive, found }) => Math.abs(found.value - drive.trim) <= 1.645 * statistical(found)),
		).toBeGreaterThanOrEqual(0.9);
	});
	test("holds the content that it implies as well", () => {
		const holds = share(({ content, found }) => {
			const implied = impliedContent(found.value, found.sd, 0.3);
			// Beyond what any content brings, the reading says that it lies at the end.
			return implied.ok ? Math.abs(implied.value.content - content) <= 1.645 * implied.value.sd : true;
		});
		expect(holds).toBeGreaterThanOrEqual(0.88);
	});
});

test("findingOf() converts the units of the log and says which of them it had to guess", () => {
	const grid = gridOf({ seed: "units", trim: 0.06, rate: 4, ethanol: 0.4 }, [...plain, "ethanol"]);
	const asLogged = {
		...grid,
		means: {
			...grid.means,
			coolant: grid.means.coolant?.map((value) => value * 1.8 + 32),
			speed: grid.means.speed?.map((value) => value / 1.609344),
			short1: grid.means.short1?.map((value) => 1 + value),
			long1: grid.means.long1?.map((value) => 1 + value),
			ethanol: grid.means.ethanol?.map((value) => value * 100),
		} as typeof grid.means,
	};
	const column = (role: Role, unit: string | null = null) => ({ role, unit }) as never;
	const roles = [column("coolant"), column("speed", "mph"), column("short1"), column("long1"), column("ethanol")];
	const same = ["rpm", "throttle", "load"].map((role) => column(role as Role));
	const finding = findingOf(asLogged, [...roles, ...same]);
	expect(finding.columns.slice(0, 4)).toEqual([
		{ role: "coolant", unit: "°F", guessed: true },
		{ role: "speed", unit: "mph", guessed: false },
		{ role: "short1", unit: "factor", guessed: true },
		{ role: "long1", unit: "factor", guessed: true },
	]);
	expect(finding.steady?.found?.value).toBeCloseTo(steadyTrim(grid)?.found?.value ?? Number.NaN, 5);
	expect(finding.ethanol?.value).toBeCloseTo(0.4, 5);
	expect(finding.load).toBeNull();
});

test("findingOf() takes all trims in one unit, however small one of them is", () => {
	const driven = gridOf({ seed: "small", trim: 0.02, rate: 4 });
	const learned = (value: number) => new Float32Array(driven.steps).fill(value);
	const grid = { ...driven, means: { ...driven.means, long1: learned(0.002) } };
	const inPercent = { short1: driven.means.short1?.map((value) => value * 100) ?? learned(0), long1: learned(0.2) };
	const columns = plain.map((role) => ({ role, unit: null }));
	const finding = findingOf({ ...driven, means: { ...driven.means, ...inPercent } }, columns);
	expect(finding.columns.filter(({ unit }) => unit === "%").map(({ role }) => role)).toEqual(["short1", "long1"]);
	expect(finding.steady?.found?.value).toBeCloseTo(steadyTrim(grid)?.found?.value ?? Number.NaN, 5);
});
