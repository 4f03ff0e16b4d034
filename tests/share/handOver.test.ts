/** Parts of logs on their way between phones: the same set of entries, the same numbers, in whatever order they meet. */
import "fake-indexeddb/auto";
import fc from "fast-check";
import { afterEach, describe, expect, test } from "vitest";
import { compareEvents, type LogEvent } from "../../src/domain/event";
import type { Car } from "../../src/domain/vehicle";
import { framed } from "../../src/share/frame";
import {
	type Holdings,
	holdingsOf,
	knowsCalibration,
	lackingIn,
	packedHoldings,
	readHoldings,
} from "../../src/share/holdings";
import { foundIn } from "../../src/share/link";
import { packed } from "../../src/share/pack";
import { holdingsAfter, logOf, type Part, packedPart, partOf, readPart } from "../../src/share/part";
import {
	type Collected,
	codeBytes,
	linksOf,
	missingIn,
	readCollected,
	wholeOf,
	withPiece,
} from "../../src/share/sequence";
import { openStore, type Store } from "../../src/store/store";
import { believableLogs } from "../helpers/arbitraries";
import { aCalibration, aCar, aFill, aFlash, aStart, aVoid } from "../helpers/logs";
import { quickReplay } from "../helpers/quickReplay";

const app = "https://heeltap.example/";
const opened: Store[] = [];
let serial = 0;

afterEach(() => {
	for (const store of opened.splice(0)) store.close();
});

async function aPhone(): Promise<Store> {
	const store = await openStore({ name: `hand-over ${++serial}` });
	opened.push(store);
	return store;
}

const ids = (events: readonly LogEvent[]) => events.map(({ id }) => id).sort();
const day = (n: number) => `2026-06-${String(n).padStart(2, "0")}T12:00:00+02:00`;

/** A phone that chains what it writes. */
function written(device: string, count: number, from = 1): LogEvent[] {
	return Array.from({ length: count }, (_, i) =>
		aFill({
			id: `${device}${i}`,
			stop: `${device}${i}`,
			at: day(from + i),
			...(i > 0 && { after: `${device}${i - 1}` }),
		}),
	);
}

describe("a phone that says what it has is handed what it lacks, and nothing else:", () => {
	const all = [...written("a", 12), ...written("b", 5, 3)];
	const holdings = (has: readonly LogEvent[]) => {
		const read = readHoldings(framed("hand", packedHoldings(holdingsOf(aCar(), has))));
		if (!read.ok) throw new Error(read.error);
		return read.value;
	};
	test("the ends of the chains", () => {
		const has = all.filter(({ id }) => !["a10", "a11", "b4"].includes(id));
		expect(ids(lackingIn(all, holdings(has)))).toEqual(["a10", "a11", "b4"]);
		expect(lackingIn(all, holdings(all))).toEqual([]);
		expect(lackingIn(all, holdings([]))).toHaveLength(17);
	});
	test("any entries, chained by any phones or by none", () => {
		fc.assert(
			fc.property(fc.array(fc.boolean(), { minLength: 17, maxLength: 17 }), fc.nat(17), (bits, unchained) => {
				const log = all.map((event, i) => {
					const { after: _, ...rest } = event;
					return i < unchained ? (rest as LogEvent) : event;
				});
				const has = log.filter((_, i) => bits[i]);
				const lacking = log.filter((_, i) => !bits[i]);
				expect(ids(lackingIn(log, holdings(has)))).toEqual(ids(lacking));
			}),
			{ seed: 6, numRuns: 300 },
		);
	});
	test("of a long log without chains too much rather than too little, in a code of bounded size", () => {
		const log = written("a", 28).map(({ after: _, ...event }) => event as LogEvent);
		const lacking = ids(lackingIn(log, holdings(log.slice(0, 27))));
		expect(lacking).toContain("a27");
		const manyPhones = Array.from({ length: 40 }, (_, i) => written(`p${i}-`, 3)).flat();
		expect(packedHoldings(holdingsOf(aCar(), manyPhones)).length).toBeLessThan(500);
	});
	test("calibrations are told by their ids", () => {
		expect(knowsCalibration(holdings([]), "e30")).toBe(true);
		expect(knowsCalibration(holdings([]), "e85")).toBe(false);
	});
});

describe("a part", () => {
	const e85 = aCalibration({ id: "e85", name: "E85" });
	const car = aCar({ calibrations: [aCalibration(), e85] });
	const events = [
		aStart({ at: day(1) }),
		aFlash({ id: "flash", at: day(2), calibration: "e85" }),
		aFill({ id: "f1", stop: "s1", at: day(3) }),
		aFill({ id: "f2", stop: "s2", at: day(5) }),
		aFill({ id: "f3", stop: "s2", at: day(5), litres: 3 }),
		aVoid({ id: "v", at: day(6), target: "f1" }),
	];
	test("of the last stop has its fills, what came after, and what that takes back", () => {
		const part = partOf(car, events, { what: "lastStop" });
		expect(ids(part.events)).toEqual(["f1", "f2", "f3", "v"]);
		expect(part.car.calibrations).toEqual([]);
		expect(part.first).toBe("e30");
	});
	test("has both halves of a correction, though the new entry is of an earlier time", () => {
		const typed = aFill({ id: "typed", stop: "s1", at: day(3), litres: 4 });
		const later = aFill({ id: "later", stop: "s2", at: day(5), after: "typed" });
		const taken = aVoid({ id: "taken", target: "typed", at: day(6), after: "later" });
		const right = aFill({ id: "right", stop: "s1", at: day(3), litres: 40, after: "taken" });
		const log = [aStart({ at: day(1) }), typed, later, taken, right];
		for (const wanted of [{ what: "lastStop" }, { what: "since", instant: Date.parse(day(6)) }] as const)
			expect(ids(partOf(car, log, wanted).events)).toEqual(expect.arrayContaining(["typed", "taken", "right"]));
	});
	test("leaves the other phone with what it had and what was in it, and no more", () => {
		const chained = events.map((event, i) => (i === 0 ? event : { ...event, after: events[i - 1].id }));
		const had = holdingsOf(car, chained.slice(0, 2));
		const part = partOf(car, chained, { what: "lastStop" });
		const missing = (before: Holdings | null) => ids(lackingIn(chained, holdingsAfter(car, chained, part, before)));
		const given = new Set(ids(part.events));
		expect(missing(null)).toEqual(ids(chained).filter((id) => !given.has(id)));
		expect(missing(had)).toEqual(ids(chained.slice(2)).filter((id) => !given.has(id)));
		const whole = partOf(car, chained, { what: "all" });
		expect(lackingIn(chained, holdingsAfter(car, chained, whole, null))).toEqual([]);
	});
	test("since an instant has the calibrations that its entries name", () => {
		const part = partOf(car, events, { what: "since", instant: Date.parse(day(2)) });
		expect(part.car.calibrations).toEqual([e85]);
	});
	test("of a stop of two fills fits one code, and comes back from it", () => {
		const uuid = () => crypto.randomUUID();
		const stop = uuid();
		const last = uuid();
		const fills = [1, 2].map((n) =>
			aFill({
				id: n === 1 ? last : uuid(),
				after: n === 1 ? uuid() : last,
				stop,
				at: "2026-06-05T17:30:11+02:00",
				litres: 12.34 * n,
				place: "Corner station, Main Street",
				product: { id: "flex-51-83", range: [0.51, 0.83] },
				odometerKm: 123456,
				pricePerLitre: 0.799,
				gauge: 0.25,
			}),
		);
		const real = { ...car, id: uuid(), calibrations: [aCalibration({ id: uuid() })] };
		const part = partOf(real, [aStart({ at: day(1) }), ...fills], { what: "lastStop" });
		const links = linksOf(app, packedPart(part), codeBytes);
		expect(links).toHaveLength(1);
		expect(links[0].length).toBeLessThan(400);
		expect(taken(links)).toEqual(part);
	});
	test("can't be joined where the car is not, or where it names what is not here", () => {
		const part = partOf(car, events, { what: "since", instant: Date.parse(day(2)) });
		const without = (fields: Partial<Part>) => logOf({ ...part, ...fields }, car, new Set(ids(events)));
		expect(logOf(part, null, new Set())).toEqual({ ok: false, error: "otherCar" });
		expect(without({ first: "another" })).toEqual({ ok: false, error: "calibrationLacking" });
		const bare = aCar({ calibrations: [aCalibration()] });
		const noCalibrations = { ...part, car: { ...car, calibrations: [] } };
		expect(logOf(noCalibrations, bare, new Set())).toEqual({ ok: false, error: "calibrationLacking" });
		const onlyVoid = { ...part, events: [aVoid({ target: "f1" })] };
		expect(logOf(onlyVoid, car, new Set())).toEqual({ ok: false, error: "entryLacking" });
		expect(logOf(onlyVoid, car, new Set(["f1"])).ok).toBe(true);
	});
	test("says nothing of the settings that it leaves out", () => {
		const own = { ...car, fuelSystem: { powerKW: 200 }, changed: { fuelSystem: day(1), name: day(1) } } as Car;
		const light = partOf({ ...own, fuelSystem: { powerKW: 100 } }, events, { what: "lastStop" });
		expect(light.car).not.toHaveProperty("fuelSystem");
		const log = logOf(light, own, new Set(ids(events)));
		expect(log.ok && log.value.car).toMatchObject({ fuelSystem: { powerKW: 200 }, changed: own.changed });
	});
});

describe("codes of one body", () => {
	const events = written("a", 28);
	const part = partOf(aCar(), events, { what: "all" });
	const links = linksOf(app, packedPart(part), codeBytes);
	test("are taken in any order, twice, and with a restart between any two", () => {
		expect(links.length).toBeGreaterThan(2);
		fc.assert(
			fc.property(
				fc.shuffledSubarray(links, { minLength: links.length }),
				fc.array(fc.nat(links.length - 1)),
				(order, again) => {
					expect(taken([...again.map((i) => links[i]), ...order])).toEqual(part);
				},
			),
			{ seed: 6, numRuns: 100 },
		);
	});
	test("say which are missing", () => {
		const some = collected([links[1]]);
		expect(some && missingIn(some)).toEqual(links.map((_, i) => i).filter((i) => i !== 1));
	});
	test("of another body begin anew, and the two are never mixed", () => {
		const others = linksOf(app, packedPart(partOf(aCar(), events.slice(1), { what: "all" })), codeBytes);
		const mixed = collected([...links.slice(0, -1), ...others.slice(0, 1)]);
		expect(mixed && missingIn(mixed).length).toBe(others.length - 1);
	});
	test("that lie on the disk as something else are nothing", () => {
		for (const raw of [null, undefined, 5, {}, { sum: 1, count: 1e9, pieces: {} }, { sum: 1, count: 2, pieces: null }])
			expect(readCollected(raw)).toBeNull();
	});
	test("whose pieces were exchanged are refused as a whole", () => {
		const whole = collected(links);
		const swapped = whole && { ...whole, pieces: { ...whole.pieces, 0: whole.pieces[1] } };
		expect(swapped && wholeOf(swapped)).toEqual({ ok: false, error: "mangled" });
	});
});

describe("hostile parts are refused, and nothing is thrown:", () => {
	const body = [...packedPart(partOf(aCar(), written("a", 3), { what: "all" }))];
	test("bytes of chance, and bodies with bytes changed", () => {
		fc.assert(
			fc.property(
				fc.oneof(
					fc.uint8Array({ maxLength: 300 }),
					fc
						.tuple(fc.nat(body.length - 1), fc.nat(255))
						.map(([at, byte]) => Uint8Array.from(body, (old, i) => (i === at ? byte : old))),
				),
				(bytes) => {
					const read = readPart(bytes);
					if (read.ok) for (const { at } of read.value.events) expect(Number.isFinite(Date.parse(at))).toBe(true);
				},
			),
			{ seed: 6, numRuns: 3000 },
		);
	});
	test.each([
		["text", "x"],
		["nothing", null],
		["no events", { id: "car", car: {}, calibrations: [], events: null, whole: true }],
		["events of a length alone", { id: "car", car: {}, calibrations: [], events: { length: 1e9 } }],
		[
			"a car of one's own making",
			{ id: "car", car: { name: "x", tank: { capacityL: -1 } }, calibrations: [], events: [] },
		],
		[
			"an event of nothing",
			{ id: "car", car: { name: "x", tank: { capacityL: 50 } }, calibrations: [], events: [null] },
		],
	])("%s", (_name, value) => {
		expect(readPart(packed(value))).toEqual({ ok: false, error: "mangled" });
	});
	test("a piece that claims to be one of a billion, or beyond the last", () => {
		const piece = (place: number[], count: number[]) =>
			withPiece(null, framed("take", Uint8Array.from([0, 0, 0, 1, ...place, ...count])));
		expect(piece([0], [0xff, 0xff, 0xff, 0x7f])).toEqual({ ok: false, error: "mangled" });
		expect(piece([3], [3])).toEqual({ ok: false, error: "mangled" });
		expect(piece([0], [0])).toEqual({ ok: false, error: "mangled" });
		expect(piece([], [])).toEqual({ ok: false, error: "mangled" });
	});
});

describe("phones that hand parts to each other", () => {
	/** Which phone gives to which, what, and whether it arrives twice. */
	const handOvers = fc.array(
		fc.record({
			from: fc.nat(2),
			to: fc.nat(2),
			what: fc.constantFrom("lacking", "lastStop", "all" as const),
			twice: fc.boolean(),
		}),
		{ maxLength: 8 },
	);
	/** What a phone says of the settings, some of them changed at the same time. */
	const settings = fc.record({
		name: fc.constantFrom("The grey one", "Grey", "Wagon"),
		capacityL: fc.constantFrom(50, 58, 60),
		at: fc.constantFrom(undefined, day(1), day(2)),
		/** The calibrations in another order: which one counts before any was flashed must be settled, too. */
		turned: fc.boolean(),
	});

	test("come to the same set, settings and numbers, in whatever order and however often they meet", {
		timeout: 300_000,
	}, async () => {
		await fc.assert(
			fc.asyncProperty(
				believableLogs(6),
				fc.array(fc.nat(2), { minLength: 20, maxLength: 20 }),
				fc.tuple(settings, settings, settings),
				handOvers,
				async (log, owners, ways, meetings) => {
					const phones = await Promise.all(ways.map(aPhone));
					const known = new Set(log.car.calibrations.map(({ id }) => id));
					const events = log.events.filter((event) => event.kind !== "calibration" || known.has(event.calibration));
					for (const [i, { name, capacityL, at, turned }] of ways.entries()) {
						const changed = at ? { changed: { name: at, tank: at } } : {};
						const calibrations = turned ? [...log.car.calibrations].reverse() : log.car.calibrations;
						const car = { ...log.car, calibrations, name, tank: { capacityL }, ...changed } as unknown as Car;
						await phones[i].merge({ car, events: [] });
						const own = events.filter((_, j) => owners[j % owners.length] === i);
						if (own.length > 0) await phones[i].append(car.id, own);
					}
					for (const { from, to, what, twice } of meetings)
						for (let times = twice ? 2 : 1; times > 0; times--) await handOver(phones[from], phones[to], what);
					// Whatever happened before: in the end everyone meets everyone.
					for (const [from, to] of [
						[2, 1],
						[1, 0],
						[0, 1],
						[0, 2],
					])
						await handOver(phones[from], phones[to], "lacking");
					const [one, ...others] = await Promise.all(phones.map(accountOf));
					for (const other of others) expect(other).toEqual(one);
					for (const store of phones) store.close();
				},
			),
			{ seed: 6, numRuns: 40 },
		);
	});
});

async function handOver(from: Store, to: Store, what: "lacking" | "lastStop" | "all"): Promise<void> {
	if (from === to) return;
	const [[car], [own]] = [await from.cars(), await to.cars()];
	const [events, ownEvents] = [await from.events(car.id), await to.events(own.id)];
	const wanted = what === "lacking" ? ({ what, holdings: holdingsOf(own, ownEvents) } as const) : ({ what } as const);
	const part = taken(linksOf(app, packedPart(partOf(car, events, wanted)), codeBytes));
	const log = logOf(part, own, new Set(ids(ownEvents)));
	if (!log.ok) throw new Error(log.error);
	await to.merge(log.value);
}

async function accountOf(store: Store): Promise<unknown> {
	const [car] = await store.cars();
	const events = (await store.events(car.id)).sort(compareEvents);
	const { calibrations, ...settings } = car;
	const figures = [...quickReplay(car, events, 64)].map(({ event, estimate }) => [event.id, estimate]);
	return { ids: ids(events), settings, first: calibrations[0]?.id, figures };
}

function collected(links: readonly string[]): Collected | null {
	return links.reduce<Collected | null>((before, link) => {
		const after = withPiece(before && readCollected(JSON.parse(JSON.stringify(before))), foundIn(link)[0].payload);
		if (!after.ok) throw new Error(after.error);
		return after.value;
	}, null);
}

function taken(links: readonly string[]): Part {
	const all = collected(links);
	const body = all && wholeOf(all);
	const part = body?.ok ? readPart(body.value) : null;
	if (!part?.ok) throw new Error("the codes can't be read");
	return part.value;
}
