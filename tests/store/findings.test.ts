/** What is found of a car, case by case; tests/store/damage.test.ts does the same on whole phones. */
import { describe, expect, test } from "vitest";
import type { LogEvent } from "../../src/domain/event";
import { findingsIn } from "../../src/store/damage";
import { digestOf, type Head, noEvents, withEvents } from "../../src/store/head";
import type { Held, Holdings } from "../../src/store/snapshot";
import { aCar, aFill, aLevel, aStart } from "../helpers/logs";

const car = aCar();
const [start, fill, level] = [aStart(), aFill(), aLevel()];

const headOf = (events: readonly LogEvent[], fields: Partial<Head> = {}): Head => ({
	rev: 5,
	...withEvents(noEvents, events),
	car: digestOf(car),
	...fields,
});
const held = (events: readonly LogEvent[], head: Head | null = headOf(events)): Held => ({
	car,
	events: new Map(events.map((event) => [event.id, event])),
	head,
});
const phone = (cars: Record<string, Held>): Holdings => ({
	cars: new Map(Object.entries(cars)),
	preferences: new Map(),
});

function found(here: Record<string, Held>, copy: Record<string, Held> | null, remembered: Record<string, Head> = {}) {
	const findings = findingsIn(phone(here), copy && phone(copy), remembered);
	return Object.fromEntries(findings.map((finding) => [finding.repair?.carId ?? finding.damage?.carId, finding]));
}

describe("Without a copy", () => {
	test("entries are missed by their number, where no chain tells of them", () => {
		const { car } = found({ car: held([start, fill], headOf([start, fill, level])) }, null);
		expect(car.damage).toMatchObject({ missing: 1, lost: 1 });
	});

	test("entries are missed by the hole that they leave in the chain, even where every head is gone", () => {
		const chain = [start, aLevel({ after: "fill" })];
		expect(found({ car: held(chain, null) }, null).car.damage).toMatchObject({ missing: 1, lost: 1 });
		const filled = [...chain, aFill({ after: "start" })];
		expect(found({ car: held(filled, null) }, null).car.damage).toBeNull();
	});

	test("a hole that a head speaks of is missed, and one that a file brought is not", () => {
		const chain = [start, aLevel({ after: "gone" })];
		expect(found({ car: held(chain, headOf(chain)) }, null).car.damage).toMatchObject({ missing: 1 });
		const known = headOf(chain, { lacks: ["gone"] });
		expect(findingsIn(phone({ car: held(chain, known) }), null, {})[0].damage).toBeNull();
	});

	test("the last entry that the page saw is missed, even where the database went on without it", () => {
		const seen = headOf([start, fill], { rev: 4, last: "fill" });
		const here = held([start, level], headOf([start, level], { rev: 9, last: "level" }));
		expect(found({ car: here }, null, { car: seen }).car.damage).toMatchObject({ missing: 1, lost: 1 });
	});

	test("the last entry that the database itself names is missed, even where the number is right", () => {
		const here = held([start, fill], headOf([start, fill], { last: "level" }));
		expect(found({ car: here }, null).car.damage).toMatchObject({ missing: 1, lost: 1 });
	});

	test("another log of the same revision is noticed", () => {
		const seen = headOf([start, fill]);
		expect(found({ car: held([start, level]) }, null, { car: seen }).car.damage).not.toBeNull();
	});
});

describe("With a copy", () => {
	test("what the copy lacks was written just before the app was killed, where the database's own head knows it", () => {
		const here = held([start, fill], headOf([start, fill], { rev: 6 }));
		expect(findingsIn(phone({ car: here }), phone({ car: held([start]) }), {})[0]).toEqual({
			damage: null,
			repair: null,
		});
	});

	test("it stays even where its id is another car's too, as in a log that was taken over under another name", () => {
		const here = { car: held([start, fill], headOf([start, fill], { rev: 6 })), other: held([fill]) };
		const [mine] = findingsIn(phone(here), phone({ car: held([start]), other: held([fill]) }), {});
		expect(mine).toEqual({ damage: null, repair: null });
	});

	test("an entry that nobody wrote goes, where the log is whole without it", () => {
		const { car } = found({ car: held([start, fill], headOf([start])) }, { car: held([start]) });
		expect(car.damage).toMatchObject({ strays: 1, missing: 0 });
		expect(car.repair?.drop).toEqual(["fill"]);
	});

	test("an entry of another car goes, even where the copy lags", () => {
		// Level was written last and is in no copy; fill is the other car's.
		const here = {
			car: held([start, fill, level], headOf([start, level], { rev: 6 })),
			other: held([], headOf([fill])),
		};
		const { car, other } = found(here, { car: held([start]), other: held([fill]) });
		expect(car.repair?.drop).toEqual(["fill"]);
		expect(other.damage).toMatchObject({ missing: 1, lost: 0 });
		expect([...(other.repair?.put.keys() ?? [])]).toEqual(["fill"]);
	});

	test("a head that fell behind the copy's is brought up to date, where nothing else is wrong", () => {
		const [finding] = findingsIn(
			phone({ car: held([start]) }),
			phone({ car: held([start], headOf([start], { rev: 8 })) }),
			{},
		);
		expect(finding).toMatchObject({ damage: null, repair: { carId: "car", rev: 8 } });
	});

	test("what a removed car left in an old copy is not missed", () => {
		const here = held([level], headOf([level], { rev: 9, since: 7 }));
		expect(findingsIn(phone({ car: here }), phone({ car: held([start, fill]) }), {})[0].damage).toBeNull();
	});
});
