import "fake-indexeddb/auto";
import { forceCloseDatabase } from "fake-indexeddb";
import { deleteDB, openDB } from "idb";
import { afterEach, describe, expect, test, vi } from "vitest";
import { openStore, StorageLostError, type Store } from "../../src/store/store";
import { aCar, aFill, aStart } from "../helpers/logs";
import { sentenceOf } from "../helpers/sentences";

const opened: Store[] = [];
let serial = 0;

async function open(options: Parameters<typeof openStore>[0] = {}): Promise<Store & { name: string }> {
	const name = options.name ?? `lost ${++serial}`;
	const store = await openStore({ ...options, name });
	opened.push(store);
	return { ...store, name };
}

afterEach(() => {
	for (const store of opened.splice(0)) store.close();
	vi.restoreAllMocks();
	vi.useRealTimers();
	vi.unstubAllGlobals();
});

const transaction = IDBDatabase.prototype.transaction;

/** The next transactions fail as named; then all is as before. */
function failing(times: number, name: string) {
	let left = times;
	return vi.spyOn(IDBDatabase.prototype, "transaction").mockImplementation(function (this: IDBDatabase, ...args) {
		if (left-- > 0) throw new DOMException("Connection to Indexed Database server lost", name);
		return transaction.apply(this, args);
	});
}

/** The raw connection of a store. */
async function connectionOf(store: Store): Promise<IDBDatabase> {
	const spy = vi.spyOn(IDBDatabase.prototype, "transaction");
	await store.cars();
	const [db] = spy.mock.contexts;
	spy.mockRestore();
	return db as IDBDatabase;
}

/** A request to open that nobody answers but the test. */
function unanswered() {
	const request = new (
		IDBOpenDBRequest as unknown as new () => { readyState: string; result: unknown } & EventTarget
	)();
	vi.spyOn(IDBFactory.prototype, "open").mockReturnValueOnce(request as unknown as IDBOpenDBRequest);
	return request;
}

describe("A store whose connection is lost", () => {
	test.each(["InvalidStateError", "UnknownError"])("opens another and does the work once more on %s", async (name) => {
		const store = await open();
		await store.saveCar(aCar());
		const spy = failing(1, name);
		await store.append("car", [aStart()]);
		expect(spy.mock.contexts[0]).not.toBe(spy.mock.contexts[1]);
		expect(await store.events("car")).toEqual([aStart()]);
	});

	test("goes on after the browser closed the connection under it", async () => {
		const store = await open();
		await store.saveCar(aCar());
		(await connectionOf(store)).close();
		expect(await store.cars()).toEqual([aCar()]);
	});

	test("goes on after the browser has said that it closed", async () => {
		const store = await open();
		const before = await connectionOf(store);
		forceCloseDatabase(before as never);
		await store.saveCar(aCar());
		expect(await connectionOf(store)).not.toBe(before);
		expect(await store.cars()).toEqual([aCar()]);
	});

	test("does once more what the loss aborted in the middle, and writes it once", async () => {
		const store = await open();
		await store.saveCar(aCar());
		let first = true;
		vi.spyOn(IDBDatabase.prototype, "transaction").mockImplementation(function (this: IDBDatabase, ...args) {
			const tx = transaction.apply(this, args);
			if (first) queueMicrotask(() => tx.abort());
			first = false;
			return tx;
		});
		await store.append("car", [aStart(), aFill()]);
		expect(await store.countEvents("car")).toBe(2);
	});

	test("throws StorageLostError with a clear sentence when the second try fails too, and recovers later", async () => {
		const store = await open();
		await store.saveCar(aCar());
		failing(2, "UnknownError");
		const lost = store.append("car", [aStart()]);
		await expect(lost).rejects.toThrow(StorageLostError);
		await expect(lost).rejects.toMatchObject({ reason: "lost" });
		expect(await lost.catch(sentenceOf)).toContain("reload the app");
		await store.append("car", [aStart()]);
		expect(await store.countEvents("car")).toBe(1);
	});

	test("opens only one new connection for many that wait", async () => {
		const store = await open();
		(await connectionOf(store)).close();
		const opening = vi.spyOn(IDBFactory.prototype, "open");
		await Promise.all([store.cars(), store.saveCar(aCar()), store.preference("units"), store.countEvents("car")]);
		expect(opening).toHaveBeenCalledTimes(1);
	});

	test("does not try again when there is no room", async () => {
		const store = await open();
		const spy = failing(1, "QuotaExceededError");
		await expect(store.saveCar(aCar())).rejects.toMatchObject({ name: "StorageLostError", reason: "full" });
		expect(spy).toHaveBeenCalledTimes(1);
	});

	test("passes on errors that are no loss", async () => {
		const store = await open();
		await expect(store.saveDraft("fill", () => {})).rejects.toMatchObject({ name: "DataCloneError" });
	});
});

describe("A store beside other tabs", () => {
	test("lets a newer version upgrade, says so, and asks to reload from then on", async () => {
		const onStale = vi.fn();
		const store = await open({ onStale });
		const newer = await openDB(store.name, 99, { blocked: () => expect.fail("was blocked") });
		expect(onStale).toHaveBeenCalledTimes(1);
		await expect(store.cars()).rejects.toMatchObject({ name: "StorageLostError", reason: "newer" });
		newer.close();
	});

	test("lets the database be deleted", async () => {
		const onStale = vi.fn();
		const store = await open({ onStale });
		await store.saveCar(aCar());
		await deleteDB(store.name, { blocked: () => expect.fail("was blocked") });
		expect(onStale).toHaveBeenCalledTimes(1);
		expect(await store.cars()).toEqual([]);
	});

	test("waits while the database is being deleted", async () => {
		const name = `lost ${++serial}`;
		const stubborn = await openDB(name, 1);
		const deleting = deleteDB(name);
		const waiting = open({ name });
		await new Promise((resolve) => setTimeout(resolve, 20));
		stubborn.close();
		await deleting;
		expect(await (await waiting).cars()).toEqual([]);
	});
});

describe("openStore", () => {
	test("refuses data of a newer version that keeps it elsewhere", async () => {
		const name = `lost ${++serial}`;
		(await openDB(name, 99)).close();
		await expect(openStore({ name })).rejects.toMatchObject({ name: "StorageLostError", reason: "newer" });
		expect((await openDB(name)).version).toBe(99);
	});

	test("reads and writes what a newer version has made and added to, which was taken back", async () => {
		const { name, ...before } = await open();
		await before.saveCar(aCar());
		await before.append("car", [aStart()]);
		before.close();
		const newer = await openDB(name, 99, { upgrade: (db) => void db.createObjectStore("fleets") });
		await newer.put("fleets", "kept", 1);
		newer.close();
		const store = await open({ name });
		await store.append("car", [aFill()]);
		expect((await store.events("car")).map(({ id }) => id)).toEqual(["fill", "start"]);
		store.close();
		const again = await openDB(name, 99);
		expect(await again.get("fleets", 1)).toBe("kept");
		again.close();
	});

	test("says where the browser keeps nothing", async () => {
		vi.stubGlobal("indexedDB", undefined);
		await expect(openStore()).rejects.toMatchObject({ name: "StorageLostError", reason: "refused" });
	});

	test("settles when the browser never answers, and lets go if it answers later", async () => {
		vi.useFakeTimers();
		const request = unanswered();
		const opening = openStore().catch((error: unknown) => error);
		await vi.advanceTimersByTimeAsync(3_000);
		expect(await opening).toMatchObject({ name: "StorageLostError", reason: "slow" });
		await expectToLetGo(request);
	});

	test("settles when an older version holds the database, and lets go if that gives way later", async () => {
		const request = unanswered();
		const opening = openStore().catch((error: unknown) => error);
		request.dispatchEvent(new IDBVersionChangeEvent("blocked"));
		expect(await opening).toMatchObject({ name: "StorageLostError", reason: "blocked" });
		await expectToLetGo(request);
	});

	test("tells of a database that the browser found damaged and emptied", async () => {
		const original = IDBFactory.prototype.open;
		const onWiped = vi.fn();
		await open({ onWiped });
		expect(onWiped).not.toHaveBeenCalled();
		vi.spyOn(IDBFactory.prototype, "open").mockImplementation(function (this: IDBFactory, ...args) {
			const request = original.apply(this, args);
			request.addEventListener("upgradeneeded", (event) => Object.assign(event, { dataLoss: "total" }));
			return request;
		});
		await open({ onWiped });
		expect(onWiped).toHaveBeenCalledTimes(1);
	});
});

async function expectToLetGo(request: { readyState: string; result: unknown } & EventTarget): Promise<void> {
	const late = { close: vi.fn(), addEventListener: () => {} };
	Object.assign(request, { readyState: "done", result: late });
	request.dispatchEvent(new IDBVersionChangeEvent("success"));
	await vi.waitFor(() => expect(late.close).toHaveBeenCalledTimes(1));
}

test("A closed store refuses everything", async () => {
	const store = await open();
	store.close();
	await expect(store.cars()).rejects.toMatchObject({ name: "StorageLostError", reason: "closed" });
});
