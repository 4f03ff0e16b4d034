/** The fuel-system card of a car in the log format. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { FuelSystem } from "../../src/domain/engine/fuelSystem";
import { limitsOf } from "../../src/domain/engine/limits";
import { fraction } from "../../src/domain/quantity";
import { formatLog, parseLog } from "../../src/store/backup";
import { refuseBad } from "../../src/store/checks";
import { type Broken, broken, expectError } from "../helpers/brokenLogs";
import { aCar, aLog, aStart } from "../helpers/logs";
import { saidOf, sentenceOf } from "../helpers/sentences";

const full = {
	injectorFlowCcPerMin: 550,
	injectorRatedKPa: 300,
	injectorFullLoadKPa: 350,
	injectorCount: 6,
	dutyLimit: 0.85,
	pumpFlowLPerH: 190,
	powerKW: 300,
	consumptionGPerKWh: 330,
	trimAuthority: 0.25,
	commandedLambda: 0.8,
	leanestLambda: 0.86,
	spreads: {
		injectorFlow: 0.03,
		pressure: 0.03,
		pumpFlow: 0.05,
		power: 0.05,
		consumption: 0.05,
		trim: 0.03,
		lambda: 0.02,
	},
};

const size = (most: number) => fc.double({ min: 1e-6, max: most, noNaN: true });
const spread = size(1);
/** Whatever the format allows, with nothing required. */
const cards = fc.record(
	{
		injectorFlowCcPerMin: size(1e5),
		injectorRatedKPa: size(1e6),
		injectorFullLoadKPa: size(1e6),
		injectorCount: fc.integer({ min: 1, max: 100 }),
		dutyLimit: size(1),
		pumpFlowLPerH: size(1e5),
		powerKW: size(1e5),
		consumptionGPerKWh: size(1e4),
		trimAuthority: size(1),
		commandedLambda: size(10),
		leanestLambda: size(10),
		spreads: fc.record(
			{
				injectorFlow: spread,
				pressure: spread,
				pumpFlow: spread,
				power: spread,
				consumption: spread,
				trim: spread,
				lambda: spread,
			},
			{ requiredKeys: [] },
		),
	},
	{ requiredKeys: [] },
);

function roundTrip(fuelSystem: object): unknown {
	const text = formatLog({ car: aCar({ fuelSystem }), events: [aStart()] });
	const log = parseLog(text);
	if (!log.ok) throw new Error(saidOf(log.error));
	expect(formatLog(log.value)).toBe(text);
	return log.value.car.fuelSystem;
}

describe("a log with a fuel-system card", () => {
	test("comes back as it was, full, empty, or with fields of the future", () => {
		for (const card of [full, {}, { spreads: {} }, { ...full, note: "mine", spreads: { lambda: 0.02, of: ["all"] } }])
			expect(roundTrip(card)).toEqual(card);
	});

	test("comes back as it was, whatever is on the card, and every such card has limits", () => {
		fc.assert(
			fc.property(cards, (card) => {
				expect(roundTrip(card)).toEqual(card);
				const { limits, leanEdge } = limitsOf(card as FuelSystem, fraction(0.3));
				for (const limit of Object.values(limits)) {
					if (!limit) continue;
					expect(limit.low).toBeLessThanOrEqual(limit.median);
					expect(limit.median).toBeLessThanOrEqual(limit.high);
				}
				if (leanEdge) expect(leanEdge.content).toBeLessThan(1);
			}),
		);
	});

	test("and one without are two logs: nothing is added to an old one", () => {
		expect(formatLog(aLog())).not.toContain("fuelSystem");
	});
});

const refused: Broken[] = [
	[
		"a card that is text",
		(f) => (f.car.fuelSystem = "big"),
		"car.fuelSystem",
		"must be the fuel-system card in braces",
	],
	["a card that is null", (f) => (f.car.fuelSystem = null), "car.fuelSystem", "must be the fuel-system card in braces"],
	[
		"an injector of no flow",
		(f) => (f.car.fuelSystem = { ...full, injectorFlowCcPerMin: 0 }),
		"car.fuelSystem.injectorFlowCcPerMin",
		"must be the flow of one injector from 0.000001 to 100000 cc/min, got 0",
	],
	[
		"half an injector",
		(f) => (f.car.fuelSystem = { injectorCount: 4.5 }),
		"car.fuelSystem.injectorCount",
		"must be a whole number of injectors from 1 to 100, got 4.5",
	],
	[
		"a duty in percent",
		(f) => (f.car.fuelSystem = { dutyLimit: 80 }),
		"car.fuelSystem.dutyLimit",
		"must be a share of the time from 0.000001 to 1, got 80",
	],
	[
		"a pressure below nothing",
		(f) => (f.car.fuelSystem = { injectorRatedKPa: -300 }),
		"car.fuelSystem.injectorRatedKPa",
		"must be a pressure from 0.000001 to 1000000 kPa, got -300",
	],
	[
		"a pump in quotes",
		(f) => (f.car.fuelSystem = { pumpFlowLPerH: "190" }),
		"car.fuelSystem.pumpFlowLPerH",
		"must be a number without quotes",
	],
	[
		"a power of null",
		(f) => (f.car.fuelSystem = { powerKW: null }),
		"car.fuelSystem.powerKW",
		"must be a power from 0.000001 to 100000 kW, got null",
	],
	[
		"a ship's consumption",
		(f) => (f.car.fuelSystem = { consumptionGPerKWh: 20000 }),
		"car.fuelSystem.consumptionGPerKWh",
		"must be a consumption of gasoline from 0.000001 to 10000 g/kWh, got 20000",
	],
	[
		"an air–fuel ratio for a lambda",
		(f) => (f.car.fuelSystem = { leanestLambda: 12.5 }),
		"car.fuelSystem.leanestLambda",
		"must be a lambda from 0.000001 to 10, got 12.5",
	],
	[
		"a trim in percent",
		(f) => (f.car.fuelSystem = { trimAuthority: 25 }),
		"car.fuelSystem.trimAuthority",
		"must be a fraction from 0.000001 to 1, got 25",
	],
	[
		"doubts in a list",
		(f) => (f.car.fuelSystem = { spreads: [0.03] }),
		"car.fuelSystem.spreads",
		"must be the relative standard uncertainties in braces",
	],
	[
		"a perfect injector",
		(f) => (f.car.fuelSystem = { spreads: { injectorFlow: 0 } }),
		"car.fuelSystem.spreads.injectorFlow",
		"must be a relative standard uncertainty from 0.000001 to 1, got 0",
	],
];

describe("parseLog refuses, and says where and why,", () => {
	test.each(refused)("%s", (_name, mutate, where, message) => {
		expectError(broken(mutate), "bad", where, message);
	});
});

test("refuseBad keeps a bad card from being written", async () => {
	const bad = aCar({ fuelSystem: { powerKW: Number.NaN } });
	const refused = await Promise.resolve()
		.then(() => refuseBad(bad, []))
		.catch(sentenceOf);
	expect(refused).toMatch(/car\.fuelSystem\.powerKW: must be a power/);
	expect(() => refuseBad(aCar({ fuelSystem: full }), [])).not.toThrow();
});
