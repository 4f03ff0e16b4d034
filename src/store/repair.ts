/** Puts back what went missing, and makes the heads stand for what is there from then on. */
import { holesIn } from "./chain";
import { type Database, write } from "./db";
import { digestOf, type Head, lostCar, noEvents, withEvents } from "./head";
import { longMs } from "./patience";
import { eventsOf } from "./records";
import { putHead } from "./storedHead";
import { removeCar } from "./transactions";
import type { Written, WrittenCar } from "./written";

export interface CarRepair {
	readonly carId: string;
	/** Raw, to be put in place of what is there; undefined: it stays as it is. */
	readonly car?: unknown;
	/** The car had been removed and is to go again. */
	readonly remove: boolean;
	/** Raw, by id. */
	readonly put: ReadonlyMap<string, unknown>;
	/** Ids of events that belong to another car. */
	readonly drop: readonly string[];
	/** The highest revision that anyone knows of. */
	readonly rev: number;
	/** What this device wrote last, as far as known. */
	readonly last: string | undefined;
}

export interface Repair {
	readonly cars: readonly CarRepair[];
	readonly preferences: ReadonlyMap<string, unknown>;
}

/** All of it or nothing. What was written since the repair was planned stays. */
export function repair(db: Database, { cars, preferences }: Repair): Promise<Written[]> {
	return write(
		db,
		["cars", "events", "heads", "preferences", "drafts", "checkpoints"],
		async (tx) => {
			const written: Written[] = [];
			for (const plan of cars) {
				if (plan.car !== undefined) await tx.objectStore("cars").put(plan.car);
				const stored = tx.objectStore("events");
				await Promise.all([
					...[...plan.put].map(([id, event]) => stored.put(event, [plan.carId, id])),
					...plan.drop.map((id) => stored.delete([plan.carId, id])),
				]);
				if (plan.remove) await removeCar(tx, plan.carId);
				written.push(await anew(tx, plan));
			}
			for (const [name, value] of preferences) await tx.objectStore("preferences").put(value, name);
			return written;
		},
		{ withinMs: longMs },
	);
}

async function anew(tx: Parameters<typeof removeCar>[0], { carId, rev, last }: CarRepair): Promise<WrittenCar> {
	const range = eventsOf(carId);
	const [car, keys, events, before] = await Promise.all([
		tx.objectStore("cars").get(carId),
		tx.objectStore("events").getAllKeys(range),
		tx.objectStore("events").getAll(range),
		tx.objectStore("heads").get(carId) as Promise<Head | undefined>,
	]);
	const ids = new Set(keys.map(([, id]) => id));
	const newest = [last, before?.last].find((id) => id !== undefined && ids.has(id));
	// What nobody has is not missed again.
	const lacks = holesIn(events, ids);
	const head = await putHead(tx, carId, {
		rev: Math.max(rev, before?.rev ?? 0) + 1,
		...withEvents(noEvents, events),
		car: car !== undefined ? digestOf(car) : events.length > 0 ? lostCar : null,
		...(newest !== undefined && { last: newest }),
		...(before?.since !== undefined && { since: before.since }),
		...(lacks.length > 0 && { lacks }),
	});
	return { carId, head, ...(car !== undefined && { car }) };
}
