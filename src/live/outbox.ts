/** What this phone has of a car and the server lacks. */
import { compareEvents, type LogEvent } from "../domain/event";
import type { Store } from "../store/store";
import { type Contents, nameOf } from "./contents";

/** In an order in which whoever takes it can join one after the other: the car, entries by time, what takes them back. */
export async function lackingAt(store: Store, carId: string, known: ReadonlySet<string>): Promise<Contents[] | null> {
	const car = (await store.cars()).find(({ id }) => id === carId);
	if (!car) return null;
	const events = (await store.events(carId)).filter(({ id }) => !known.has(id));
	events.sort((a, b) => rank(a) - rank(b) || compareEvents(a, b));
	const carToo = known.has(nameOf({ car })) ? [] : [{ car }];
	return [...carToo, ...events.map((event) => ({ event }))];
}

/** What takes back comes after what it takes back; of those that take back each other, whoever takes them holds some. */
function rank(event: LogEvent): number {
	return event.kind === "void" ? 1 : 0;
}
