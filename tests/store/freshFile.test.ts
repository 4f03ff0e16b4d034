import "fake-indexeddb/auto";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { openStore, type Store } from "../../src/store/store";
import { aCar, aStart } from "../helpers/logs";

const stores: Store[] = [];
let phones = 0;

async function open(name = `fresh ${++phones}`) {
	const store = await openStore({ name });
	stores.push(store);
	return { store, name };
}

beforeEach(() => void vi.stubGlobal("navigator", { userAgentData: {} }));
afterEach(() => {
	for (const store of stores.splice(0)) store.close();
	vi.restoreAllMocks();
	vi.unstubAllGlobals();
});

/** The deletions of databases that are begun from here on, and those that are done. */
function deletions() {
	const seen = { begun: [] as string[], done: [] as string[] };
	const real = IDBFactory.prototype.deleteDatabase;
	vi.spyOn(IDBFactory.prototype, "deleteDatabase").mockImplementation(function (this: IDBFactory, name) {
		seen.begun.push(name);
		const request = real.call(this, name);
		request.addEventListener("success", () => seen.done.push(name));
		return request;
	});
	return seen;
}

test("In Chromium no write is called done before a fresh file was begun, once for each connection", async () => {
	const seen = deletions();
	const { store, name } = await open();
	await store.saveCar(aCar());
	expect(seen.done).toEqual([`${name}-spare`]);
	await store.append("car", [aStart()]);
	expect(seen.begun).toEqual([`${name}-spare`]);
	expect((await indexedDB.databases()).map((each) => each.name)).not.toContain(`${name}-spare`);
});

test("Other browsers need none", async () => {
	vi.unstubAllGlobals();
	const seen = deletions();
	const { store } = await open();
	await store.saveCar(aCar());
	expect(seen.begun).toEqual([]);
});

test("A browser that can't begin one, or never answers, is not waited for longer than a second", async () => {
	vi.spyOn(IDBFactory.prototype, "deleteDatabase").mockImplementation(() => {
		throw new DOMException("", "UnknownError");
	});
	const first = await open();
	await first.store.saveCar(aCar());
	const request = new (IDBOpenDBRequest as unknown as new () => IDBOpenDBRequest)();
	vi.spyOn(IDBFactory.prototype, "deleteDatabase").mockReturnValue(request);
	const second = await open();
	const began = performance.now();
	await second.store.saveCar(aCar());
	expect(performance.now() - began).toBeGreaterThan(500);
	expect((await second.store.cars()).map(({ id }) => id)).toEqual(["car"]);
});
