import "fake-indexeddb/auto";
import { openDB } from "idb";
import { afterEach, describe, expect, test, vi } from "vitest";
import { StorageLostError } from "../../src/store/errors";
import { soonMs, within } from "../../src/store/patience";
import { DuplicateIdError, openStore, type Store } from "../../src/store/store";
import { aCar, aFill, aLevel, aStart } from "../helpers/logs";
import { sentenceOf } from "../helpers/sentences";

const opened: Store[] = [];
let serial = 0;

async function openWithCar(): Promise<Store & { name: string }> {
	const name = `faults ${++serial}`;
	const store = await openStore({ name });
	opened.push(store);
	await store.saveCar(aCar());
	await store.append("car", [aStart()]);
	return { ...store, name };
}

afterEach(() => {
	for (const store of opened.splice(0)) store.close();
	vi.restoreAllMocks();
	vi.useRealTimers();
});

const transaction = IDBDatabase.prototype.transaction;

/** Lets a test meddle with the next writing transactions. */
function meddling(times: number, meddle: (tx: IDBTransaction) => void) {
	let left = times;
	return vi.spyOn(IDBDatabase.prototype, "transaction").mockImplementation(function (this: IDBDatabase, ...args) {
		const tx = transaction.apply(this, args);
		if (args[1] === "readwrite" && left-- > 0) meddle(tx);
		return tx;
	});
}

/** The browser gives up a transaction for a reason of its own. */
function failsWith(name: string) {
	return (tx: IDBTransaction) => {
		Object.defineProperty(tx, "error", { get: () => new DOMException("Internal error committing transaction.", name) });
		queueMicrotask(() => tx.abort());
	};
}

test("Every reason has a sentence of its own, which says what to do", async () => {
	const reasons = ["lost", "slow", "unwritten", "full", "blocked", "newer", "refused", "closed"] as const;
	const sentences = await Promise.all(reasons.map((reason) => sentenceOf(new StorageLostError(reason))));
	expect(new Set(sentences).size).toBe(reasons.length);
	for (const sentence of sentences) expect(sentence).toMatch(/: .*(reload|try again|close|leave)/);
});

describe("A store on a full device", () => {
	test.each([
		["QuotaExceededError", "full"],
		["UnknownError", "unwritten"],
	] as const)("says on %s that nothing was saved, and saves once there is room", async (name, reason) => {
		const store = await openWithCar();
		meddling(2, failsWith(name));
		const failed = store.append("car", [aFill(), aLevel()]);
		await expect(failed).rejects.toMatchObject({ name: "StorageLostError", reason });
		expect(await failed.catch(sentenceOf)).toContain("nothing was saved");
		vi.restoreAllMocks();
		expect(await store.events("car")).toEqual([aStart()]);
		await store.append("car", [aFill(), aLevel()]);
		expect(await store.countEvents("car")).toBe(3);
		expect((await store.heads()).car).toMatchObject({ count: 3, last: "level" });
	});

	test("tries once more on a new connection before it gives an UnknownError up: a dead connection says the same", async () => {
		const store = await openWithCar();
		const spy = meddling(1, failsWith("UnknownError"));
		await store.append("car", [aFill()]);
		expect(spy.mock.contexts[0]).not.toBe(spy.mock.contexts[1]);
		expect(await store.countEvents("car")).toBe(2);
	});
});

describe("A write that hangs", () => {
	const onlyTimers = () => vi.useFakeTimers({ toFake: ["setTimeout", "clearTimeout"] });

	/** Another tab that writes and does not come to an end until it is let. */
	async function aBusyTab(name: string): Promise<() => Promise<void>> {
		const db = await openDB(name);
		const tx = db.transaction(["events", "heads", "cars", "drafts"], "readwrite");
		let busy = true;
		const working = (async () => {
			while (busy) await tx.objectStore("events").count();
			await tx.done;
			db.close();
		})();
		return async () => {
			busy = false;
			await working;
		};
	}

	test("settles within three seconds, is called off, and can be done again", async () => {
		const store = await openWithCar();
		await store.saveDraft("car/fill", "15.5");
		const release = await aBusyTab(store.name);
		onlyTimers();
		const hanging = store.append("car", [aFill()], { dropDraft: "car/fill" }).catch((error: unknown) => error);
		await vi.waitFor(() => expect(vi.getTimerCount()).toBeGreaterThan(0));
		await vi.advanceTimersByTimeAsync(3_000);
		expect(await hanging).toMatchObject({ name: "StorageLostError", reason: "slow" });
		vi.useRealTimers();
		await release();
		expect(await store.events("car")).toEqual([aStart()]);
		expect(await store.draft("car/fill")).toBe("15.5");
		await store.append("car", [aFill()], { dropDraft: "car/fill" });
		expect(await store.countEvents("car")).toBe(2);
		expect(await store.draft("car/fill")).toBeUndefined();
	});

	test("is told of when it succeeds late, and is not written twice", async () => {
		const store = await openWithCar();
		const heard = vi.fn();
		store.subscribe(heard);
		const release = await aBusyTab(store.name);
		// Too late to be called off: it is being committed.
		meddling(1, (tx) => {
			tx.abort = () => {
				throw new DOMException("committing", "InvalidStateError");
			};
		});
		onlyTimers();
		const hanging = store.append("car", [aFill(), aLevel()]).catch((error: unknown) => error);
		await vi.waitFor(() => expect(vi.getTimerCount()).toBeGreaterThan(0));
		await vi.advanceTimersByTimeAsync(3_000);
		expect(await hanging).toMatchObject({ reason: "slow" });
		vi.useRealTimers();
		expect(heard).not.toHaveBeenCalled();
		await release();
		await vi.waitFor(() => expect(heard).toHaveBeenCalledWith("car"));
		await store.append("car", [aFill(), aLevel()]);
		expect((await store.events("car")).map(({ id, after }) => [id, after])).toEqual([
			["fill", "start"],
			["level", "fill"],
			["start", undefined],
		]);
		expect((await store.heads()).car).toMatchObject({ count: 3, last: "level" });
		// Typed otherwise in between, it must not be lost without a word.
		const changed = store.append("car", [aFill({ litres: 20 })]);
		await expect(changed).rejects.toThrow(DuplicateIdError);
		expect(await changed.catch(sentenceOf)).toContain("look at the log, and correct it there");
	});

	test("is no failure where the answer comes in right after the time was up, as on a busy thread", async () => {
		vi.useFakeTimers();
		let answer: (value: string) => void = () => {};
		const work = new Promise<string>((done) => {
			answer = done;
		});
		const waiting = within(work, soonMs);
		await vi.advanceTimersByTimeAsync(soonMs - 100);
		answer("saved");
		expect(await waiting).toBe("saved");
		expect(vi.getTimerCount()).toBe(0);
	});
});

describe("An old tab that holds up an upgrade", () => {
	const old = (name: string, onVersionChange: (db: IDBDatabase) => void) =>
		openDB(name, 1, {
			upgrade(db) {
				db.createObjectStore("cars", { keyPath: "id" });
				for (const store of ["events", "drafts", "preferences", "checkpoints"]) db.createObjectStore(store);
			},
			blocking: (_version, _wanted, event) => onVersionChange(event.target as IDBDatabase),
		});

	test("is waited for a moment, as it may just be writing", async () => {
		const name = `faults ${++serial}`;
		const tab = await old(name, (db) => setTimeout(() => db.close(), 50));
		await tab.put("cars", aCar());
		const store = await openStore({ name });
		opened.push(store);
		expect(await store.cars()).toEqual([aCar()]);
	});

	test("is named if it does not let go, and all works once it has", async () => {
		const name = `faults ${++serial}`;
		const tab = await old(name, () => {});
		await tab.put("cars", aCar());
		const blocked = openStore({ name });
		await expect(blocked).rejects.toMatchObject({ reason: "blocked" });
		expect(await blocked.catch(sentenceOf)).toContain("close the other tabs");
		tab.close();
		const store = await openStore({ name });
		opened.push(store);
		expect(await store.cars()).toEqual([aCar()]);
	});
});

test("cars that only a newer version can read are no empty phone", async () => {
	const store = await openWithCar();
	const db = await openDB(store.name);
	await db.put("cars", { id: "car", name: "The grey one", tanks: [] });
	db.close();
	await expect(store.cars()).rejects.toMatchObject({ reason: "newer" });
	expect(await store.countEvents("car")).toBe(1);
});
