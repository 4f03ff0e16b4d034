/** What must hold between the parts of a log, beyond each part's own form. */
import type { LogEvent } from "../domain/event";
import { badAt, type LogError } from "./logError";
import type { Must } from "./must";
import type { Log } from "./wire";

/** Finds the first id that is there twice, and the first that names nothing. `root` is the raw file, for the places. */
export function referenceError(log: Log, root: unknown): LogError | null {
	const { car, events } = log;
	const calibrations = new Set(car.calibrations.map(({ id }) => id));
	const ids = new Set(events.map(({ id }) => id));
	return repetitionIn(log, root) ?? danglingError(events, calibrations, ids, root);
}

/** Finds the first id that is there twice. */
export function repetitionIn({ car, events }: Log, root: unknown): LogError | null {
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
	return null;
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
		const bad = (field: string, must: Must) => badAt(root, ["events", i, field], must);
		if (event.kind === "calibration" && !calibrations.has(event.calibration))
			return bad("calibration", "knownCalibration");
		if (event.kind === "void" && event.target === event.id) return bad("target", "otherEvent");
		if (event.kind === "void" && !ids.has(event.target)) return bad("target", "knownEvent");
	}
	return null;
}

function twice(root: unknown, path: (string | number)[], earlier: string): LogError {
	return badAt(root, path, "own", earlier);
}
