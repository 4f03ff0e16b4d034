/**
 * What is missing on this device. The database is held against its own heads, the rescue copy, and the heads that the page
 * remembers. Each of them may lag behind the database by a killed app, and none may be ahead of it.
 */
import { holesIn, unlinked } from "./chain";
import { digestOf, type Head, type Heads, lostCar, noEvents, withEvents } from "./head";
import type { CarRepair } from "./repair";
import { sameContents } from "./sameContents";
import type { Held, Holdings } from "./snapshot";

/** What is wrong with one car's log. */
export interface CarDamage {
	readonly carId: string;
	/** As last known; null where nobody knows. */
	readonly name: string | null;
	/** The car itself is not there any more. */
	readonly gone: boolean;
	/** The car had been removed, and is there again. */
	readonly returned: boolean;
	/** Entries that are not there, as far as can be told; zero where only other things are wrong. */
	readonly missing: number;
	/** How many of them nothing on this device can bring back. */
	readonly lost: number;
	/** Entries that say something else than what was saved. */
	readonly changed: number;
	/** Entries that belong to another car. */
	readonly strays: number;
	/** The car's name, tank or calibrations are older than what was saved. */
	readonly settings: boolean;
}

export interface Finding {
	/** Null: nothing is wrong. */
	readonly damage: CarDamage | null;
	/** What mends it, as far as the copy goes, and makes the car's own head the newest; null: it is. */
	readonly repair: CarRepair | null;
}

const nothing: Held = { car: undefined, events: new Map(), head: null };

/** What is found of every car that anyone knows of. `copy`: null where there is none. */
export function findingsIn(here: Holdings, copy: Holdings | null, remembered: Heads): Finding[] {
	const carIds = new Set([...here.cars.keys(), ...(copy?.cars.keys() ?? []), ...Object.keys(remembered)]);
	return [...carIds].map((carId) => {
		const held = here.cars.get(carId) ?? nothing;
		const copied = copy?.cars.get(carId);
		const seen = Object.hasOwn(remembered, carId) ? remembered[carId] : null;
		// What is from before the car was removed and set up anew says nothing of it.
		const current = (head?: Head | null) => head && head.rev >= (held.head?.since ?? 0);
		const now = copied && current(copied.head) ? copied : nothing;
		return findingOf(carId, held, now, current(seen) ? seen : null, copy);
	});
}

function findingOf(
	carId: string,
	held: Held,
	copied: Held,
	seen: Heads[string] | null,
	copy: Holdings | null,
): Finding {
	const heads = [held.head, copied.head, seen].filter((head) => head !== null);
	const newest = heads.reduce<Head | null>((best, head) => (best && best.rev >= head.rev ? best : head), null);
	const plan = { carId, remove: false, put: new Map(), drop: [], rev: newest?.rev ?? 0, last: newest?.last };
	const behind = held.head === null || held.head.rev < plan.rev ? plan : null;
	const name = nameOf(held.car) ?? nameOf(copied.car) ?? seen?.name ?? null;
	const fine = {
		carId,
		name,
		gone: false,
		returned: false,
		missing: 0,
		lost: 0,
		changed: 0,
		strays: 0,
		settings: false,
	};
	if (!newest) {
		// Written by an older version of the app, which wrote no chain: what is there is all that is known.
		const holes = holesIn(held.events.values(), held.events).length;
		return { damage: holes > 0 ? { ...fine, missing: holes, lost: holes } : null, repair: plan };
	}
	if (newest.car === null) {
		if (held.car === undefined && held.events.size === 0) return { damage: null, repair: behind };
		return { damage: { ...fine, returned: true }, repair: { ...plan, remove: true } };
	}

	const kept = copied.events;
	const missing = [...kept].filter(([id]) => !held.events.has(id));
	const changed = [...kept].filter(([id, event]) => held.events.has(id) && differ(held.events.get(id), event));
	const put = new Map([...missing, ...changed]);
	const drop = straysIn(carId, held, newest, kept, copy);
	const after = new Map([...held.events, ...put]);
	for (const id of drop) after.delete(id);
	const lost = lostFrom(newest, held.head, seen, after);
	const gone = held.car === undefined && newest.car !== lostCar;
	const settings = held.car !== undefined && digestOf(held.car) !== newest.car;
	const same = sameFigures(figuresOf(held.events), newest) && !(seen?.rev === newest.rev && !sameFigures(seen, newest));
	if (same && !gone && !settings && put.size === 0 && lost === 0) return { damage: null, repair: behind };
	const counts = { missing: missing.length + lost, lost, changed: changed.length, strays: drop.length };
	const car = gone || (settings && copied.head?.rev === newest.rev) ? copied.car : undefined;
	return { damage: { ...fine, gone, settings, ...counts }, repair: { ...plan, car, put, drop } };
}

function differ(a: unknown, b: unknown): boolean {
	return !sameContents(unlinked(a), unlinked(b));
}

type Figures = Pick<Head, "count" | "sum">;

function figuresOf(events: ReadonlyMap<string, unknown>): Figures {
	return withEvents(noEvents, events.values());
}

function sameFigures(a: Figures, b: Figures): boolean {
	return a.count === b.count && a.sum === b.sum;
}

/**
 * Events of other cars: those whose going makes the log what its head says, or that the copy knows only from another car.
 * Anything else that the copy lacks was written just before the app was killed.
 */
function straysIn(
	carId: string,
	{ events, head }: Held,
	newest: Head,
	kept: ReadonlyMap<string, unknown>,
	copy: Holdings | null,
): string[] {
	const extra = [...events].filter(([id]) => !kept.has(id));
	if (extra.length === 0 || !copy) return [];
	if (head?.rev === newest.rev && sameFigures(figuresOf(events), head)) return [];
	const copyIsWhole = sameFigures(figuresOf(kept), newest);
	const elsewhere = ([id, event]: [string, unknown]) =>
		[...copy.cars].some(([other, { events }]) => other !== carId && events.has(id) && !differ(events.get(id), event));
	return extra.filter((entry) => copyIsWhole || elsewhere(entry)).map(([id]) => id);
}

/** How many entries are in no copy: by the count, by holes in the chain, and by the last ones that anyone saw. */
function lostFrom(newest: Head, own: Head | null, seen: Head | null, after: ReadonlyMap<string, unknown>): number {
	const known = new Set([...(newest.lacks ?? []), ...(own?.lacks ?? [])]);
	const named = new Set(holesIn(after.values(), after).filter((id) => !known.has(id)));
	for (const head of [newest, seen]) if (head?.last !== undefined && !after.has(head.last)) named.add(head.last);
	return Math.max(newest.count - after.size, named.size);
}

function nameOf(car: unknown): string | null {
	const name = (car as { readonly name?: unknown } | null | undefined)?.name;
	return typeof name === "string" ? name : null;
}
