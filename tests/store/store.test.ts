import "fake-indexeddb/auto";
import { openDB } from "idb";
import { afterEach, describe, expect, test, vi } from "vitest";
import type { LogEvent } from "../../src/domain/event";
import { DuplicateIdError, openStore, type Store } from "../../src/store/store";
import { aCar, aFill, aFlash, aLevel, aLog, aStart, aVoid } from "../helpers/logs";
import { sentenceOf } from "../helpers/sentences";

const opened: Store[] = [];
let serial = 0;

/** A store of its own, or another connection to the one named. */
async function open(name = `test ${++serial}`): Promise<Store & { name: string }> {
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
	vi.restoreAllMocks();
});

describe("saveCar", () => {
	test("adds a car, and replaces it", async () => {
		const store = await open();
		expect(await store.cars()).toEqual([]);
		await store.saveCar(aCar());
		await store.saveCar(aCar({ id: "other" }));
		await store.saveCar(aCar({ name: "The red one" }));
		expect(await store.cars()).toEqual([aCar({ name: "The red one" }), aCar({ id: "other" })]);
	});

	test("refuses what a backup could not be read with", async () => {
		const store = await open();
		expect(await store.saveCar(aCar({ tank: { capacityL: 0 } })).catch(sentenceOf)).toContain(
			"car.tank.capacityL: must be more than 0 L and at most 2000 L, got 0",
		);
		await store.saveCar(aCar());
		await store.append("car", [aFlash()]);
		expect(await store.saveCar(aCar({ calibrations: [] })).catch(sentenceOf)).toContain(
			'events[0] (id "flash") calibration: must be the id of one of the car\'s calibrations, got "e30"',
		);
		expect(await store.cars()).toEqual([aCar()]);
	});

	test("lets a calibration go that no event names", async () => {
		const store = await openWithCar();
		await store.append("car", [aStart()]);
		await store.saveCar(aCar({ calibrations: [] }));
		expect(await store.cars()).toEqual([aCar({ calibrations: [] })]);
	});
});

describe("append", () => {
	test("keeps events with the car they belong to", async () => {
		const store = await openWithCar();
		await store.saveCar(aCar({ id: "car2" }));
		await store.append("car", [aStart(), aFill()]);
		await store.append("car2", [aFill({ litres: 3 })]);
		expect(await store.events("car")).toEqual([aFill({ after: "start" }), aStart()]);
		expect(await store.events("car2")).toEqual([aFill({ litres: 3 })]);
		expect(await store.countEvents("car")).toBe(2);
		expect(await store.countEvents("ca")).toBe(0);
	});

	test("keeps fields it does not know", async () => {
		const store = await openWithCar();
		await store.append("car", [aFill({ photo: { of: "receipt" } })]);
		expect(await store.events("car")).toEqual([aFill({ photo: { of: "receipt" } })]);
	});

	test("leaves an event that is there already, whatever the order of its fields", async () => {
		const store = await openWithCar();
		await store.append("car", [aFill()]);
		const same = Object.fromEntries(Object.entries(aFill()).reverse()) as unknown as LogEvent;
		await store.append("car", [same, same, aStart()]);
		expect(await store.countEvents("car")).toBe(2);
	});

	test("writes nothing when an id is taken by other contents", async () => {
		const store = await openWithCar();
		await store.append("car", [aFill()]);
		await store.saveDraft("car", "half a fill");
		const clash = store.append("car", [aStart(), aFill({ litres: 20 }), aLevel()], { dropDraft: "car" });
		await expect(clash).rejects.toThrow(DuplicateIdError);
		await expect(clash).rejects.toMatchObject({ of: "event", id: "fill" });
		expect(await store.events("car")).toEqual([aFill()]);
		expect(await store.draft("car")).toBe("half a fill");
	});

	test("writes nothing when the events given contradict each other", async () => {
		const store = await openWithCar();
		await expect(store.append("car", [aStart(), aFill(), aFill({ litres: 1 })])).rejects.toThrow(DuplicateIdError);
		expect(await store.countEvents("car")).toBe(0);
	});

	test("drops the draft that became the events", async () => {
		const store = await openWithCar();
		await store.saveDraft("car/fill", { litres: "15,5" });
		await store.append("car", [aFill()], { dropDraft: "car/fill" });
		expect(await store.draft("car/fill")).toBeUndefined();
		expect(await store.countEvents("car")).toBe(1);
	});

	test("refuses events that are not by the format, of no car, or that name what is not there", async () => {
		const store = await openWithCar();
		expect(await store.append("car", [aStart(), aFill({ litres: NaN })]).catch(sentenceOf)).toContain(
			'events[1] (id "fill") litres: must be more than 0 L and at most 2000 L, got NaN',
		);
		await expect(store.append("gone", [aStart()])).rejects.toThrow('car must be saved before its events, got "gone"');
		expect(await store.append("car", [aVoid()]).catch(sentenceOf)).toContain("must be the id of an event of this log");
		expect(await store.append("car", [aFlash({ calibration: "e60" })]).catch(sentenceOf)).toContain(
			"one of the car's calibrations",
		);
		expect(await store.countEvents("car")).toBe(0);
	});

	test("takes a void of an event given with it, or there before", async () => {
		const store = await openWithCar();
		await store.append("car", [aVoid({ target: "fill" }), aFill()]);
		await store.append("car", [aVoid({ id: "again", target: "void" })]);
		expect(await store.countEvents("car")).toBe(3);
	});

	test("keeps both of two connections' events", async () => {
		const one = await openWithCar();
		const two = await open(one.name);
		await Promise.all([one.append("car", [aStart()]), two.append("car", [aFill()])]);
		expect(await one.events("car")).toEqual(await two.events("car"));
		expect(await one.countEvents("car")).toBe(2);
	});
});

describe("events", () => {
	test("leaves out what a newer version wrote, and unreadable counts it", async () => {
		const store = await openWithCar();
		await store.append("car", [aStart()]);
		const db = await openDB(store.name);
		await db.put("events", { id: "wash", at: "2026-06-01T10:00:00Z", kind: "wash" }, ["car", "wash"]);
		await db.put("events", "not even an object", ["car", "odd"]);
		db.close();
		expect(await store.events("car")).toEqual([aStart()]);
		expect(await store.unreadable("car")).toBe(2);
		expect(await store.countEvents("car")).toBe(3);
		await store.append("car", [aVoid({ target: "wash" })]);
		expect(await store.countEvents("car")).toBe(4);
	});
});

describe("removeCar", () => {
	test("takes the car's events, drafts and checkpoint, and nothing else", async () => {
		const store = await open();
		for (const id of ["car", "car2"]) {
			await store.merge(aLog({ car: aCar({ id }) }));
			await store.saveDraft(id, 1);
			await store.saveDraft(`${id}/fill`, 2);
			await store.saveCheckpoint(id, { upTo: "level" });
		}
		await store.savePreference("units", "gal");
		await store.removeCar("car");
		expect((await store.cars()).map(({ id }) => id)).toEqual(["car2"]);
		expect([await store.countEvents("car"), await store.countEvents("car2")]).toEqual([0, 8]);
		expect([await store.draft("car"), await store.draft("car/fill"), await store.checkpoint("car")]).toEqual([
			undefined,
			undefined,
			undefined,
		]);
		expect([await store.draft("car2"), await store.draft("car2/fill"), await store.checkpoint("car2")]).toEqual([
			1,
			2,
			{ upTo: "level" },
		]);
		expect(await store.preference("units")).toBe("gal");
	});
});

describe("Drafts, preferences and checkpoints", () => {
	test("are kept until they are dropped, and outlive the connection", async () => {
		const store = await open();
		await store.saveDraft("fill", { litres: "15," });
		await store.savePreference("units", { volume: "gal" });
		await store.saveCheckpoint("car", new Float32Array([1, 2]));
		store.close();
		const again = await open(store.name);
		expect(await again.draft("fill")).toEqual({ litres: "15," });
		expect(await again.preference("units")).toEqual({ volume: "gal" });
		expect(await again.checkpoint("car")).toEqual(new Float32Array([1, 2]));
		await again.dropDraft("fill");
		await again.dropCheckpoint("car");
		expect([await again.draft("fill"), await again.checkpoint("car")]).toEqual([undefined, undefined]);
	});
});

describe("Every write", () => {
	test("asks for strict durability, but for checkpoints", async () => {
		const store = await open();
		const transaction = vi.spyOn(IDBDatabase.prototype, "transaction");
		const asked = async (write: Promise<unknown>) => {
			transaction.mockClear();
			await write;
			return transaction.mock.calls
				.filter(([, mode]) => mode === "readwrite")
				.map(([, , options]) => options?.durability);
		};
		expect(await asked(store.saveCar(aCar()))).toEqual(["strict"]);
		expect(await asked(store.append("car", [aStart(), aFill()], { dropDraft: "x" }))).toEqual(["strict"]);
		expect(await asked(store.merge(aLog()))).toEqual(["strict"]);
		expect(await asked(store.saveDraft("x", 1))).toEqual(["strict"]);
		expect(await asked(store.dropDraft("x"))).toEqual(["strict"]);
		expect(await asked(store.savePreference("x", 1))).toEqual(["strict"]);
		expect(await asked(store.saveCheckpoint("car", 1))).toEqual(["relaxed"]);
		expect(await asked(store.dropCheckpoint("car"))).toEqual(["relaxed"]);
		expect(await asked(store.removeCar("car"))).toEqual(["strict"]);
	});

	test("resolves only after its transaction is complete", async () => {
		const store = await openWithCar();
		const order: string[] = [];
		const transaction = IDBDatabase.prototype.transaction;
		vi.spyOn(IDBDatabase.prototype, "transaction").mockImplementation(function (this: IDBDatabase, ...args) {
			const tx = transaction.apply(this, args);
			tx.addEventListener("complete", () => order.push("complete"));
			return tx;
		});
		await store.append("car", [aFill()]).then(() => order.push("resolved"));
		await store.saveDraft("x", 1).then(() => order.push("resolved"));
		expect(order).toEqual(["complete", "resolved", "complete", "resolved"]);
	});
});

describe("subscribe", () => {
	test("hears of changes made here and through other connections, until it stops", async () => {
		const one = await open();
		const two = await open(one.name);
		const heard: [string, string | null][] = [];
		const stop = one.subscribe((carId) => heard.push(["one", carId]));
		two.subscribe((carId) => heard.push(["two", carId]));
		await one.saveCar(aCar());
		await vi.waitFor(() =>
			expect(heard.sort()).toEqual([
				["one", null],
				["two", null],
			]),
		);
		heard.length = 0;
		await two.append("car", [aStart()]);
		await vi.waitFor(() =>
			expect(heard.sort()).toEqual([
				["one", "car"],
				["two", "car"],
			]),
		);
		heard.length = 0;
		stop();
		await two.savePreference("units", "gal");
		await one.merge(aLog());
		await vi.waitFor(() =>
			expect(heard).toEqual([
				["two", null],
				["two", null],
				["two", "car"],
			]),
		);
	});

	test("hears nothing of a write that failed", async () => {
		const store = await openWithCar();
		await store.append("car", [aFill()]);
		const listener = vi.fn();
		store.subscribe(listener);
		await expect(store.append("car", [aFill({ litres: 1 })])).rejects.toThrow();
		await store.events("car");
		expect(listener).not.toHaveBeenCalled();
	});
});
