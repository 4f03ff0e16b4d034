import "fake-indexeddb/auto";
import { afterEach, describe, expect, test } from "vitest";
import type { LogEvent } from "../../src/domain/event";
import { aCalibration, aCar, aFill, aLevel, aStart, aVoid } from "../helpers/logs";
import { aPhone, chance, type Phone, type Records, type Running } from "../helpers/phone";

const phones: Phone[] = [];
let serial = 0;

function newPhone(options: Parameters<typeof aPhone>[1] = {}): Phone {
	const phone = aPhone(`damage ${++serial}`, options);
	phones.push(phone);
	return phone;
}

afterEach(() => {
	for (const phone of phones.splice(0)) phone.stop();
});

const check = async (phone: Phone, running: Running) => running.keeper.check(phone.remembered());

/** What a driver would call the same: the cars, their entries, and what was chosen. */
function contents({ cars, events, preferences }: Records): unknown {
	const named = (records: Records[string]) => Object.fromEntries(records.map(([key, value]) => [String(key), value]));
	return [cars, events, preferences].map(named);
}

/**
 * Some weeks with two cars. `after` hears of every write and may let the copy and the page fall behind; gives the states of
 * the database after each.
 */
async function live(
	phone: Phone,
	random: () => number,
	after: (running: Running) => Promise<void>,
	removing = false,
): Promise<Records[]> {
	const running = await phone.start();
	const { store } = running;
	const states: Records[] = [];
	const done = async () => {
		await after(running);
		states.push(await phone.records());
	};
	const cars = ["grey", "red"];
	for (const id of cars) {
		await store.saveCar(aCar({ id, name: `The ${id} one` }));
		await store.append(id, [aStart({ id: `${id}-start` })]);
		await done();
	}
	await store.savePreference("settings", { activeCar: "red", units: { grey: "gal", red: "L" } });
	await done();
	for (let step = 0; step < 12; step++) {
		const car = cars[Math.floor(random() * 2)];
		const id = `${car}-${step}`;
		const what = random();
		if (what < 0.5) await store.append(car, [aFill({ id, litres: 5 + step })]);
		else if (what < 0.65) await store.append(car, [aVoid({ id, target: `${car}-start` }), aLevel({ id: `${id}b` })]);
		else if (what < 0.75) {
			const calibrations = [aCalibration(), aCalibration({ id: `e${step}` })];
			await store.saveCar(aCar({ id: car, name: `The ${car} one`, calibrations }));
		} else if (what < 0.9) {
			// Another phone's log, of which a part never came over.
			const events: LogEvent[] = [aFill({ id: `${id}x`, after: `${id}w` }), aFill({ id: `${id}y`, after: `${id}x` })];
			await store.merge({ car: aCar({ id: car, name: `The ${car} one` }), events });
		} else if (removing) {
			await store.removeCar(car);
			await done();
			await store.saveCar(aCar({ id: car, name: `The ${car} one` }));
			await store.append(car, [aStart({ id: `${car}-start` })]);
		}
		await done();
	}
	phone.stop();
	return states;
}

const always = async (running: Running) => {
	await running.copy();
	await running.witness();
};

type Damaging = (states: readonly Records[], random: () => number) => Records;

const pick = <T>(list: readonly T[], random: () => number): T => list[Math.floor(random() * list.length)];

const ways: Readonly<Record<string, Damaging>> = {
	"a torn log, reopened with what was written first": (states, random) =>
		states[Math.floor(random() * (states.length - 3))],
	"a torn log that lost its last write": (states) => {
		const newest = JSON.stringify(contents(states[states.length - 1]));
		return states.findLast((state) => JSON.stringify(contents(state)) !== newest) as Records;
	},
	"a wiped database": () => ({ cars: [], events: [], heads: [], preferences: [] }),
	"entries that are gone": (states, random) => {
		const now = states[states.length - 1];
		const spared = now.events.filter(() => random() > 0.3);
		return { ...now, events: spared.length < now.events.length ? spared : spared.slice(1) };
	},
	"half of all records gone": (states, random) => {
		const now = states[states.length - 1];
		const halved = Object.entries(now).map(([store, records]) => [store, records.filter(() => random() < 0.5)]);
		return { ...Object.fromEntries(halved), events: now.events.filter((_, i) => i > 0 && random() < 0.5) };
	},
	"a car that is gone": (states, random) => {
		const now = states[states.length - 1];
		const car = pick(["grey", "red"], random);
		const of = (key: IDBValidKey) => (Array.isArray(key) ? key[0] : key) === car;
		return Object.fromEntries(Object.entries(now).map(([store, all]) => [store, all.filter(([key]) => !of(key))]));
	},
	"two cars' entries exchanged": (states, random) => {
		const now = states[states.length - 1];
		const of = (car: string) => now.events.filter(([key]) => Array.isArray(key) && key[0] === car);
		const [[a, one], [b, other]] = [pick(of("grey"), random), pick(of("red"), random)];
		const [idOfA, idOfB] = [a, b].map((key) => (key as string[])[1]);
		const rest = now.events.filter(([key]) => key !== a && key !== b);
		return { ...now, events: [...rest, [["red", idOfA], one], [["grey", idOfB], other]] };
	},
	"an entry that moved to another car": (states, random) => {
		const now = states[states.length - 1];
		const moved = pick(now.events, random);
		const [car, id] = moved[0] as string[];
		const rest = now.events.filter((event) => event !== moved);
		return { ...now, events: [...rest, [[car === "grey" ? "red" : "grey", id], moved[1]]] };
	},
	"an entry that reads otherwise": (states, random) => {
		const now = states[states.length - 1];
		const [key, value] = pick(now.events, random);
		const spoilt = [key, { ...(value as object), at: "2026-05-01T10:00:00Z" }] as const;
		return { ...now, events: now.events.map((record) => (record[0] === key ? spoilt : record)) };
	},
	"an older state of one car": (states, random) => {
		const [now, then] = [states[states.length - 1], states[1]];
		const car = pick(["grey", "red"], random);
		const of = (key: IDBValidKey) => (Array.isArray(key) ? key[0] : key) === car;
		const mixed = (store: string) => [
			...now[store].filter(([key]) => !of(key)),
			...then[store].filter(([key]) => of(key)),
		];
		return { ...now, cars: mixed("cars"), events: mixed("events"), heads: mixed("heads") };
	},
};

const seeds = Array.from({ length: 10 }, (_, i) => i + 1);

describe.each(Object.entries(ways))("%s", (_, way) => {
	test.each(seeds)("is noticed at the next start, and brought back, seed %i", async (seed) => {
		const random = chance(seed * 7919);
		const phone = newPhone();
		const states = await live(phone, random, always);
		const before = states[states.length - 1];
		const damaged = way(states, random);
		expect(contents(damaged as never)).not.toEqual(contents(before));
		await phone.put(damaged);

		const running = await phone.start();
		const damage = await check(phone, running);
		expect(damage?.copied).toBe(true);
		expect(damage?.cars.reduce((sum, { lost }) => sum + lost, 0)).toBe(0);
		await running.keeper.bringBack();
		expect(contents(await phone.records())).toEqual(contents(before));
		expect(await check(phone, running)).toBeNull();
	});

	test.each(seeds.slice(0, 4))("is noticed by the files alone, and by the page alone, seed %i", async (seed) => {
		for (const options of [{ remembers: false }, { hasFiles: false }]) {
			const random = chance(seed * 104729);
			const phone = newPhone(options);
			const states = await live(phone, random, always);
			await phone.put(way(states, random));
			const running = await phone.start();
			const damage = await check(phone, running);
			expect(damage?.cars.length).toBeGreaterThan(0);
			// Told until it is dealt with, and then no more.
			phone.stop();
			const again = await phone.start();
			expect(await check(phone, again)).not.toBeNull();
			await again.keeper.bringBack();
			await again.copy();
			await again.witness();
			expect(await check(phone, again)).toBeNull();
		}
	});
});

test.each(Array.from({ length: 100 }, (_, i) => i + 1))("an undamaged phone is not reported, seed %i", async (seed) => {
	const random = chance(seed * 31337);
	const phone = newPhone({ hasFiles: random() > 0.2, remembers: random() > 0.2 });
	// The app may be killed before the copy is written, or before the page has noted anything.
	const [copies, notes] = [random(), random()];
	await live(
		phone,
		random,
		async (running) => {
			if (random() < copies) await running.copy();
			if (random() < notes) await running.witness();
		},
		true,
	);
	for (let start = 0; start < 2; start++) {
		const running = await phone.start();
		expect(await check(phone, running)).toBeNull();
		phone.stop();
	}
});
