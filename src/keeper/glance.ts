/** A car in one row of a list. */
import type { Surprise } from "../domain/estimator/absorb";
import type { Calibration } from "../domain/vehicle";
import type { Chances } from "../store/report";

export interface Glance {
	readonly carId: string;
	readonly name: string;
	/** Null while nothing is known of its tank. */
	readonly figures: Chances | null;
	/** In force; null: none. */
	readonly calibration: Calibration | null;
	/** What was odd about the last entry. */
	readonly surprise: Surprise | null;
	/** The last entries contradict each other. */
	readonly grave: boolean;
	/** Of the last entry that concerns the tank, ISO 8601; null: there is none. */
	readonly lastAt: string | null;
}

/** A car of this phone. */
export interface FleetCar extends Glance {
	/** Whether this is its log as it stands; else it is still to be reckoned, and nothing is said of its tank. */
	readonly current: boolean;
	/** Whether the driver has gone through what is odd about its last entries. */
	readonly checked: boolean;
}

/** Under which draft it is kept that what is odd was gone through: the entries in question, as `aboutOf` has them. */
export const checkedKey = (carId: string): string => `${carId}/checked`;

/** Which entries are in question: any new one makes another text. */
export function aboutOf(entries: readonly { readonly id: string }[]): string {
	return JSON.stringify(entries.map(({ id }) => id));
}
