import "fake-indexeddb/auto";
import { afterEach, describe, expect, test } from "vitest";
import type { FillEvent, LogEvent } from "../../src/domain/event";
import type { Plan } from "../../src/domain/plan/request";
import type { Car } from "../../src/domain/vehicle";
import { keeperOf } from "../../src/keeper/keeper";
import type { PlanAnswer, PlanAsk } from "../../src/keeper/view";
import { openStore, type Store } from "../../src/store/store";
import { benchCar, longLog } from "../bench/longLog";

const until = Date.parse("2026-06-01T12:00:00Z");
const at = new Date(until).toISOString();
const flex = { id: "flex-51-83", range: [0.51, 0.83] } as never;
const e10 = { id: "gasoline-e10", range: [0.09, 0.1] } as never;
const gasoline = { id: "gasoline", name: "Gasoline", calibratedFor: 0.1, window: [0, 0.15] } as never;
const car: Car = { ...benchCar, calibrations: [...benchCar.calibrations, gasoline] };
const stores: Store[] = [];
let phones = 0;

afterEach(() => {
	for (const store of stores.splice(0)) store.close();
});

async function phoneWith(events: readonly LogEvent[], settings: Car = car) {
	const store = await openStore({ name: `ahead ${++phones}` });
	stores.push(store);
	await store.merge({ car: settings, events });
	return keeperOf(store);
}

function anAsk(fields: Record<string, unknown> = {}): PlanAsk {
	return {
		visit: { stop: "planned", at, place: "Place 1", gauge: 0.25 },
		poured: [],
		instead: [],
		offers: [{ product: flex }, { product: e10 }],
		fullness: { kind: "click" },
		targetCalibration: null,
		handling: { step: 0.5, minimum: 0 },
		ids: ["first", "second"],
		...fields,
	} as never;
}

function planOf(answer: PlanAnswer | null): Plan {
	if (!answer?.planned.ok) throw new Error(`no plan: ${JSON.stringify(answer)}`);
	return answer.planned.value.plan;
}

/** Dots inside the window, of twenty. */
function dotsInside({ dots, calibration }: PlanAnswer): number {
	const [low, high] = calibration.window;
	return (dots ?? []).filter((dot) => dot >= low && dot <= high).length;
}

const fillsOf = (plan: Plan, shared: Record<string, unknown>, ids: readonly string[]) =>
	plan.pours.map(
		({ product, litres, toClick }, i) =>
			({
				kind: "fill",
				id: ids[i],
				at: new Date(until + i * 1000).toISOString(),
				place: "Place 1",
				product,
				litres,
				...(toClick ? { toClick } : {}),
				...(i === 0 ? shared : {}),
				stop: "planned",
			}) as FillEvent,
	);

test("a plan of fixed amounts promises what the account then shows", async () => {
	const keeper = await phoneWith(longLog(12, until));
	await keeper.account(car.id);
	const answer = await keeper.plan(car.id, anAsk({ fullness: { kind: "litres", litres: 30 } }));
	const plan = planOf(answer);
	expect(plan.pours.reduce((sum, { litres }) => sum + litres, 0)).toBeCloseTo(30, 6);
	await keeper.append(car.id, fillsOf(plan, { gauge: 0.25 }, ["first", "second"]));
	const { now } = await keeper.account(car.id);
	expect(plan.content.median).toBeCloseTo(now?.estimate.median ?? 0, 6);
	expect(plan.chances.above).toBeCloseTo(now?.estimate.above ?? 1, 6);
	expect(plan.chances.below).toBeCloseTo(now?.estimate.below ?? 1, 6);
	expect(answer?.dots).toEqual(now?.estimate.dots);
});

test("the dots tell the same as the chances, to the click and by the amount", async () => {
	const keeper = await phoneWith(longLog(12, until));
	for (const fullness of [{ kind: "click" }, { kind: "litres", litres: 25 }]) {
		const answer = (await keeper.plan(car.id, anAsk({ fullness }))) as PlanAnswer;
		const { content, chances } = planOf(answer);
		expect(answer.dots).toHaveLength(20);
		expect(Math.abs(dotsInside(answer) / 20 - chances.inside)).toBeLessThanOrEqual(0.05);
		const [tenth, eleventh] = (answer.dots ?? []).slice(9);
		expect(content.median).toBeGreaterThanOrEqual(tenth - 1e-6);
		expect(content.median).toBeLessThanOrEqual(eleventh + 1e-6);
	}
});

test("the rest of a stop is planned from what was really poured", async () => {
	const keeper = await phoneWith(longLog(12, until));
	const first = planOf(await keeper.plan(car.id, anAsk()));
	expect(first.pours.map(({ product }) => product)).toEqual([flex, e10]);
	const poured = (litres: number) => fillsOf(first, { gauge: 0.25, litres }, ["first"]).slice(0, 1);
	const rest = async (litres: number) =>
		planOf(await keeper.plan(car.id, anAsk({ poured: poured(litres), offers: [{ product: e10 }], ids: ["second"] })));
	const asPlanned = await rest(first.pours[0].litres);
	expect(asPlanned.pours).toHaveLength(1);
	expect(asPlanned.pours[0]).toMatchObject({ product: e10, toClick: true });
	expect(Math.abs(asPlanned.pours[0].litres - first.pours[1].litres)).toBeLessThan(0.3);
	const more = await rest(first.pours[0].litres + 3);
	expect(more.pours[0].litres).toBeLessThan(asPlanned.pours[0].litres - 2);
	expect(more.content.median).toBeGreaterThan(asPlanned.content.median + 0.01);
});

test("a stop that is going to be replaced does not count for its own plan", async () => {
	const keeper = await phoneWith(longLog(6, until));
	const counted = planOf(await keeper.plan(car.id, anAsk({ visit: { stop: "planned", at, place: "Place 1" } })));
	const instead = ["5 a", "5 b"];
	const replaced = planOf(
		await keeper.plan(car.id, anAsk({ instead, visit: { stop: "planned", at, place: "Place 1" } })),
	);
	expect(replaced.content).not.toEqual(counted.content);
});

test("another calibration of the car can be planned for, and is named", async () => {
	const keeper = await phoneWith(longLog(6, until));
	const answer = await keeper.plan(car.id, anAsk({ targetCalibration: "gasoline" }));
	expect(answer?.calibration).toEqual(gasoline);
	expect(planOf(answer).pours.map(({ product }) => product)).toEqual([e10]);
	expect((await keeper.plan(car.id, anAsk({ targetCalibration: "gone" })))?.calibration.id).toBe("blend-30");
});

test("without a calibration there is nothing to plan for", async () => {
	const keeper = await phoneWith(longLog(2, until), { ...car, calibrations: [] });
	expect(await keeper.plan(car.id, anAsk())).toBeNull();
});

describe("what else could be done", () => {
	const narrow = { id: "narrow", name: "Narrow", calibratedFor: 0.3, window: [0.295, 0.305] } as never;
	const anything = { id: "anything", name: "Anything", calibratedFor: 0.3, window: [0.02, 0.9] } as never;
	const withNarrow = { ...car, calibrations: [...car.calibrations, narrow, anything] };
	const ask = (fields: Record<string, unknown> = {}) =>
		anAsk({ targetCalibration: "narrow", visit: { stop: "planned", at, gauge: 0.75 }, otherwise: true, ...fields });

	test("is reckoned where it was asked for and no plan comes inside", async () => {
		const keeper = await phoneWith(longLog(6, until), withNarrow);
		const answer = await keeper.plan(car.id, ask());
		expect(answer?.planned).toMatchObject({ ok: true, value: { verdict: "knock" } });
		expect(answer?.otherwise?.stages[0]).toMatchObject({ visit: { stop: "planned" } });
		expect(answer?.otherwise?.stages[0].planned.plan).toEqual(planOf(answer));
		expect((await keeper.plan(car.id, ask({ otherwise: false })))?.otherwise).toBeNull();
		const inside = await keeper.plan(car.id, ask({ targetCalibration: "anything" }));
		expect(inside?.planned).toMatchObject({ ok: true, value: { verdict: "inside" } });
		expect(inside?.otherwise).toBeNull();
	});

	test("does not offer to burn before a stop that has begun", async () => {
		const keeper = await phoneWith(longLog(6, until), withNarrow);
		const poured = fillsOf({ pours: [{ product: flex, litres: 2, toClick: false }] } as never, {}, ["first"]);
		expect((await keeper.plan(car.id, ask({ poured, ids: ["second"] })))?.otherwise).toBeNull();
	});

	test("says how far the car goes on what is to be burned, once its consumption is known", async () => {
		const odometers = longLog(8, until).map((event) =>
			event.kind === "fill" && event.id.endsWith("a")
				? ({ ...event, odometerKm: 10_000 + 400 * Number.parseInt(event.id, 10) } as FillEvent)
				: event,
		);
		const tooRich = { id: "rich", name: "Weak", calibratedFor: 0.16, window: [0.1, 0.22] } as never;
		const settings = { ...car, calibrations: [...car.calibrations, tooRich] };
		const visit = { stop: "planned", at, gauge: 0.75 };
		const asked = ask({ targetCalibration: "rich", offers: [{ product: e10 }], visit });
		const known = await (await phoneWith(odometers, settings)).plan(car.id, asked);
		const unknown = await (await phoneWith(longLog(8, until), settings)).plan(car.id, asked);
		const burn = known?.otherwise?.burnFirst ?? 0;
		expect(burn).toBeGreaterThan(0);
		// Some 39 L every 400 km.
		expect((known?.otherwise?.burnKm ?? 0) / burn).toBeGreaterThan(7);
		expect((known?.otherwise?.burnKm ?? 0) / burn).toBeLessThan(14);
		expect(unknown?.otherwise?.burnFirst ?? 0).toBeGreaterThan(0);
		expect(unknown?.otherwise?.burnKm).toBeNull();
	});
});
