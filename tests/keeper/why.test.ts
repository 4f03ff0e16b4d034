import "fake-indexeddb/auto";
import { afterAll, expect, test } from "vitest";
import type { LogEvent } from "../../src/domain/event";
import { keeperOf } from "../../src/keeper/keeper";
import { openStore, type Store } from "../../src/store/store";
import { aCar, aFill, aFlash, aPumpReading, aStart } from "../helpers/logs";

const e85 = { id: "E85", range: [0.51, 0.83] };
const e10 = { id: "E10", range: [0.09, 0.1] };
const car = aCar();
const at = (day: number, hour = 8) => new Date(Date.UTC(2026, 2, day, hour)).toISOString();
const stores: Store[] = [];
let phones = 0;

afterAll(() => {
	for (const store of stores) store.close();
});

async function phoneWith(events: readonly LogEvent[]) {
	const name = `why ${++phones}`;
	const store = await openStore({ name });
	stores.push(store);
	await store.merge({ car, events });
	return { name, keeper: keeperOf(store) };
}

/** Twenty stops to the click, each of two products. */
const long: readonly LogEvent[] = [
	aStart({ at: at(1), gauge: 0.2 }),
	...Array.from({ length: 20 }, (_, k) => [
		aFill({ id: `f${k}`, stop: `s${k}`, at: at(2 + 6 * k), product: e85, litres: 12, place: "North", gauge: 0.25 }),
		aFill({
			id: `e${k}`,
			stop: `s${k}`,
			at: at(2 + 6 * k, 9),
			product: e10,
			litres: 31,
			place: "North",
			toClick: true,
		}),
	]).flat(),
];

test("why() tells of the last stops, and of their entries", async () => {
	const { keeper } = await phoneWith(long);
	const why = await keeper.why(car.id);
	expect(why?.sources[0].source).toMatchObject({ kind: "delivered", fill: { id: "f19" } });
	// Four stops back: the start and sixteen stops lie before.
	expect(why?.from).toBe(33);
	const evidence = await keeper.whyEvidence(car.id, why?.from ?? 0);
	expect(evidence?.worths.length).toBe(8);
	expect(Math.abs((evidence?.width ?? 0) - (why?.width ?? 1))).toBeLessThan(0.05 * (why?.width ?? 0));
	const now = (await keeper.account(car.id)).now?.estimate;
	expect(Math.abs((why?.width ?? 0) - ((now?.high ?? 0) - (now?.low ?? 0)))).toBeLessThan(0.05 * (why?.width ?? 0));
});

test("why() is the same to the last bit on a phone that remembers points of the account and on one that does not", async () => {
	const { name, keeper } = await phoneWith(long);
	const fresh = await keeper.why(car.id);
	const again = await openStore({ name });
	stores.push(again);
	expect(await keeperOf(again).why(car.id)).toEqual(fresh);
	const [first, ...rest] = long;
	const grown = await phoneWith([first, ...rest.slice(0, -1)]);
	await grown.keeper.account(car.id);
	await grown.keeper.append(car.id, rest.slice(-1));
	await grown.keeper.account(car.id);
	expect(await grown.keeper.why(car.id)).toEqual(fresh);
});

test("why() goes further back while old fuel counts", async () => {
	// Little sips on a full tank: each leaves most of what was there.
	const sips = Array.from({ length: 9 }, (_, k) =>
		aFill({ id: `sip ${k}`, stop: `sip ${k}`, at: at(3 + k), product: e10, litres: 3, gauge: 0.9 }),
	);
	const { keeper } = await phoneWith([
		aStart({ at: at(1), contents: { range: [0.09, 0.1] }, gauge: 0.1 }),
		aFill({ id: "big", stop: "big", at: at(2), product: e85, litres: 45 }),
		...sips,
	]);
	const why = await keeper.why(car.id);
	expect(why?.from).toBe(0);
	expect(why?.sources[0].source).toMatchObject({ kind: "delivered", fill: { id: "big" } });
});

test("why() is null while the log says nothing about the tank", async () => {
	expect(await (await phoneWith([])).keeper.why(car.id)).toBeNull();
	expect(await (await phoneWith([aFlash({ at: at(1) })])).keeper.why(car.id)).toBeNull();
});

test("why() tells of a start alone, and of a sample from a pump beside it", async () => {
	const { keeper } = await phoneWith([aStart({ at: at(1) }), aPumpReading({ at: at(2) })]);
	const why = await keeper.why(car.id);
	expect(why?.sources.map(({ source }) => source.kind)).toEqual(["start"]);
	expect(why?.stops).toEqual([]);
	const evidence = await keeper.whyEvidence(car.id, why?.from ?? 0);
	// Nothing of that pump is in the tank.
	for (const { without } of evidence?.worths ?? []) expect(without).toBeCloseTo(evidence?.width ?? 0, 3);
});
