/** What happens inside the transactions that change a log. They await nothing but their own requests. */
import type { LogEvent } from "../domain/event";
import type { Car } from "../domain/vehicle";
import type { Writing } from "./db";
import { StorageLostError } from "./errors";
import { mergeCars, newcomers } from "./merge";
import { eventsOf, readCar, readEvent, refuse } from "./records";
import { danglingError } from "./references";
import type { Log } from "./wire";

export interface Merged {
	/** Events that were not here before, and those that were. */
	readonly added: number;
	readonly known: number;
	readonly carIsNew: boolean;
	/** The file has another name or tank for the car; this device's stay. */
	readonly keptOwnSettings: boolean;
}

export async function saveCar(tx: Writing, car: Car): Promise<void> {
	const cars = tx.objectStore("cars");
	const kept = idsOf([car]);
	const before = idsOf(readCar(await cars.get(car.id)));
	// Reading all events is slow, and only a calibration taken away needs it.
	if ([...before].some((id) => !kept.has(id))) {
		const events = await tx.objectStore("events").getAll(eventsOf(car.id));
		refuse(danglingError(events.flatMap(readEvent), kept, { has: () => true }));
	}
	await cars.put(car);
}

export async function removeCar(tx: Writing, carId: string): Promise<void> {
	await Promise.all([
		tx.objectStore("cars").delete(carId),
		tx.objectStore("events").delete(eventsOf(carId)),
		...(["drafts", "checkpoints"] as const).flatMap((notes) => [
			tx.objectStore(notes).delete(carId),
			// "0" is the character after "/".
			tx.objectStore(notes).delete(IDBKeyRange.bound(`${carId}/`, `${carId}0`, false, true)),
		]),
	]);
}

export async function append(
	tx: Writing,
	carId: string,
	events: readonly LogEvent[],
	dropDraft: string | undefined,
): Promise<void> {
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
	await Promise.all(added.map((event) => stored.add(event, [carId, event.id])));
	if (dropDraft !== undefined) await tx.objectStore("drafts").delete(dropDraft);
}

export async function merge(tx: Writing, { car, events }: Log): Promise<Merged> {
	const cars = tx.objectStore("cars");
	const stored = tx.objectStore("events");
	const range = eventsOf(car.id);
	const [raw, keys, values] = await Promise.all([cars.get(car.id), stored.getAllKeys(range), stored.getAll(range)]);
	const [own] = readCar(raw);
	if (raw !== undefined && !own) throw new StorageLostError("newer");
	const added = newcomers(new Map(keys.map(([, id], i) => [id, values[i]])), events, "event");
	const union = own ? mergeCars(own, car) : { car, keptOwnSettings: false };
	await Promise.all([cars.put(union.car), ...added.map((event) => stored.add(event, [car.id, event.id]))]);
	return {
		added: added.length,
		known: events.length - added.length,
		carIsNew: !own,
		keptOwnSettings: union.keptOwnSettings,
	};
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
