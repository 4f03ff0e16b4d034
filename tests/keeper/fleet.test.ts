import "fake-indexeddb/auto";
import { afterEach, expect, test, vi } from "vitest";
import * as absorbing from "../../src/domain/estimator/absorb";
import { aboutOf, checkedKey } from "../../src/keeper/glance";
import { keeperOf } from "../../src/keeper/keeper";
import { formatLog } from "../../src/store/backup";
import { openStore, type Store } from "../../src/store/store";
import type { Log } from "../../src/store/wire";
import { aFill, aStart, aTankReading } from "../helpers/logs";
import { measuredCar, reportText } from "../helpers/reports";

const now = Date.parse("2026-06-10T12:00:00Z");
const stores: Store[] = [];
let phones = 0;

afterEach(() => {
	for (const store of stores.splice(0)) store.close();
	vi.restoreAllMocks();
});

async function phoneWith(...logs: readonly Log[]) {
	const store = await openStore({ name: `fleet ${++phones}` });
	stores.push(store);
	for (const log of logs) await store.merge(log);
	return { store, keeper: keeperOf(store) };
}

const inside = measuredCar("a", "Inside", 0.3, 2, now);
const rich = measuredCar("b", "Rich", 0.45, 20, now);
/** What was said of the start and the reading do not go together. */
const contradictory: Log = {
	car: { ...inside.car, id: "c", name: "Contradictory" },
	events: [
		aStart({ contents: { value: 0.1, sd: 0.01 } }),
		aTankReading({ value: 0.3, sd: 0.02, at: "2026-06-01T18:00:00+02:00" }),
	],
};

test("all cars are read from what was kept, and none is reckoned for the list", async () => {
	const { store, keeper } = await phoneWith(inside, rich);
	const before = await keeper.fleet();
	expect(before.map(({ current, figures }) => [current, figures])).toEqual([
		[false, null],
		[false, null],
	]);
	await keeper.catchUp("a");
	await keeper.catchUp("b");
	const reckoned = vi.spyOn(store, "events");
	const after = await keeperOf(store).fleet();
	expect(reckoned).not.toHaveBeenCalled();
	expect(after.map(({ name, current, lastAt }) => [name, current, lastAt])).toEqual([
		["Inside", true, "2026-06-08T12:00:00.000Z"],
		["Rich", true, "2026-05-21T12:00:00.000Z"],
	]);
	expect(after[1]?.figures?.above).toBeGreaterThan(0.99);
	const own = (await keeper.account("b")).now;
	expect(after[1]?.figures).toEqual(
		expect.objectContaining({ median: own?.estimate.median, high: own?.estimate.high }),
	);
});

test("an entry that comes in makes its car old, and no other; what has not changed is not reckoned again", async () => {
	const { store, keeper } = await phoneWith(inside, rich);
	await keeper.catchUp("a");
	await keeper.catchUp("b");
	await store.append("b", [aFill({ id: "new", at: "2026-06-09T12:00:00Z", litres: 30 })]);
	expect((await keeper.fleet()).map(({ current }) => current)).toEqual([true, false]);
	const read = vi.spyOn(store, "events");
	await keeper.catchUp("a");
	expect(read).not.toHaveBeenCalled();
	await keeper.catchUp("b");
	expect((await keeper.fleet())[1]).toMatchObject({ current: true, lastAt: "2026-06-09T12:00:00Z" });
});

test("catching up with one car leaves the open account of another alone", async () => {
	const { store, keeper } = await phoneWith(inside, rich);
	const view = await keeper.account("a");
	await keeper.catchUp("b");
	const read = vi.spyOn(store, "events");
	expect(await keeper.account("a")).toBe(view);
	expect(read).not.toHaveBeenCalled();
});

test("a contradiction is told, until somebody has gone through these very entries", async () => {
	const { store, keeper } = await phoneWith(contradictory);
	// Reckoned for the screen alone, it is not weighed yet: nothing is said rather than half of it.
	await keeper.account("c");
	expect((await keeper.fleet())[0]).toMatchObject({ current: false, figures: null });
	await keeper.catchUp("c");
	expect((await keeper.fleet())[0]).toMatchObject({ current: true, grave: true, checked: false });
	const found = await keeper.contradiction("c");
	await keeper.saveDraft(checkedKey("c"), aboutOf(found?.entries ?? []));
	expect((await keeper.fleet())[0]).toMatchObject({ grave: true, checked: true });
	await store.append("c", [aTankReading({ id: "again", value: 0.3, sd: 0.02, at: "2026-06-02T18:00:00+02:00" })]);
	await keeper.catchUp("c");
	expect((await keeper.fleet())[0]).toMatchObject({ current: true, checked: false });
});

test("a disk that takes nothing more stops no car from being reckoned and watched", async () => {
	const { store, keeper } = await phoneWith(rich, contradictory);
	vi.spyOn(store, "saveCheckpoint").mockRejectedValue(new DOMException("full", "QuotaExceededError"));
	await keeper.catchUp("b");
	await keeper.catchUp("c");
	expect(await keeper.fleet()).toEqual([
		expect.objectContaining({
			carId: "b",
			current: true,
			figures: expect.objectContaining({ median: expect.any(Number) }),
		}),
		expect.objectContaining({ carId: "c", current: true, grave: true }),
	]);
	await store.append("b", [aFill({ id: "new", at: "2026-06-09T12:00:00Z", litres: 30 })]);
	expect((await keeper.fleet())[0]).toMatchObject({ current: false, figures: null });
});

test("a car that was removed, or has no entries, is no obstacle", async () => {
	const { keeper } = await phoneWith({ car: inside.car, events: [] });
	await keeper.catchUp("gone");
	await keeper.catchUp("a");
	expect(await keeper.fleet()).toEqual([expect.objectContaining({ current: true, figures: null, lastAt: null })]);
});

test("a report is read as it says and checked by its entries; nothing of it is kept", async () => {
	const { store, keeper } = await phoneWith(inside);
	const lie = reportText(rich, new Date(now).toISOString(), {
		figures: { median: 0.3, low: 0.28, high: 0.32, below: 0, above: 0 } as never,
	});
	const read = await keeper.readReport(lie);
	expect(read).toMatchObject({
		ok: true,
		value: { glance: { name: "Rich", figures: { median: 0.3 } }, here: false, entries: 3, made: { app: "0.9.0" } },
	});
	const found = await keeper.checkReport(lie);
	expect(found?.figures?.median).toBeCloseTo(0.45, 1);
	expect(found?.figures?.above).toBeGreaterThan(0.99);
	expect((await store.cars()).map(({ id }) => id)).toEqual(["a"]);
	expect(await store.checkpoint("b/shown")).toBeUndefined();
	expect(await store.checkpoint("b/points")).toBeUndefined();
	expect(await keeper.readReport(reportText(inside, new Date(now).toISOString()))).toMatchObject({
		value: { here: true },
	});
});

test("a report with entries beyond all measure is read, and not reckoned", async () => {
	const { keeper } = await phoneWith();
	const events = Array.from({ length: 3_001 }, (_, i) =>
		aTankReading({ id: `r${i}`, at: new Date(now - i * 60_000).toISOString() }),
	);
	const text = formatLog({ car: inside.car, events });
	const absorb = vi.spyOn(absorbing, "initialBelief");
	expect(await keeper.readReport(text)).toMatchObject({ ok: true, value: { made: null, glance: { figures: null } } });
	expect(await keeper.checkReport(text)).toBeNull();
	expect(absorb).not.toHaveBeenCalled();
	expect(await keeper.checkReport("{")).toBeNull();
});
