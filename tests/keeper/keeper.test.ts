import "fake-indexeddb/auto";
import { afterEach, expect, test, vi } from "vitest";
import { openAccount, replay } from "../../src/domain/estimator/replay";
import { countingEvents, type FillEvent, type LogEvent } from "../../src/domain/event";
import { preparedLog, replayed } from "../../src/keeper/accounts";
import { keeperOf } from "../../src/keeper/keeper";
import { openStore, type Store } from "../../src/store/store";
import { benchCar, longLog } from "../bench/longLog";

const until = Date.parse("2026-06-01T12:00:00Z");
const car = benchCar;
const stores: Store[] = [];
let phones = 0;

afterEach(() => {
	for (const store of stores.splice(0)) store.close();
	vi.restoreAllMocks();
});

async function phoneWith(events: readonly LogEvent[], name = `keeper ${++phones}`) {
	const store = await openStore({ name });
	stores.push(store);
	await store.merge({ car, events });
	return { store, keeper: keeperOf(store), name };
}

const aVoid = (target: string): LogEvent => ({
	kind: "void",
	id: `void ${target}`,
	at: new Date(until).toISOString(),
	target,
});
const figures = (events: readonly LogEvent[]) =>
	[...replay(car, events)].map(({ estimate: { dots, ...rest } }) => rest);

test("an account continued from any checkpoint, copied as a disk copies it, is that of a full replay", async () => {
	const events = longLog(10, until);
	const counting = countingEvents(events);
	const full = figures(events);
	for (const position of [5, 13, 20]) {
		const part = await replayed(preparedLog(car, counting.slice(0, position)), []);
		const stored = structuredClone(part.checkpoint);
		const whole = await replayed(preparedLog(car, events), [stored]);
		expect(whole.checkpoint.left.map((left) => left?.figures)).toEqual(full);
	}
});

test("a checkpoint of another log, another tank or another order is not used", async () => {
	const events = longLog(2, until);
	const { checkpoint } = await replayed(preparedLog(car, events), []);
	const other = events.map((event) => (event.id === "0 a" ? { ...(event as FillEvent), litres: 9 as never } : event));
	expect((await replayed(preparedLog(car, other), [checkpoint])).checkpoint.left.map((left) => left?.figures)).toEqual(
		figures(other),
	);
	const smaller = { ...car, tank: { capacityL: 50 as never } };
	expect(openAccount(smaller).fingerprint).not.toBe(openAccount(car).fingerprint);
	const again = await replayed(preparedLog(smaller, events), [checkpoint]);
	expect(again.checkpoint.left).not.toEqual(checkpoint.left);
});

test("taking back the last stop leaves the account as it was", async () => {
	const events = longLog(3, until);
	const { store, keeper } = await phoneWith(events);
	await keeper.account(car.id);
	await keeper.append(car.id, [aVoid("2 a"), aVoid("2 b")]);
	const view = await keeper.account(car.id);
	const left = events.filter(({ id }) => id !== "2 a" && id !== "2 b");
	expect(view.lines.map((line) => line.figures)).toEqual(figures(left));
	expect(await store.countEvents(car.id)).toBe(events.length + 2);
});

test("the tank as last shown is there at once, and gone as soon as anything has changed", async () => {
	const { keeper } = await phoneWith(longLog(2, until));
	expect(await keeper.shown(car.id)).toBeNull();
	const { now } = await keeper.account(car.id);
	expect(await keeper.shown(car.id)).toEqual(now);
	await keeper.append(car.id, [aVoid("1 b")]);
	expect(await keeper.shown(car.id)).toBeNull();
	await keeper.account(car.id);
	await keeper.saveCar({ ...car, calibrations: [{ ...car.calibrations[0], id: "other" }, ...car.calibrations] });
	expect(await keeper.shown(car.id)).toBeNull();
});

test("checkpoints on the disk carry the account over a restart", async () => {
	const events = longLog(24, until);
	const first = await phoneWith(events);
	const before = await first.keeper.account(car.id);
	// 49 events: of the multiples of eight the last odd one, the last that halves once, twice …
	const points = (await first.store.checkpoint(`${car.id}/points`)) as Record<string, { position: number }>;
	expect(Object.values(points).map(({ position }) => position)).toEqual([40, 48, 32]);
	const second = await phoneWith([], first.name);
	const after = await second.keeper.account(car.id);
	expect(after.lines).toEqual(before.lines);
	expect(after.now).toEqual(before.now);
});

test.each([
	["Failed to read large IndexedDB value", "UnknownError"],
	["Data lost due to missing file.", "NotReadableError"],
])(
	"a checkpoint that a cut has left unreadable (%s) is as if it were not there, and is made anew",
	async (said, name) => {
		const events = longLog(24, until);
		const first = await phoneWith(events);
		const before = await first.keeper.account(car.id);
		const { get } = IDBObjectStore.prototype;
		const asked: unknown[] = [];
		// As Chromium does where the file of a large value is missing.
		vi.spyOn(IDBObjectStore.prototype, "get").mockImplementation(function (this: IDBObjectStore, key) {
			if (key !== `${car.id}/point/1`) return get.call(this, key);
			asked.push(key);
			throw new DOMException(said, name);
		});
		const opened = vi.spyOn(IDBFactory.prototype, "open");
		const second = await phoneWith([], first.name);
		const saved = vi.spyOn(second.store, "saveCheckpoint");
		const after = await second.keeper.account(car.id);
		expect(asked).toHaveLength(1);
		expect(after.lines).toEqual(before.lines);
		expect(opened).toHaveBeenCalledTimes(1);
		expect(saved.mock.calls.map(([key]) => key)).toContain(`${car.id}/point/1`);
	},
);

test("a preview on a settled account shows the very numbers that saving then shows", async () => {
	const events = longLog(12, until);
	const { keeper } = await phoneWith(events);
	await keeper.account(car.id);
	const template = events.find(({ id }) => id === "11 a") as FillEvent;
	const fill: FillEvent = { ...template, id: "typed", stop: "typed", at: new Date(until).toISOString() };
	const preview = await keeper.preview(car.id, { fills: [fill], next: null, instead: [] });
	await keeper.append(car.id, [fill]);
	const { now } = await keeper.account(car.id);
	expect(preview?.estimate).toEqual(now?.estimate);
});

test("a preview of a correction counts the new stop in place of the old one", async () => {
	const events = longLog(3, until);
	const { keeper } = await phoneWith(events);
	const wrong = events.find(({ id }) => id === "2 a") as FillEvent;
	const right: FillEvent = { ...wrong, id: "right", stop: "right" };
	const preview = await keeper.preview(car.id, { fills: [right], next: null, instead: ["2 a", "2 b"] });
	const [before] = figures(events.filter(({ id }) => !id.startsWith("2"))).slice(-1);
	expect(preview?.before.median).toBeCloseTo(before.median, 2);
	expect(preview?.estimate.median).toBeGreaterThan(before.median);
});

test("a log that goes out and comes back to an empty phone shows the same numbers", async () => {
	const first = await phoneWith(longLog(3, until));
	const text = await first.keeper.exportLog(car.id);
	const store = await openStore({ name: `keeper ${++phones}` });
	stores.push(store);
	const second = keeperOf(store);
	expect(await second.importLog(text)).toMatchObject({ ok: true, value: { added: 7, carIsNew: true } });
	expect((await second.account(car.id)).lines).toEqual((await first.keeper.account(car.id)).lines);
	expect(await second.importLog("{}")).toMatchObject({ ok: false });
});
