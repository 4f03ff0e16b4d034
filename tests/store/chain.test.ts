import "fake-indexeddb/auto";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { openDB } from "idb";
import { afterEach, describe, expect, test } from "vitest";
import { replay } from "../../src/domain/estimator/replay";
import type { LogEvent } from "../../src/domain/event";
import { formatLog, parseLog } from "../../src/store/backup";
import { holesIn } from "../../src/store/chain";
import { DuplicateIdError, openStore, type Store } from "../../src/store/store";
import { aCar, aFill, aLevel, aLog, aStart, aVoid } from "../helpers/logs";
import { saidOf } from "../helpers/sentences";

const opened: Store[] = [];
let serial = 0;

async function open(name = `chain ${++serial}`): Promise<Store & { name: string }> {
	const store = await openStore({ name });
	opened.push(store);
	return { ...store, name };
}

async function openWithCar(): Promise<Store & { name: string }> {
	const store = await open();
	await store.saveCar(aCar());
	return store;
}

afterEach(() => {
	for (const store of opened.splice(0)) store.close();
});

/** What each event says it came after. */
async function links(store: Store, carId = "car"): Promise<Record<string, string | undefined>> {
	return Object.fromEntries((await store.events(carId)).map(({ id, after }) => [id, after]));
}

const holes = async (store: Store) => {
	const events = await store.events("car");
	return holesIn(events, new Set(events.map(({ id }) => id)));
};

describe("append", () => {
	test("names in each event the one written before it, whatever their times, and none in the first", async () => {
		const store = await openWithCar();
		await store.append("car", [aLevel(), aStart()]);
		await store.append("car", [aVoid({ target: "level" }), aFill()]);
		expect(await links(store)).toEqual({ level: undefined, start: "level", void: "start", fill: "void" });
	});

	test("keeps one chain a car", async () => {
		const store = await openWithCar();
		await store.saveCar(aCar({ id: "other" }));
		await store.append("car", [aStart()]);
		await store.append("other", [aStart()]);
		await store.append("car", [aFill()]);
		expect(await links(store)).toEqual({ start: undefined, fill: "start" });
		expect(await links(store, "other")).toEqual({ start: undefined });
	});

	test("makes one chain of what two tabs write at once", async () => {
		const one = await openWithCar();
		const two = await open(one.name);
		const write = (store: Store, tab: string) =>
			Array.from({ length: 10 }, (_, i) => store.append("car", [aFill({ id: `${tab}${i}` })]));
		await Promise.all([...write(one, "a"), ...write(two, "b")]);
		const after = Object.values(await links(one));
		expect(after).toHaveLength(20);
		// No two after the same one, and only one after none.
		expect(new Set(after).size).toBe(20);
		expect(await holes(one)).toEqual([]);
	});

	test("leaves the chain alone when the same events come again, as after a save that seemed to fail", async () => {
		const store = await openWithCar();
		await store.append("car", [aStart(), aFill()]);
		const heads = await store.heads();
		await store.append("car", [aStart(), aFill()]);
		expect(await store.heads()).toEqual(heads);
		await store.append("car", [aFill(), aLevel()]);
		expect(await links(store)).toEqual({ start: undefined, fill: "start", level: "fill" });
	});

	test("writes a chain of its own for events that bring an old one, as when a removed car comes back", async () => {
		const store = await openWithCar();
		await store.append("car", [aStart(), aFill(), aLevel()]);
		const events = await store.events("car");
		await store.removeCar("car");
		await store.saveCar(aCar());
		await store.append("car", events);
		await store.append("car", [aVoid()]);
		const after = Object.values(await links(store));
		expect(new Set(after).size).toBe(4);
		expect(await holes(store)).toEqual([]);
	});

	test("begins a chain in a log that an older version wrote, and counts what was there", async () => {
		const name = `chain ${++serial}`;
		const old = await openDB(name, 1, {
			upgrade(db) {
				db.createObjectStore("cars", { keyPath: "id" });
				for (const store of ["events", "drafts", "preferences", "checkpoints"]) db.createObjectStore(store);
			},
		});
		await old.put("cars", aCar());
		for (const event of [aStart(), aFill()]) await old.put("events", event, ["car", event.id]);
		old.close();
		const store = await open(name);
		expect(await store.events("car")).toEqual([aFill(), aStart()]);
		await store.append("car", [aLevel()]);
		expect(await links(store)).toEqual({ start: undefined, fill: undefined, level: undefined });
		expect((await store.heads()).car).toMatchObject({ count: 3, last: "level" });
	});
});

describe("merge", () => {
	test("keeps the chains of both phones, and each goes on with its own", async () => {
		const [mine, yours] = [await openWithCar(), await openWithCar()];
		await mine.append("car", [aStart(), aFill()]);
		await yours.append("car", [aLevel({ id: "y1" }), aLevel({ id: "y2" })]);
		const [car] = await mine.cars();
		await mine.merge({ car, events: await yours.events("car") });
		await yours.merge({ car, events: await mine.events("car") });
		await mine.append("car", [aLevel({ id: "m" })]);
		await yours.append("car", [aLevel({ id: "y3" })]);
		expect(await links(mine)).toEqual({ start: undefined, fill: "start", y1: undefined, y2: "y1", m: "fill" });
		expect(await links(yours)).toEqual({ start: undefined, fill: "start", y1: undefined, y2: "y1", y3: "y2" });
	});

	test("begins a chain on a device that was restored from a backup", async () => {
		const old = await openWithCar();
		await old.append("car", [aStart(), aFill()]);
		const fresh = await open();
		await fresh.merge({ car: aCar(), events: await old.events("car") });
		await fresh.append("car", [aLevel()]);
		expect(await links(fresh)).toEqual({ start: undefined, fill: "start", level: undefined });
	});

	test("takes the same event with another place in a chain for the same, and keeps its own", async () => {
		const store = await openWithCar();
		await store.append("car", [aStart(), aFill()]);
		for (const after of [undefined, "elsewhere"]) {
			const again = aFill(after === undefined ? {} : { after });
			expect(await store.merge({ car: aCar(), events: [again] })).toMatchObject({ added: 0, known: 1 });
		}
		expect(await links(store)).toEqual({ start: undefined, fill: "start" });
		const other = store.merge({ car: aCar(), events: [aFill({ after: "start", litres: 1 })] });
		await expect(other).rejects.toThrow(DuplicateIdError);
	});

	test("tells how many entries a file names and lacks", async () => {
		const store = await openWithCar();
		const events = [aFill({ after: "gone" }), aLevel({ after: "fill" })];
		expect(await store.merge({ car: aCar(), events })).toMatchObject({ added: 2, lacking: 1 });
		const later = await store.merge({ car: aCar(), events: [aStart({ id: "gone" })] });
		expect(later).toEqual({ added: 1, known: 0, carIsNew: false, decided: [] });
		expect((await store.heads()).car.lacks).toBeUndefined();
	});
});

test("after travels in the file, is any event's, and must be an id", () => {
	const chain = aLog().events.map((event, i, all): LogEvent => (i === 0 ? event : { ...event, after: all[i - 1].id }));
	const log = aLog({ events: chain });
	const again = parseLog(formatLog(log));
	expect(again).toMatchObject({ ok: true });
	if (again.ok) expect([...again.value.events].sort(byId)).toEqual([...chain].sort(byId));
	const wrong = parseLog(formatLog(aLog({ events: [aFill({ after: 3 })] })));
	expect(wrong).toMatchObject({ ok: false, error: { where: { path: 'events[0] (id "fill") after' } } });
});

test("after changes no number", () => {
	const text = readFileSync(join(import.meta.dirname, "../fixtures/log-v1-chain.json"), "utf8");
	const log = parseLog(text);
	if (!log.ok) throw new Error(saidOf(log.error));
	expect(log.value.events.some(({ after }) => after !== undefined)).toBe(true);
	const bare = log.value.events.map(({ after: _, ...event }) => event as LogEvent);
	const figures = (events: readonly LogEvent[]) => [...replay(log.value.car, events)].map(({ estimate }) => estimate);
	expect(figures(log.value.events)).toEqual(figures(bare));
});

function byId(a: LogEvent, b: LogEvent): number {
	return a.id < b.id ? -1 : 1;
}
