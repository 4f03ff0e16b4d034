import "fake-indexeddb/auto";
import { isDeepStrictEqual } from "node:util";
import fc from "fast-check";
import { afterEach, expect, test } from "vitest";
import { keeperOf } from "../../src/keeper/keeper";
import { packedPart, partOf, readPart } from "../../src/share/part";
import { formatLog } from "../../src/store/backup";
import { openStore, type Store } from "../../src/store/store";
import { aCalibration, aCar, aFill, aFlash, aStart, aVoid } from "../helpers/logs";

const opened: Store[] = [];
let serial = 0;

afterEach(() => {
	for (const store of opened.splice(0)) store.close();
});

async function aPhone(...logs: Parameters<Store["merge"]>[0][]) {
	const store = await openStore({ name: `handed ${++serial}` });
	opened.push(store);
	for (const log of logs) await store.merge(log);
	return { store, keeper: keeperOf(store) };
}

const early = aFill({ id: "f1", stop: "s1", at: "2026-06-03T12:00:00+02:00" });
const late = aFill({ id: "f2", stop: "s2", at: "2026-06-08T12:00:00+02:00", litres: 10 });
const e85 = aCalibration({ id: "e85", name: "E85", calibratedFor: 0.7, window: [0.6, 0.8] });

test("while a log is looked at a fill can be saved", async () => {
	const { keeper } = await aPhone({ car: aCar(), events: [aStart(), early] });
	const order: string[] = [];
	const fills = Array.from({ length: 12 }, (_, n) =>
		aFill({ id: `more ${n}`, stop: `more ${n}`, at: `2026-06-${10 + n}T12:00:00+02:00` }),
	);
	const looking = keeper.lookAt({ text: formatLog({ car: aCar(), events: [aStart(), early, ...fills] }) });
	const saving = new Promise((done) => setTimeout(done, 1)).then(() => keeper.append("car", [late]));
	await Promise.all([looking.then(() => order.push("looked")), saving.then(() => order.push("saved"))]);
	expect(order).toEqual(["saved", "looked"]);
});

test("what is shown before it is kept is what keeping shows, to the last bit", async () => {
	const { keeper } = await aPhone({ car: aCar(), events: [aStart(), early] });
	const changed = { tank: "2026-06-09T12:00:00Z" };
	const other = aCar({ tank: { capacityL: 55 }, calibrations: [aCalibration(), e85], changed });
	const flash = aFlash({ id: "flashed", at: "2026-06-08T13:00:00+02:00", calibration: "e85" });
	const undo = aVoid({ id: "undo", at: "2026-06-08T14:00:00+02:00", target: "f1" });
	const part = partOf(other, [aStart(), early, late, flash, undo], { what: "lastStop" });
	const looked = await keeper.lookAt({ part });
	if (!looked.ok) throw new Error(JSON.stringify(looked.error));
	const { added, known, before, after, car, calibrations, decided } = looked.value;
	expect({ added: added.map(({ id }) => id), known, calibrations: calibrations.map(({ id }) => id) }).toEqual({
		added: ["f2", "flashed", "undo"],
		known: 1,
		calibrations: ["e85"],
	});
	expect(decided).toEqual([{ field: "tank", own: { capacityL: 58 }, other: { capacityL: 55 }, took: "other" }]);
	const then = await keeper.account("car");
	expect(then.now).toMatchObject({ estimate: before?.estimate, calibration: before?.calibration });
	expect(then.count).toBe(2);
	const taken = await keeper.take({ part });
	expect(taken).toMatchObject({ ok: true, value: { added: 3, known: 1 } });
	const now = await keeper.account("car");
	expect(now.now).toMatchObject({ estimate: after?.estimate, calibration: e85 });
	expect(now.car).toEqual(car);
});

test("a log file is looked at the same way, and changes nothing until it is kept", async () => {
	const { keeper, store } = await aPhone();
	const text = formatLog({ car: aCar(), events: [aStart(), early] });
	expect(await keeper.lookAt({ text })).toMatchObject({ ok: true, value: { carIsNew: true, before: null, known: 0 } });
	expect(await store.cars()).toEqual([]);
	expect(await keeper.lookAt({ text: "{}" })).toMatchObject({ ok: false, error: { kind: "log" } });
});

test("mangled parts are looked at, or refused in code, and nothing is changed by either", {
	timeout: 240_000,
}, async () => {
	const { keeper, store } = await aPhone({ car: aCar(), events: [aStart(), early] });
	const body = [...packedPart(partOf(aCar(), [aStart(), early, late], { what: "lastStop" }))];
	const contents = async () => [await store.cars(), await store.events("car")];
	const untouched = await contents();
	const outcomes = { unreadable: 0, refused: 0, shown: 0 };
	await fc.assert(
		fc.asyncProperty(fc.nat(body.length - 1), fc.nat(255), async (at, byte) => {
			const part = readPart(Uint8Array.from(body, (old, i) => (i === at ? byte : old)));
			// Reckoning takes its time: a few are enough.
			if (part.ok && outcomes.shown >= 8) return;
			const looked = part.ok ? await keeper.lookAt({ part: part.value }) : null;
			outcomes[looked === null ? "unreadable" : looked.ok ? "shown" : "refused"]++;
			expect(isDeepStrictEqual(await contents(), untouched)).toBe(true);
		}),
		{ seed: 6, numRuns: 300 },
	);
	expect(outcomes.unreadable).toBeGreaterThan(50);
	expect(outcomes.shown).toBe(8);
	expect(outcomes.refused).toBeGreaterThan(0);
});
