/** Which calibration is flashed, as the log tells it. */
import { type CalibrationEvent, countingEvents, type LogEvent } from "../domain/event";
import type { Calibration, Car } from "../domain/vehicle";
import { isoWithOffset } from "./app";
import { momentAfter } from "./moment";

function flashes(events: readonly LogEvent[]): CalibrationEvent[] {
	return countingEvents(events).filter((event): event is CalibrationEvent => event.kind === "calibration");
}

/** The calibration in force at the end of the log: the last one flashed, else the first of the list. */
export function flashedNow(car: Car, events: readonly LogEvent[]): Calibration | null {
	const known = flashes(events).flatMap(
		({ calibration }) => car.calibrations.find(({ id }) => id === calibration) ?? [],
	);
	return known.at(-1) ?? car.calibrations[0] ?? null;
}

/** When each calibration was flashed last, by its id. */
export function lastFlashed(events: readonly LogEvent[]): ReadonlyMap<string, string> {
	return new Map(flashes(events).map(({ calibration, at }) => [calibration, at]));
}

/** Whether a part of the log is, or was, held against this calibration: then it is a fact and stays as it is. */
export function isFact(id: string, car: Car, events: readonly LogEvent[]): boolean {
	return (
		car.calibrations[0]?.id === id || events.some((event) => event.kind === "calibration" && event.calibration === id)
	);
}

/** "This one is flashed now": later than whatever was flashed before, even if the phone's clock was wrong then. */
export function flashEvent(
	id: string,
	calibration: string,
	events: readonly LogEvent[],
	now: number,
): CalibrationEvent {
	const last = flashes(events).at(-1);
	const moment = momentAfter(events, now);
	const at = last ? Math.max(moment, Date.parse(last.at) + 1000) : moment;
	return { kind: "calibration", id, at: isoWithOffset(at), calibration };
}
