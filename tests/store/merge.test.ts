import "fake-indexeddb/auto";
import fc from "fast-check";
import { afterEach, describe, expect, test } from "vitest";
import { formatLog, type Log } from "../../src/store/backup";
import { DuplicateIdError, openStore, type Store } from "../../src/store/store";
import { aCalibration, aCar, aFill, aLevel, aLog, aStart, logs } from "../helpers/logs";

const opened: Store[] = [];
let serial = 0;

async function open(): Promise<Store> {
	const store = await openStore({ name: `merge ${++serial}` });
	opened.push(store);
	return store;
}

afterEach(() => {
	for (const store of opened.splice(0)) store.close();
});

/** What a new device holds after these merges. */
async function merged(...parts: Log[]): Promise<string> {
	const store = await open();
	for (const part of parts) await store.merge(part);
	const [car] = await store.cars();
	return formatLog({ car, events: await store.events(car.id) });
}

const e30 = aCalibration();
const [e10, e50, e85] = ["e10", "e50", "e85"].map((id) => aCalibration({ id }));

describe("merge", () => {
	test("refuses what would make the log larger than a backup of it may be, and changes nothing", async () => {
		const store = await open();
		const crowd = (from: number) => Array.from({ length: 60 }, (_, i) => aCalibration({ id: `${from + i}` }));
		await store.merge(aLog({ car: aCar({ calibrations: [e30, ...crowd(0)] }) }));
		await expect(store.merge(aLog({ car: aCar({ calibrations: [e30, ...crowd(60)] }) }))).rejects.toThrow(
			"the two logs together would have 121 calibrations, and may have 100",
		);
		expect((await store.cars())[0].calibrations).toHaveLength(61);
	});
	test("brings a car that is new with its log, and counts", async () => {
		const store = await open();
		const first = { added: 8, known: 0, carIsNew: true, keptOwnSettings: false };
		expect(await store.merge(aLog())).toEqual(first);
		expect(await store.merge(aLog())).toEqual({ ...first, added: 0, known: 8, carIsNew: false });
		expect(await store.merge(aLog({ events: [aFill(), aFill({ id: "new" })] }))).toMatchObject({ added: 1, known: 1 });
		expect(await store.countEvents("car")).toBe(9);
	});

	test("keeps this device's name and tank, and says so", async () => {
		const store = await open();
		await store.merge(aLog());
		for (const car of [aCar({ name: "Another" }), aCar({ tank: { capacityL: 60 } })]) {
			expect(await store.merge(aLog({ car }))).toMatchObject({ keptOwnSettings: true });
		}
		expect(await store.cars()).toEqual([aCar()]);
	});

	test("writes nothing when an event has other contents here", async () => {
		const store = await open();
		await store.merge(aLog({ events: [aFill()] }));
		const car = aCar({ calibrations: [e30, e50] });
		const clash = store.merge({ car, events: [aStart(), aFill({ litres: 1 }), aLevel()] });
		await expect(clash).rejects.toThrow(DuplicateIdError);
		await expect(clash).rejects.toThrow('The event "fill" is here already with other contents, so nothing was saved.');
		expect(await store.events("car")).toEqual([aFill()]);
		expect(await store.cars()).toEqual([aCar()]);
	});

	test("writes nothing when a calibration has other contents here", async () => {
		const store = await open();
		await store.merge(aLog());
		const car = aCar({ calibrations: [aCalibration({ window: [0.2, 0.4] })] });
		const clash = store.merge({ car, events: [aFill({ id: "new" })] });
		await expect(clash).rejects.toMatchObject({ name: "DuplicateIdError", of: "calibration", id: "e30" });
		expect(await store.countEvents("car")).toBe(8);
		expect(await store.cars()).toEqual([aCar()]);
	});

	test("refuses a log that would not be read from a file", async () => {
		const store = await open();
		await expect(store.merge(aLog({ events: [aFill({ litres: 0 })] }))).rejects.toThrow(
			"litres: must be more than 0 L",
		);
		await expect(store.merge(aLog({ events: [aFill(), aFill()] }))).rejects.toThrow("must be its own");
		expect(await store.cars()).toEqual([]);
	});

	test.each([
		["continued lists", [e30, e10], [e30, e10, e85, e50], ["e30", "e10", "e85", "e50"]],
		["a list that is empty on one side", [], [e85, e10], ["e85", "e10"]],
		["lists that part", [e30, e85], [e30, e50, e10], ["e30", "e10", "e50", "e85"]],
		["lists with nothing in common", [e85], [e30], ["e30", "e85"]],
	])("puts the calibrations of %s in the same order on both sides", async (_name, a, b, order) => {
		const one = { car: aCar({ calibrations: a }), events: [] };
		const two = { car: aCar({ calibrations: b }), events: [] };
		for (const both of [await merged(one, two), await merged(two, one), await merged(one, two, one, two)]) {
			expect(JSON.parse(both).car.calibrations.map(({ id }: { id: string }) => id)).toEqual(order);
		}
	});

	test("is idempotent, commutative and associative", async () => {
		await fc.assert(
			fc.asyncProperty(logs, fc.infiniteStream(fc.nat(7)), async (log, picks) => {
				const [a, b, c] = [1, 2, 4].map((bit) => partOf(log, picks, bit));
				const all = await merged(a, b, c);
				expect(await merged(c, b, a)).toBe(all);
				expect(await merged(b, a, c, a, b)).toBe(all);
			}),
			{ numRuns: 40 },
		);
	});
});

/** Some of a log's events, with those they name: each of three copies knows only a part. */
function partOf(log: Log, picks: Iterable<number>, bit: number): Log {
	const stream = picks[Symbol.iterator]();
	const chosen = new Set(log.events.filter(() => ((stream.next().value ?? 0) & bit) !== 0).map(({ id }) => id));
	// An event of the builder voids only what comes before it.
	for (const event of [...log.events].reverse()) {
		if (event.kind === "void" && chosen.has(event.id)) chosen.add(event.target);
	}
	return { car: log.car, events: log.events.filter(({ id }) => chosen.has(id)) };
}
