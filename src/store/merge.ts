/** The union of two copies of a car's log. */
import type { LogEvent } from "../domain/event";
import type { Calibration, Car } from "../domain/vehicle";
import { unlinked } from "./chain";
import { DuplicateIdError } from "./errors";
import { sameContents } from "./sameContents";

export interface MergedCar {
	readonly car: Car;
	/** The other copy has another name or tank, which was not taken. */
	readonly keptOwnSettings: boolean;
}

/** The own car with the other's calibrations added. Throws DuplicateIdError. */
export function mergeCars(own: Car, other: Car): MergedCar {
	return {
		car: { ...own, calibrations: mergeCalibrations(own.calibrations, other.calibrations) },
		keptOwnSettings: own.name !== other.name || !sameContents(own.tank, other.tank),
	};
}

/**
 * The first calibration is in force until an event says otherwise, so both phones must come to one order: that of the
 * longer list if it continues the other; else the beginning they share stays and the rest goes by id.
 */
function mergeCalibrations(own: readonly Calibration[], other: readonly Calibration[]): readonly Calibration[] {
	const byId = new Map(own.map((calibration) => [calibration.id, calibration]));
	for (const calibration of newcomers(byId, other, "calibration")) byId.set(calibration.id, calibration);
	let shared = 0;
	while (shared < own.length && own[shared].id === other[shared]?.id) shared++;
	if (shared === other.length) return own;
	if (shared === own.length) return other;
	const beginning = own.slice(0, shared);
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
