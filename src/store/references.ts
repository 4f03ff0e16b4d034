/** What must hold between the parts of a log, beyond each part's own form. */
import type { LogEvent } from "../domain/event";
import { badAt, type LogError } from "./logError";
import type { Log } from "./wire";

/** Finds the first id that is there twice, and the first that names nothing. `root` is the raw file, for the places. */
export function referenceError({ car, events }: Log, root: unknown): LogError | null {
	const calibrations = new Map<string, number>();
	for (const [i, { id }] of car.calibrations.entries()) {
		const earlier = calibrations.get(id);
		if (earlier !== undefined) return twice(root, ["car", "calibrations", i, "id"], `car.calibrations[${earlier}]`);
		calibrations.set(id, i);
	}
	const places = new Map<string, number>();
	for (const [i, { id }] of events.entries()) {
		const earlier = places.get(id);
		if (earlier !== undefined) return twice(root, ["events", i, "id"], `events[${earlier}]`);
		places.set(id, i);
	}
	return danglingError(events, calibrations, places, root);
}

interface Ids {
	has(id: string): boolean;
}

/** The first event that names a calibration of the car, or another event, that is not there. */
export function danglingError(
	events: readonly LogEvent[],
	calibrations: Ids,
	ids: Ids,
	root: unknown = { events },
): LogError | null {
	for (const [i, event] of events.entries()) {
		const bad = (field: string, message: string) => badAt(root, ["events", i, field], message);
		if (event.kind === "calibration" && !calibrations.has(event.calibration))
			return bad("calibration", "must be the id of one of the car's calibrations");
		if (event.kind === "void" && event.target === event.id) return bad("target", "must be the id of another event");
		if (event.kind === "void" && !ids.has(event.target)) return bad("target", "must be the id of an event of this log");
	}
	return null;
}

function twice(root: unknown, path: (string | number)[], earlier: string): LogError {
	return badAt(root, path, `must be its own: ${earlier} has the same, so rename one or remove the copy`);
}
