import "fake-indexeddb/auto";
import { afterEach, expect, test } from "vitest";
import type { LevelEvent, LogEvent, ReadingEvent } from "../../src/domain/event";
import { keeperOf } from "../../src/keeper/keeper";
import { openStore, type Store } from "../../src/store/store";
import { aCalibration, aCar, aFill, aLevel, aPumpReading, aStart, aTankReading, aTrimReading } from "../helpers/logs";

const car = aCar({ calibrations: [aCalibration()] });
const day = (date: string) => `2026-${date}T12:00:00Z`;
const flex = { id: "flex-51-83", range: [0.51, 0.83] };
const life = [
	aStart({ at: day("05-01"), contents: { range: [0.09, 0.1] }, gauge: 0.25 }),
	aFill({ at: day("05-02"), product: flex, litres: 20, place: "Harbour" }),
];
const stores: Store[] = [];
let phones = 0;

afterEach(() => {
	for (const store of stores.splice(0)) store.close();
});

async function keeperWith(events: readonly LogEvent[]) {
	const store = await openStore({ name: `preview ${++phones}` });
	stores.push(store);
	await store.merge({ car, events });
	return { keeper: keeperOf(store), store };
}
async function previewed(event: ReadingEvent | LevelEvent, events: readonly LogEvent[] = life) {
	const { keeper } = await keeperWith(events);
	const preview = await keeper.previewReading(car.id, event);
	if (!preview) throw new Error("no preview");
	return preview;
}

const events = [
	aTankReading({ at: day("05-03"), value: 0.4 }),
	aTrimReading({ at: day("05-03"), value: 0.05, sd: 0.03 }),
	aPumpReading({ at: day("05-03"), product: flex, place: "Harbour", value: 0.6 }),
	aLevel({ at: day("05-03"), gauge: 0.4 }),
];

test("a preview is what saving makes of the account, within a point", async () => {
	for (const event of events) {
		const { keeper } = await keeperWith(life);
		const before = (await keeper.account(car.id)).now;
		const preview = await keeper.previewReading(car.id, event);
		await keeper.append(car.id, [event]);
		const after = (await keeper.account(car.id)).now;
		for (const figure of ["median", "low", "high", "above", "below"] as const) {
			expect(Math.abs((preview?.before[figure] ?? 9) - (before?.estimate[figure] ?? 0)), figure).toBeLessThan(0.01);
			expect(Math.abs((preview?.after[figure] ?? 9) - (after?.estimate[figure] ?? 0)), figure).toBeLessThan(0.01);
		}
		expect(Math.abs((preview?.levelAfter.median ?? 99) - (after?.level.median ?? 0))).toBeLessThan(0.3);
	}
});

test("a preview leaves the account alone", async () => {
	const { keeper, store } = await keeperWith(life);
	const { now } = await keeper.account(car.id);
	await keeper.previewReading(car.id, events[0]);
	expect((await keeper.account(car.id)).now).toEqual(now);
	expect(await store.countEvents(car.id)).toBe(life.length);
});

test("a reading that the account can hardly believe is told before it is saved", async () => {
	const preview = await previewed(aTankReading({ at: day("05-03"), value: 0.05 }));
	expect(preview.surprise).toMatchObject({ kind: "disagrees" });
	expect((await previewed(events[0])).surprise).toBeNull();
});

test("a sample narrows what its pump gives, and a reading of the tank names no pump", async () => {
	const { pump } = await previewed(events[2]);
	if (!pump) throw new Error("no pump");
	expect(pump.after.high - pump.after.low).toBeLessThan(pump.before.high - pump.before.low);
	expect((await previewed(events[0])).pump).toBeNull();
});

test("a reading of an earlier time is held against the account as it stood then", async () => {
	const { before, after } = await previewed(aTankReading({ at: "2026-05-01T18:00:00Z", value: 0.1 }));
	expect(before.high).toBeLessThan(0.11);
	expect(after.high).toBeLessThan(0.11);
});

test("a reading may be the first thing known of a tank", async () => {
	const { before, after, surprise } = await previewed(aTankReading({ at: day("05-03"), value: 0.3 }), []);
	expect(before.high - before.low).toBeGreaterThan(0.6);
	expect(after.high - after.low).toBeLessThan(0.15);
	expect(surprise).toBeNull();
});
