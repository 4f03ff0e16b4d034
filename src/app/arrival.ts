/** What is noted on arrival at a stop, and whether it is still what a plan was made with. */
import type { FillDraft } from "./fillDraft";
import { readOdometer } from "./stopDetails";

export interface Arrival {
	readonly place: string | null;
	/** ISO 8601 with offset; null: when it is saved. */
	readonly at: string | null;
	/** Fraction of the capacity; null: nobody looked. */
	readonly gauge: number | null;
	/** Km; null: not noted. */
	readonly odometerKm: number | null;
}

export type ArrivalPart = "place" | "time" | "gauge" | "odometer";

export function arrivalOf({ place, at, gauge, odometer, unit }: FillDraft): Arrival {
	const read = readOdometer(odometer, unit);
	return { place, at, gauge, odometerKm: read.ok ? read.value : null };
}

/** What differs now; nothing where it is not known what it was. */
export function changedSince(then: Arrival | undefined, draft: FillDraft): ArrivalPart[] {
	if (!then) return [];
	const now = arrivalOf(draft);
	const changed: readonly (ArrivalPart | false)[] = [
		then.gauge !== now.gauge && "gauge",
		then.place !== now.place && "place",
		then.at !== now.at && "time",
		odometerDiffers(then.odometerKm, now.odometerKm) && "odometer",
	];
	return changed.filter((part) => part !== false);
}

/** In another unit it is the same to a tenth: that is how it is typed. */
function odometerDiffers(a: number | null, b: number | null): boolean {
	return a === null || b === null ? a !== b : Math.abs(a - b) > 0.1;
}
