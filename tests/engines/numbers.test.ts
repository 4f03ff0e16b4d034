/** The same log shows the same numbers in every engine, and its belief is the same to the last bit. */
import { cpSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, expect, inject, test } from "vitest";
import { formatLog } from "../../src/store/backup";
import { benchCar, longLog } from "../bench/longLog";
import { engines, openWorld, type World } from "./world";

/** Ten weeks of stops, and a short log with an entry of every kind. */
const logs = {
	long: (path: string) =>
		writeFileSync(path, formatLog({ car: benchCar, events: longLog(20, Date.parse("2026-05-01")) })),
	every: (path: string) => cpSync(join(import.meta.dirname, "../fixtures/log-v1.json"), path),
};

interface Told {
	/** Texts of the screens. */
	readonly tank: string;
	readonly log: string;
	/** Digests of the stored points of the account, which hold the belief's numbers in full. */
	readonly points: Readonly<Record<string, string>>;
}

const told = new Map<string, Told[]>();
let world: World | undefined;
afterAll(() => world?.close());

test.each(engines)("$name takes in the logs and shows them", async (maker) => {
	world = await openWorld(maker, inject("dist"));
	const { engine, person, site, folder } = world;
	const found: Told[] = [];
	for (const [name, write] of Object.entries(logs)) {
		const file = join(folder, `${name}.json`);
		write(file);
		await engine.go(`${site.origin}/#/setup`);
		await person.see("heading", /^Been here before/);
		await engine.choose(file);
		await person.see("heading", /^Boost/);
		await person.tab("Log");
		await person.see("region", "Ethanol content over time");
		await person.tap("button", "All");
		const log = await engine.run(readLog);
		await person.tab("Tank");
		const tank = await person.see("region", "Verdict");
		found.push({ tank, log, points: await engine.run(readPoints) });
	}
	told.set(maker.name, found);
	expect(await engine.errors()).toEqual([]);
	await world.close();
	world = undefined;
});

test("all engines show the same, to the last digit", () => {
	const [first, ...others] = engines.map(({ name }) => told.get(name)?.map(({ tank, log }) => ({ tank, log })));
	// More than a screen that is still empty would show.
	expect(first?.[0].log.match(/9 in 10: \d+–\d+\s%/g)?.length).toBeGreaterThan(19);
	expect(first?.[1].log.match(/9 in 10: \d+–\d+\s%/g)?.length).toBeGreaterThan(1);
	for (const other of others) expect(other).toEqual(first);
});

test("all engines reckon the same, to the last bit", () => {
	const [first, ...others] = engines.map(({ name }) =>
		Object.assign({}, ...(told.get(name) ?? []).map(({ points }) => points)),
	);
	for (const other of others) {
		// Which points are stored yet is a matter of time.
		const both = Object.keys(first).filter((key) => key in other);
		expect(both.length).toBeGreaterThan(1);
		expect(both.map((key) => [key, other[key]])).toEqual(both.map((key) => [key, first[key]]));
	}
});

/** Runs in the page. The chart is left out: its marks hang on the width of the window. */
function readLog(): string {
	return [...document.querySelectorAll("main table, main .month")].map(({ textContent }) => textContent).join("\n");
}

/** Runs in the page. */
async function readPoints(): Promise<Record<string, string>> {
	const answer = <Value>(request: IDBRequest<Value>) =>
		new Promise<Value>((done, fail) => {
			request.onsuccess = () => done(request.result);
			request.onerror = () => fail(request.error);
		});
	const plain = (_key: string, part: unknown): unknown => {
		if (part instanceof Map || part instanceof Set) return [...part];
		return ArrayBuffer.isView(part) ? [...(part as unknown as Iterable<number>)] : part;
	};
	const db = await answer(indexedDB.open("heeltap"));
	const store = db.transaction("checkpoints").objectStore("checkpoints");
	const [keys, values] = await Promise.all([answer(store.getAllKeys()), answer(store.getAll())]);
	db.close();
	const digests: Record<string, string> = {};
	for (const [i, key] of keys.entries()) {
		if (!String(key).includes("/point/")) continue;
		const position = values[i].account.position;
		const bytes = new TextEncoder().encode(JSON.stringify(values[i], plain));
		const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", bytes));
		digests[`${key} at ${position}`] = [...digest].map((byte) => byte.toString(16).padStart(2, "0")).join("");
	}
	return digests;
}
