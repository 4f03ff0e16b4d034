/** Holds what is about to be written against the schemas. Loaded with the first write: the schemas weigh a quarter of the app. */
import type { LogEvent } from "../domain/event";
import type { Car } from "../domain/vehicle";
import { check } from "./logError";
import { refuse } from "./records";
import { carSchema, eventSchema } from "./wire";

/** Throws a RefusedError: what was refused on reading a backup must never be written, or the backup could not be read. */
export function refuseBad(car: Car | null, events: readonly LogEvent[]): void {
	const root = { car, events };
	const checks = events.map((event, i) => check(eventSchema, event, ["events", i], root));
	for (const result of car ? [check(carSchema, car, ["car"], root), ...checks] : checks) {
		if (!result.ok) refuse(result.error);
	}
}
