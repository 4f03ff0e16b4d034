/** Heads within the transactions that change what they stand for. */
import type { Writing } from "./db";
import { digestOf, type Head, noEvents, withEvents } from "./head";
import { eventsOf } from "./records";

/** The car's head; reckoned from what is there where an older version of the app wrote none. */
export async function headIn(tx: Writing, carId: string): Promise<Head> {
	const stored = (await tx.objectStore("heads").get(carId)) as Head | undefined;
	if (stored) return stored;
	const [car, events] = await Promise.all([
		tx.objectStore("cars").get(carId),
		tx.objectStore("events").getAll(eventsOf(carId)),
	]);
	return { rev: 0, ...withEvents(noEvents, events), car: car === undefined ? null : digestOf(car) };
}

export async function putHead(tx: Writing, carId: string, head: Head): Promise<Head> {
	await tx.objectStore("heads").put(head, carId);
	return head;
}
