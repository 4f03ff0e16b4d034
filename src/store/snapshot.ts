/** Everything that matters on this device, as it stands at one moment. */
import type { Database } from "./db";
import type { Head } from "./head";

/** A car with its log, raw. */
export interface Held {
	/** Undefined where there is none. */
	readonly car: unknown;
	readonly events: ReadonlyMap<string, unknown>;
	readonly head: Head | null;
}

export interface Holdings {
	readonly cars: ReadonlyMap<string, Held>;
	readonly preferences: ReadonlyMap<string, unknown>;
}

/** Read in one transaction, so that no write of another tab comes between. */
export async function snapshot(db: Database): Promise<Holdings> {
	const tx = db.transaction(["cars", "events", "heads", "preferences"]);
	const [cars, eventKeys, events, headKeys, heads, names, preferences] = await Promise.all([
		tx.objectStore("cars").getAll(),
		tx.objectStore("events").getAllKeys(),
		tx.objectStore("events").getAll(),
		tx.objectStore("heads").getAllKeys(),
		tx.objectStore("heads").getAll(),
		tx.objectStore("preferences").getAllKeys(),
		tx.objectStore("preferences").getAll(),
	]);
	const held = new Map<string, { car: unknown; events: Map<string, unknown>; head: Head | null }>();
	const of = (carId: string) => {
		const known = held.get(carId) ?? { car: undefined, events: new Map(), head: null };
		held.set(carId, known);
		return known;
	};
	for (const car of cars) of(String((car as { readonly id: unknown }).id)).car = car;
	for (const [i, [carId, eventId]] of eventKeys.entries()) of(carId).events.set(eventId, events[i]);
	for (const [i, carId] of headKeys.entries()) of(carId).head = heads[i] as Head;
	return { cars: held, preferences: new Map(names.map((name, i) => [name, preferences[i]])) };
}
