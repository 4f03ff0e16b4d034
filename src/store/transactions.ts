/** What happens inside the transactions that change a log. They await nothing but their own requests. */
import type { LogEvent } from "../domain/event";
import type { Car } from "../domain/vehicle";
import { chained, holesIn } from "./chain";
import type { Writing } from "./db";
import { StorageLostError, type TooMany, TooManyError } from "./errors";
import { digestOf, type Head, noEvents, withEvents } from "./head";
import { mostCalibrations, mostEvents } from "./limits";
import { mergeCars, newcomers } from "./merge";
import { eventsOf, readCar, readEvent, refuse } from "./records";
import { danglingError, repetitionIn } from "./references";
import { type Decided, withChanges } from "./settings";
import { headIn, putHead } from "./storedHead";
import type { Log } from "./wire";
import type { WrittenCar } from "./written";

export interface Merged {
	/** Events that were not here before, and those that were. */
	readonly added: number;
	readonly known: number;
	readonly carIsNew: boolean;
	/** Settings of the car that the other copy says differently, and which of the two counts. */
	readonly decided: readonly Decided[];
	/** How many entries the file's own chain names and lacks; left out where it is whole. */
	readonly lacking?: number;
}

/** `at`: when its settings were changed; left out, that is not noted. */
export async function saveCar(tx: Writing, given: Car, at?: string): Promise<WrittenCar> {
	const cars = tx.objectStore("cars");
	const kept = idsOf([given]);
	const [stored] = readCar(await cars.get(given.id));
	const car = stored && at !== undefined ? withChanges(stored, given, at) : given;
	const before = idsOf(stored ? [stored] : []);
	// Reading all events is slow, and only a calibration taken away needs it.
	if ([...before].some((id) => !kept.has(id))) {
		const events = await tx.objectStore("events").getAll(eventsOf(car.id));
		refuse(danglingError(events.flatMap(readEvent), kept, { has: () => true }));
	}
	const head = await headIn(tx, car.id);
	await cars.put(car);
	return { carId: car.id, car, head: await putHead(tx, car.id, { ...head, rev: head.rev + 1, car: digestOf(car) }) };
}

/** The head stays, to tell a car that was removed from one that went missing. */
export async function removeCar(tx: Writing, carId: string): Promise<WrittenCar> {
	const { rev } = await headIn(tx, carId);
	await Promise.all([
		tx.objectStore("cars").delete(carId),
		tx.objectStore("events").delete(eventsOf(carId)),
		...(["drafts", "checkpoints"] as const).flatMap((notes) => [
			tx.objectStore(notes).delete(carId),
			// "0" is the character after "/".
			tx.objectStore(notes).delete(IDBKeyRange.bound(`${carId}/`, `${carId}0`, false, true)),
		]),
	]);
	return { carId, head: await putHead(tx, carId, { rev: rev + 1, since: rev + 1, ...noEvents, car: null }) };
}

/** New events are chained to the one that this device wrote last. Null where none is new. */
export async function append(
	tx: Writing,
	carId: string,
	events: readonly LogEvent[],
	dropDraft: string | undefined,
): Promise<WrittenCar | null> {
	const stored = tx.objectStore("events");
	const given = distinct(events);
	const targets = given.flatMap((event) => (event.kind === "void" ? [event.target] : []));
	const ids = [...new Set([...given.map(({ id }) => id), ...targets])];
	const [car, ...values] = await Promise.all([
		tx.objectStore("cars").get(carId),
		...ids.map((id) => stored.get([carId, id])),
	]);
	if (car === undefined) throw new RangeError(`car must be saved before its events, got ${JSON.stringify(carId)}`);
	const known = new Map(ids.map((id, i) => [id, values[i]] as const).filter(([, value]) => value !== undefined));
	const added = newcomers(known, given, "event");
	refuse(danglingError(added, idsOf(readCar(car)), new Set([...known.keys(), ...given.map(({ id }) => id)])));
	if (dropDraft !== undefined) await tx.objectStore("drafts").delete(dropDraft);
	if (added.length === 0) return null;
	const before = await headIn(tx, carId);
	const links = chained(added, before.last);
	await Promise.all(links.map((event) => stored.add(event, [carId, event.id])));
	const last = links[links.length - 1].id;
	const head = { ...before, ...withEvents(before, links), rev: before.rev + 1, last };
	return { carId, events: links, head: await putHead(tx, carId, head) };
}

/**
 * Events keep the places that they have in the chains of the devices that wrote them. They may name calibrations and events
 * that only this device has.
 */
export async function merge(tx: Writing, log: Log): Promise<Merged & { readonly written: WrittenCar }> {
	refuse(repetitionIn(log, log));
	const { car, events } = log;
	const cars = tx.objectStore("cars");
	const stored = tx.objectStore("events");
	const range = eventsOf(car.id);
	const [raw, keys, values] = await Promise.all([cars.get(car.id), stored.getAllKeys(range), stored.getAll(range)]);
	const [own] = readCar(raw);
	if (raw !== undefined && !own) throw new StorageLostError("newer");
	const added = newcomers(new Map(keys.map(([, id], i) => [id, values[i]])), events, "event");
	const union = own ? mergeCars(own, car) : { car, decided: [] };
	refuse(
		danglingError(added, idsOf([union.car]), new Set([...keys.map(([, id]) => id), ...added.map(({ id }) => id)])),
	);
	// Each may be within the limits, and together they would be a log that no backup of could be read.
	refuseMoreThan(mostEvents, keys.length + added.length, "events");
	refuseMoreThan(mostCalibrations, union.car.calibrations.length, "calibrations");
	const before = await headIn(tx, car.id);
	await Promise.all([cars.put(union.car), ...added.map((event) => stored.add(event, [car.id, event.id]))]);
	const ids = new Set([...keys.map(([, id]) => id), ...added.map(({ id }) => id)]);
	const holes = holesIn(added, ids);
	const lacks = [...new Set([...(before.lacks ?? []), ...holes])].filter((id) => !ids.has(id));
	const { lacks: _, ...rest } = before;
	const head = await putHead(tx, car.id, {
		...rest,
		...figuresAfter(before, [...values, ...added], added, ids, lacks),
		rev: before.rev + 1,
		car: digestOf(union.car),
		...(lacks.length > 0 && { lacks }),
	});
	return {
		added: added.length,
		known: events.length - added.length,
		carIsNew: !own,
		decided: union.decided,
		...(holes.length > 0 && { lacking: holes.length }),
		written: { carId: car.id, car: union.car, events: added, head },
	};
}

/** The file may have had what went missing here: then what is there counts. Else it is still missing. */
function figuresAfter(
	before: Head,
	all: readonly unknown[],
	added: readonly unknown[],
	ids: ReadonlySet<string>,
	lacks: readonly string[],
): Pick<Head, "count" | "sum"> {
	const is = withEvents(noEvents, all);
	const known = new Set(lacks);
	const whole = holesIn(all, ids).every((id) => known.has(id));
	const tail = before.last === undefined || ids.has(before.last);
	const healed = tail && whole && (is.count > before.count || is.sum === before.sum);
	return healed ? is : withEvents(before, added);
}

function refuseMoreThan(most: number, count: number, of: TooMany["of"]): void {
	if (count > most) throw new TooManyError({ of, count, most });
}

/** The events without exact repetitions. Throws DuplicateIdError. */
function distinct(events: readonly LogEvent[]): LogEvent[] {
	const seen = new Map<string, LogEvent>();
	for (const event of events) {
		for (const fresh of newcomers(seen, [event], "event")) seen.set(fresh.id, fresh);
	}
	return [...seen.values()];
}

function idsOf(cars: readonly Car[]): Set<string> {
	return new Set(cars.flatMap(({ calibrations }) => calibrations.map(({ id }) => id)));
}
