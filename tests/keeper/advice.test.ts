import "fake-indexeddb/auto";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { pumpView } from "../../src/domain/estimator/pumpView";
import { advanced, openAccount } from "../../src/domain/estimator/replay";
import { countingEvents, type LogEvent } from "../../src/domain/event";
import { instant } from "../../src/domain/quantity";
import { type Keeper, keeperOf } from "../../src/keeper/keeper";
import type { PlanAsk } from "../../src/keeper/view";
import { openStore, type Store } from "../../src/store/store";
import { aCalibration, aCar, aFill, aPumpReading, aStart, aVoid } from "../helpers/logs";

const e85 = { id: "E85", range: [0.51, 0.83] } as never;
const e10 = { id: "E10", range: [0.09, 0.1] } as never;
const other = aCalibration({ id: "e70", calibratedFor: 0.7, window: [0.6, 0.8] });
const car = aCar({ calibrations: [aCalibration(), other] });
const at = (day: number, hour = 8) => `2026-03-${String(day).padStart(2, "0")}T${String(hour).padStart(2, "0")}:00:00Z`;
const stores: Store[] = [];
let phones = 0;

afterAll(() => {
	for (const store of stores) store.close();
});

async function keeperWith(events: readonly LogEvent[], ofCar = car) {
	const store = await openStore({ name: `advice ${++phones}` });
	stores.push(store);
	await store.merge({ car: ofCar, events });
	return keeperOf(store);
}

const start = aStart({ at: at(1), gauge: 0.6 });
const north = { place: "North", at: at(3), stop: "1", product: e85 };
const { place: _, ...nowhere } = north;
const log: readonly LogEvent[] = [
	start,
	aPumpReading({ ...north, id: "sample", value: 0.62, sd: 0.03, at: at(3, 7) }),
	aFill({ ...north, id: "1a", litres: 8, pricePerLitre: 0.9 }),
	aFill({ ...north, id: "1b", litres: 16, product: e10, at: at(3, 9) }),
	aFill({ ...north, id: "2a", stop: "2", at: at(9), litres: 9, place: "South" }),
	aFill({ ...nowhere, id: "2b", stop: "2", at: at(9, 9), litres: 12, product: e10 }),
	aFill({ ...north, id: "3a", stop: "3", at: at(12), litres: 7, pricePerLitre: 0.95 }),
	aFill({ ...north, id: "3 mistaken", stop: "3", at: at(12, 9), litres: 70, pricePerLitre: 9.5 }),
	aVoid({ target: "3 mistaken", id: "void", at: at(12, 10) }),
	aFill({ ...north, id: "4a", stop: "4", at: at(15), litres: 5 }),
];

/** The keeper of the log above. */
let keeper: Keeper;
beforeAll(async () => {
	keeper = await keeperWith(log);
});

describe("places()", () => {
	test("lists places and products, the last visited first, with counts, dates and the price last seen", async () => {
		const places = await keeper.places(car.id, at(20));
		expect(places?.map(({ products, ...place }) => place)).toEqual([
			{ place: "North", lastVisit: at(15), fills: 4, samples: 1 },
			{ place: "South", lastVisit: at(9), fills: 1, samples: 0 },
		]);
		expect(places?.[0].products.map(({ pump, ...known }) => known)).toEqual([
			{
				product: e85,
				fills: 3,
				samples: 1,
				lastFill: at(15),
				lastSample: at(3, 7),
				price: { perLitre: 0.95, at: at(12) },
			},
			{ product: e10, fills: 1, samples: 0, lastFill: at(3, 9), lastSample: null, price: null },
		]);
	});

	test("knows of a pump what the account knows, better where it was tested", async () => {
		const [tested, untested] = (await keeper.places(car.id, at(20))) ?? [];
		expect(tested.products[0].pump.better).toBeGreaterThan(untested.products[0].pump.better);
		expect(untested.products[0].pump.better).toBeGreaterThan(0.05);
		const account = countingEvents(log).reduce((so, event) => advanced(so, event, car).account, openAccount(car));
		const full = pumpView(account.belief, e85, "North", instant(at(20)));
		expect(tested.products[0].pump.median).toBeCloseTo(full.median, 2);
		expect(tested.products[0].pump.better).toBeCloseTo(full.better, 1);
	});

	test("are as they were on an earlier day", async () => {
		const places = await keeper.places(car.id, at(10));
		expect(places?.map(({ place, fills }) => ({ place, fills }))).toEqual([
			{ place: "South", fills: 1 },
			{ place: "North", fills: 2 },
		]);
	});

	test("are none where no place was named", async () => {
		const keeper = await keeperWith([start, aFill({ at: at(3), product: e85 })]);
		expect(await keeper.places(car.id, at(20))).toEqual([]);
	});
});

function ask(fields: Partial<Record<keyof PlanAsk, unknown>> = {}): PlanAsk {
	return {
		visit: { stop: "now", at: at(20), place: "North", gauge: 0.3 },
		poured: [],
		instead: [],
		offers: [{ product: e85 }, { product: e10 }],
		fullness: { kind: "click" },
		targetCalibration: null,
		handling: { step: 0.5, minimum: 0 },
		ids: ["a", "b"],
		...fields,
	} as never;
}

describe("measures()", () => {
	test("are about the fill where one can be planned", async () => {
		const found = await keeper.measures(car.id, ask());
		expect(found?.filling).toBe(true);
		const kinds = found?.worths.map(({ measure }) =>
			"when" in measure ? `${measure.kind} ${measure.when}` : measure.kind,
		);
		expect(kinds?.sort()).toEqual([
			...["analyser after", "analyser before", "pumpSample", "pumpSample"],
			...["tankSample after", "tankSample before", "trim after", "trim before"],
		]);
		const [flex, weak] = [0, 1].map((offer) =>
			found?.worths.find(({ measure }) => measure.kind === "pumpSample" && measure.offer === offer),
		);
		expect(flex?.narrowing).toBeGreaterThan(weak?.narrowing ?? 1);
	});

	test("are about the tank as it stands where no fill is planned, or none can be", async () => {
		const visit = { stop: "now", at: at(20) };
		const [none, tooMuch] = [
			await keeper.measures(car.id, ask({ visit, offers: [] })),
			await keeper.measures(car.id, ask({ visit, fullness: { kind: "litres", litres: 500 } })),
		];
		for (const found of [none, tooMuch]) {
			expect(found?.filling).toBe(false);
			expect(found?.inside).toBeGreaterThan(0);
			const kinds = found?.worths.map(({ measure }) => measure.kind);
			expect(kinds?.sort()).toEqual(["analyser", "gauge", "tankSample", "trim"]);
		}
	});

	test("are held against the window that is pumped for, and the trim against the flashed calibration", async () => {
		const [flashed, target] = [
			await keeper.measures(car.id, ask({ offers: [] })),
			await keeper.measures(car.id, ask({ offers: [], targetCalibration: "e70" })),
		];
		expect(target?.inside).not.toBe(flashed?.inside);
		const trims = target?.worths.flatMap(({ measure }) => (measure.kind === "trim" ? [measure.calibratedFor] : []));
		expect(trims).toEqual([0.3]);
	});

	test("know of no window and no trim without a calibration", async () => {
		const bare = aCar({ calibrations: [] });
		const found = await (await keeperWith(log, bare)).measures(bare.id, ask());
		expect(found).toMatchObject({ filling: false, inside: null });
		expect(found?.worths.map(({ measure }) => measure.kind).sort()).toEqual(["analyser", "tankSample"]);
	});

	test("leave the gauge out once something was poured", async () => {
		const poured = [aFill({ id: "p", at: at(20), stop: "now", place: "North", product: e85, litres: 4 })];
		const found = await keeper.measures(car.id, ask({ visit: { stop: "now", at: at(20), place: "North" }, poured }));
		expect(found?.worths.some(({ measure }) => measure.kind === "gauge")).toBe(false);
	});
});

describe("table()", () => {
	const grid = { first: [0, 10], second: [0, 10, 20] } as never;

	test("tells of the tank with what was poured already", async () => {
		const before = await keeper.table(car.id, ask(), grid);
		expect(before?.rows.map(({ cells }) => cells.length)).toEqual([3, 3]);
		const poured = [aFill({ id: "p", at: at(20), stop: "now", place: "North", product: e85, litres: 10, gauge: 0.3 })];
		const after = await keeper.table(car.id, ask({ poured }), grid);
		for (const k of [0, 1, 2]) {
			expect(after?.rows[0].cells[k].mix?.median).toBeCloseTo(before?.rows[1].cells[k].mix?.median ?? 0, 2);
		}
	});

	test("takes its window from the target, and none without a calibration", async () => {
		const judged = (await keeper.table(car.id, ask(), grid))?.rows[1].cells[2].mix?.judged;
		expect(judged?.chances).toMatchObject({ inside: expect.any(Number) });
		const bare = aCar({ calibrations: [] });
		const table = await (await keeperWith(log, bare)).table(bare.id, ask(), grid);
		expect(table?.rows[1].cells[2].mix?.judged).toBeNull();
	});

	test("takes two offers", async () => {
		expect(await keeper.table(car.id, ask({ offers: [{ product: e85 }] }), grid)).toBeNull();
	});
});
