/** The union of two copies of a car's log. */
import type { LogEvent } from "../domain/event";
import type { Calibration, Car } from "../domain/vehicle";
import { unlinked } from "./chain";
import { DuplicateIdError } from "./errors";
import { sameContents } from "./sameContents";
import { type Decided, mergeSettings } from "./settings";

export interface MergedCar {
	readonly car: Car;
	/** Settings that the two copies say differently. */
	readonly decided: readonly Decided[];
}

/** The own car with the other's calibrations added, and of every setting the later one. Throws DuplicateIdError. */
export function mergeCars(own: Car, other: Car): MergedCar {
	const { car, decided } = mergeSettings(own, other);
	return { car: { ...car, calibrations: mergeCalibrations(own.calibrations, other.calibrations) }, decided };
}

/**
 * The first calibration is in force until an event says otherwise, so all phones must come to one first, in whatever order
 * they meet: of two firsts the one whose id is less. Two phones also come to one order of the rest: that of the longer list if it
 * continues the other; else the beginning they share stays and the rest goes by id.
 */
function mergeCalibrations(own: readonly Calibration[], other: readonly Calibration[]): readonly Calibration[] {
	const byId = new Map(own.map((calibration) => [calibration.id, calibration]));
	for (const calibration of newcomers(byId, other, "calibration")) byId.set(calibration.id, calibration);
	let shared = 0;
	while (shared < own.length && own[shared].id === other[shared]?.id) shared++;
	if (shared === other.length) return own;
	if (shared === own.length) return other;
	const beginning = shared > 0 ? own.slice(0, shared) : [own[0].id < other[0].id ? own[0] : other[0]];
	for (const { id } of beginning) byId.delete(id);
	return [...beginning, ...[...byId.values()].sort((a, b) => (a.id < b.id ? -1 : 1))];
}

/**
 * Those of the others whose ids are not known yet. Throws DuplicateIdError where an id has other contents; its place in a
 * device's chain is no part of what an event says.
 */
export function newcomers<T extends LogEvent | Calibration>(
	known: ReadonlyMap<string, unknown>,
	others: readonly T[],
	of: "event" | "calibration",
): T[] {
	return others.filter((other) => {
		const present = known.get(other.id);
		if (present === undefined) return true;
		const same = of === "event" ? sameContents(unlinked(present), unlinked(other)) : sameContents(present, other);
		if (!same) throw new DuplicateIdError(of, other.id);
		return false;
	});
}
