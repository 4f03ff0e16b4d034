/** What a write has changed, for the copy that is kept of it elsewhere. */
import type { Head } from "./head";

export interface WrittenCar {
	readonly carId: string;
	/** The car's head after it; its `car` is null where the car was removed. */
	readonly head: Head;
	/** Raw, where the car itself changed. */
	readonly car?: unknown;
	/** Raw, those that are new. */
	readonly events?: readonly unknown[];
}

export interface WrittenPreference {
	readonly preference: string;
	readonly value: unknown;
}

export type Written = WrittenCar | WrittenPreference;
