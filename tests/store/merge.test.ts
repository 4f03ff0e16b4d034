import "fake-indexeddb/auto";
import fc from "fast-check";
import { afterEach, describe, expect, test } from "vitest";
import { formatLog, type Log } from "../../src/store/backup";
import { DuplicateIdError, openStore, RefusedError, type Store } from "../../src/store/store";
import { aCalibration, aCar, aFill, aFlash, aLevel, aLog, aStart, aVoid, logs } from "../helpers/logs";
import { sentenceOf } from "../helpers/sentences";

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
		expect(await store.merge(aLog({ car: aCar({ calibrations: [e30, ...crowd(60)] }) })).catch(sentenceOf)).toContain(
			"The two logs together would have 121 calibrations, and may have 100",
		);
		expect((await store.cars())[0].calibrations).toHaveLength(61);
	});
	test("brings a car that is new with its log, and counts", async () => {
		const store = await open();
		const first = { added: 8, known: 0, carIsNew: true, decided: [] };
		expect(await store.merge(aLog())).toEqual(first);
		expect(await store.merge(aLog())).toEqual({ ...first, added: 0, known: 8, carIsNew: false });
		expect(await store.merge(aLog({ events: [aFill(), aFill({ id: "new" })] }))).toMatchObject({ added: 1, known: 1 });
		expect(await store.countEvents("car")).toBe(9);
	});

	test("takes of every setting the one changed last, says so, and comes to the same on both sides", async () => {
		const [early, late] = ["2026-06-01T10:00:00Z", "2026-06-01T14:00:00+02:00"];
		const here = aCar({
			tank: { capacityL: 58 },
			currency: "EUR",
			changed: { name: late, tank: early, currency: early },
		});
		const there = aCar({
			name: "Another",
			tank: { capacityL: 60 },
			changed: { name: early, tank: late, currency: late },
		});
		const both = aCar({ tank: { capacityL: 60 }, changed: { name: late, tank: late, currency: late } });
		for (const [own, other, took] of [
			[here, there, ["own", "other", "other"]],
			[there, here, ["other", "own", "own"]],
		] as const) {
			const store = await open();
			await store.merge(aLog({ car: own }));
			const { decided } = await store.merge(aLog({ car: other }));
			expect(decided.map(({ field }) => field).sort()).toEqual(["currency", "name", "tank"]);
			for (const [i, field] of ["name", "tank", "currency"].entries())
				expect(decided.find((each) => each.field === field)).toMatchObject({ took: took[i] });
			// What was taken away later stays away.
			expect(await store.cars()).toEqual([both]);
			expect((await store.merge(aLog({ car: other }))).decided.every((each) => each.took === "own")).toBe(true);
			expect(await store.cars()).toEqual([both]);
		}
	});

	test("settings that nobody dated come to the same on both sides, too", async () => {
		const one = { car: aCar({ tank: { capacityL: 58 } }), events: [] };
		const two = { car: aCar({ name: "Another", tank: { capacityL: 60 } }), events: [] };
		expect(await merged(one, two)).toBe(await merged(two, one));
		expect(JSON.parse(await merged(one, two)).car).toMatchObject({ name: "The grey one", tank: { capacityL: 60 } });
	});

	test("settles the settings of any three copies in whatever order", async () => {
		const time = fc.constantFrom(
			undefined,
			"2026-06-01T10:00:00Z",
			"2026-06-01T12:00:00+02:00",
			"2026-06-02T10:00:00Z",
		);
		const copy = fc
			.record({
				name: fc.constantFrom("A", "B"),
				capacityL: fc.constantFrom(50, 60),
				currency: fc.constantFrom(undefined, "EUR", "USD"),
				at: fc.record({ name: time, tank: time, currency: time }),
				calibrations: fc.shuffledSubarray([e30, e10, e50, e85]),
			})
			.map(({ name, capacityL, currency, at, calibrations }): Log => {
				const changed = Object.fromEntries(Object.entries(at).filter(([, value]) => value !== undefined));
				const fields = { name, tank: { capacityL }, calibrations, ...(currency && { currency }) };
				return { car: aCar({ ...fields, ...(Object.keys(changed).length > 0 && { changed }) }), events: [] };
			});
		/** All but the order of the calibrations behind the first, which is for the eye alone. */
		const settled = async (...copies: Log[]) => {
			const { car } = JSON.parse(await merged(...copies));
			const [first, ...rest] = car.calibrations.map(({ id }: { id: string }) => id);
			return { ...car, calibrations: [first, ...rest.sort()] };
		};
		await fc.assert(
			fc.asyncProperty(copy, copy, copy, async (a, b, c) => {
				const all = await settled(a, b, c);
				expect(await settled(c, a, b)).toEqual(all);
				expect(await settled(b, c, b, a, a)).toEqual(all);
			}),
			{ seed: 6, numRuns: 60 },
		);
	});

	test("takes entries that name what only this device has, and refuses those that name what nobody has", async () => {
		const store = await open();
		await store.merge(aLog({ events: [aFill()] }));
		const bare = aCar({ calibrations: [] });
		await store.merge({ car: bare, events: [aFlash(), aVoid({ target: "fill" })] });
		expect(await store.countEvents("car")).toBe(3);
		const lost = store.merge({ car: bare, events: [aVoid({ id: "v2", target: "nowhere" })] });
		await expect(lost).rejects.toThrow(RefusedError);
		const unknown = store.merge({ car: bare, events: [aFlash({ id: "f2", calibration: "e99" })] });
		await expect(unknown).rejects.toThrow(RefusedError);
		expect(await store.countEvents("car")).toBe(3);
	});

	test("a car that is saved with a time notes it beside what changed, and later than the change before", async () => {
		const store = await open();
		await store.saveCar(aCar(), "2026-06-01T10:00:00Z");
		expect(await store.cars()).toEqual([aCar()]);
		await store.saveCar(aCar({ name: "New" }), "2026-06-02T10:00:00.000Z");
		await store.saveCar(aCar({ name: "Newer", calibrations: [] }), "2026-06-01T10:00:00.000Z");
		expect((await store.cars())[0].changed).toEqual({ name: "2026-06-02T10:00:01.000Z" });
	});

	test("writes nothing when an event has other contents here", async () => {
		const store = await open();
		await store.merge(aLog({ events: [aFill()] }));
		const car = aCar({ calibrations: [e30, e50] });
		const clash = store.merge({ car, events: [aStart(), aFill({ litres: 1 }), aLevel()] });
		await expect(clash).rejects.toThrow(DuplicateIdError);
		expect(await clash.catch(sentenceOf)).toContain(
			'The event "fill" is here already with other contents, so nothing was saved.',
		);
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
		expect(await store.merge(aLog({ events: [aFill({ litres: 0 })] })).catch(sentenceOf)).toContain(
			"litres: must be more than 0 L",
		);
		expect(await store.merge(aLog({ events: [aFill(), aFill()] })).catch(sentenceOf)).toContain("must be its own");
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
