/**
 * Raw records as what the domain knows. All that is written was held against the schemas first (see checks.ts), so reading
 * only has to tell apart what a newer version may have left here; holding ten years of fills against a schema again would
 * keep the driver waiting.
 */
import type { LogEvent } from "../domain/event";
import type { Car } from "../domain/vehicle";
import { RefusedError } from "./errors";
import type { LogError } from "./logError";

/** The keys of a car's events: an array sorts after every string. */
export function eventsOf(carId: string): IDBKeyRange {
	return IDBKeyRange.bound([carId], [carId, []]);
}

/** The car, or nothing. */
export function readCar(raw: unknown): Car[] {
	const car = raw as Partial<Car> | undefined;
	const known = typeof car?.tank?.capacityL === "number" && Array.isArray(car.calibrations);
	return known ? [raw as Car] : [];
}

const kinds: Readonly<Record<LogEvent["kind"], (event: Partial<Record<string, unknown>>) => boolean>> = {
	start: ({ contents }) => typeof contents === "object" && contents !== null,
	fill: ({ litres, product }) => typeof litres === "number" && typeof product === "object" && product !== null,
	reading: ({ of, value, sd }) =>
		(of === "tank" || of === "pump" || of === "trim") && typeof value === "number" && typeof sd === "number",
	level: ({ gauge }) => typeof gauge === "number",
	calibration: ({ calibration }) => typeof calibration === "string",
	void: ({ target }) => typeof target === "string",
};

/** The event, or nothing. */
export function readEvent(raw: unknown): LogEvent[] {
	const event = raw as Partial<Record<string, unknown>> | undefined;
	const has = Object.hasOwn(kinds, String(event?.kind)) ? kinds[event?.kind as LogEvent["kind"]] : null;
	const known =
		event && has && typeof event.id === "string" && Number.isFinite(Date.parse(String(event.at))) && has(event);
	return known ? [raw as LogEvent] : [];
}

/** Throws a RefusedError, if there is an error. */
export function refuse(error: LogError | null): void {
	if (error) throw new RefusedError(error);
}
