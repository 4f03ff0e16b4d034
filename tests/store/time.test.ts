/** What clocks do to a log: time zones, the hour that comes twice, a phone that lost its date. */
import "fake-indexeddb/auto";
import { afterEach, expect, test } from "vitest";
import { isoWithOffset } from "../../src/app/app";
import { keeperOf } from "../../src/keeper/keeper";
import { openStore, type Store } from "../../src/store/store";
import { aCar, aFill, aLevel, aStart } from "../helpers/logs";

const opened: Store[] = [];
const zone = process.env.TZ;

afterEach(() => {
	for (const store of opened.splice(0)) store.close();
	if (zone === undefined) delete process.env.TZ;
	else process.env.TZ = zone;
});

let serial = 0;
async function openWithCar(): Promise<Store> {
	const store = await openStore({ name: `time ${++serial}` });
	opened.push(store);
	await store.saveCar(aCar());
	return store;
}

const inOrder = async (store: Store) => (await keeperOf(store).events("car")).map(({ id, at }) => [id, at]);

test("Entries of the hour that comes twice are in the order in which they happened, and keep the time as it was read", async () => {
	process.env.TZ = "Europe/Berlin";
	const [first, second] = ["2025-10-26T00:40:00Z", "2025-10-26T01:20:00Z"].map((at) => isoWithOffset(Date.parse(at)));
	expect([first, second]).toEqual(["2025-10-26T02:40:00+02:00", "2025-10-26T02:20:00+01:00"]);
	const store = await openWithCar();
	await store.append("car", [aFill({ id: "b", at: second })]);
	await store.append("car", [aFill({ id: "a", at: first })]);
	expect(await inOrder(store)).toEqual([
		["a", first],
		["b", second],
	]);
});

test("Entries of two time zones are in order by the instant, not by the wall clock", async () => {
	const store = await openWithCar();
	const west = "2026-06-01T09:00:00-07:00";
	const east = "2026-06-01T17:30:00+02:00";
	await store.append("car", [aLevel({ at: west }), aStart({ at: east })]);
	expect(await inOrder(store)).toEqual([
		["start", east],
		["level", west],
	]);
});

test("An entry by a clock that was set back by years is kept, in its place by its time, and last in the chain", async () => {
	const store = await openWithCar();
	await store.append("car", [aStart(), aLevel()]);
	await store.append("car", [aFill({ at: "2019-01-01T00:00:00Z" })]);
	expect((await inOrder(store)).map(([id]) => id)).toEqual(["fill", "start", "level"]);
	expect((await store.heads()).car).toMatchObject({ count: 3, last: "fill" });
	expect(await keeperOf(store).check({})).toBeNull();
});
