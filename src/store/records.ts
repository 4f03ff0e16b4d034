/** Between raw records and what the domain knows. Reading drops what this version can't read, writing refuses it. */
import type { LogEvent } from "../domain/event";
import type { Car } from "../domain/vehicle";
import { check, describeLogError, type LogError } from "./logError";
import { carSchema, eventSchema } from "./wire";

/** The keys of a car's events: an array sorts after every string. */
export function eventsOf(carId: string): IDBKeyRange {
	return IDBKeyRange.bound([carId], [carId, []]);
}

/** The car, or nothing. */
export function readCar(raw: unknown): Car[] {
	const { success, data } = carSchema.safeParse(raw);
	return success ? [data] : [];
}

/** The event, or nothing. */
export function readEvent(raw: unknown): LogEvent[] {
	const { success, data } = eventSchema.safeParse(raw);
	return success ? [data] : [];
}

/** Throws a RangeError naming the place, if there is an error. */
export function refuse(error: LogError | null): void {
	if (error) throw new RangeError(describeLogError(error));
}

/** What was refused on reading a backup must never be written, or the backup could not be read. */
export function refuseBad(car: Car | null, events: readonly LogEvent[]): void {
	const root = { car, events };
	const checks = events.map((event, i) => check(eventSchema, event, ["events", i], root));
	for (const result of car ? [check(carSchema, car, ["car"], root), ...checks] : checks) {
		if (!result.ok) refuse(result.error);
	}
}
