import fc from "fast-check";
import { expect, test } from "vitest";
import type { FuelSystem } from "../../../src/domain/engine/fuelSystem";
import { limitsOf } from "../../../src/domain/engine/limits";
import { fraction } from "../../../src/domain/quantity";

const spreads = {
	injectorFlow: 0.04,
	pressure: 0.06,
	pumpFlow: 0.05,
	power: 0.06,
	consumption: 0.04,
	trim: 0.03,
	lambda: 0.02,
};

const factor = fc.double({ min: 0.6, max: 1.6, noNaN: true });
const systems = fc.record({
	injectorFlowCcPerMin: factor.map((by) => by * 550),
	injectorRatedKPa: fc.constant(300),
	injectorFullLoadKPa: factor.map((by) => by * 300),
	injectorCount: fc.constant(6),
	dutyLimit: fc.double({ min: 0.6, max: 0.95, noNaN: true }),
	pumpFlowLPerH: factor.map((by) => by * 190),
	powerKW: factor.map((by) => by * 300),
	consumptionGPerKWh: fc.double({ min: 280, max: 400, noNaN: true }),
	trimAuthority: fc.double({ min: 0.02, max: 0.4, noNaN: true }),
	commandedLambda: fc.double({ min: 0.75, max: 0.9, noNaN: true }),
	leanestLambda: fc.double({ min: 0.8, max: 1, noNaN: true }),
});
const blends = fc.double({ min: 0, max: 0.85, noNaN: true }).map(fraction);

/** Worse data of each kind: limits that they must lower, or leave. */
const worse: readonly [keyof FuelSystem, (value: number) => number][] = [
	["injectorFlowCcPerMin", (value) => value * 0.9],
	["injectorFullLoadKPa", (value) => value * 0.9],
	["dutyLimit", (value) => value * 0.9],
	["pumpFlowLPerH", (value) => value * 0.9],
	["powerKW", (value) => value * 1.1],
	["consumptionGPerKWh", (value) => value * 1.1],
	["trimAuthority", (value) => value * 0.7],
	["commandedLambda", (value) => value * 1.02],
	["leanestLambda", (value) => value * 0.98],
];

test("limitsOf lowers, or leaves, every limit and the lean edge as the data worsen", () => {
	fc.assert(
		fc.property(systems, blends, fc.constantFrom(...worse), (system, calibratedFor, [name, spoil]) => {
			const better = limitsOf(system, calibratedFor);
			const poorer = limitsOf({ ...system, [name]: spoil(Number(system[name as keyof typeof system])) }, calibratedFor);
			for (const kind of ["injectors", "pump", "trim", "lambda"] as const) {
				for (const end of ["low", "median", "high"] as const) {
					expect(poorer.limits[kind]?.[end]).toBeLessThanOrEqual((better.limits[kind]?.[end] ?? -1) + 1e-8);
				}
			}
			expect(poorer.leanEdge?.content ?? 1).toBeLessThanOrEqual((better.leanEdge?.content ?? 1) + 1e-8);
		}),
		{ numRuns: 60 },
	);
});

test("limitsOf widens with the spreads: cautious ends fall, hopeful ends rise, medians stay", () => {
	fc.assert(
		fc.property(systems, blends, (system, calibratedFor) => {
			const narrow = limitsOf({ ...system, spreads }, calibratedFor);
			const doubled = Object.fromEntries(Object.entries(spreads).map(([name, sd]) => [name, 2 * sd]));
			const wide = limitsOf({ ...system, spreads: doubled }, calibratedFor);
			for (const kind of ["injectors", "pump", "trim", "lambda"] as const) {
				const [before, after] = [narrow.limits[kind], wide.limits[kind]];
				expect(after?.low).toBeLessThanOrEqual((before?.low ?? -1) + 1e-8);
				expect(after?.high).toBeGreaterThanOrEqual((before?.high ?? 2) - 1e-8);
				expect(after?.median).toBeCloseTo(before?.median ?? -1, 6);
			}
			expect(wide.leanEdge?.content ?? 1).toBeLessThanOrEqual((narrow.leanEdge?.content ?? 1) + 1e-8);
		}),
		{ numRuns: 40 },
	);
});

test("limitsOf lowers the lean edge as less risk is accepted", () => {
	fc.assert(
		fc.property(systems, blends, (system, calibratedFor) => {
			const edge = (risk: number) => limitsOf(system, calibratedFor, risk).leanEdge?.content ?? 1;
			expect(edge(0.01)).toBeLessThanOrEqual(edge(0.05) + 1e-8);
			expect(edge(0.05)).toBeLessThanOrEqual(edge(0.2) + 1e-8);
		}),
		{ numRuns: 30 },
	);
});

test("limitsOf gives numbers from 0 to 1 in order, whatever the card says", () => {
	const any = fc.double({ min: 1e-3, max: 1e4, noNaN: true });
	const wild = fc.record(
		{
			injectorFlowCcPerMin: any,
			injectorRatedKPa: any,
			injectorFullLoadKPa: any,
			injectorCount: any,
			pumpFlowLPerH: any,
			powerKW: any,
			consumptionGPerKWh: any,
			trimAuthority: any,
			commandedLambda: any,
			leanestLambda: any,
		},
		{ requiredKeys: [] },
	);
	fc.assert(
		fc.property(wild, blends, (system, calibratedFor) => {
			const { limits, leanEdge } = limitsOf(system, calibratedFor);
			for (const limit of Object.values(limits)) {
				if (!limit) continue;
				expect(0 <= limit.low && limit.low <= limit.median && limit.median <= limit.high && limit.high <= 1).toBe(true);
			}
			if (leanEdge) expect(leanEdge.content >= 0 && leanEdge.content < 1).toBe(true);
		}),
		{ numRuns: 60 },
	);
});
