/** All cars, and which of them need somebody. */
import type { FleetCar, Glance } from "../keeper/glance";

export interface Fleet {
	/** What needs attention comes first. */
	readonly cars: readonly Watched[];
	/** Ids of those over a limit, or whose entries go against each other. */
	readonly over: readonly string[];
}

/** A car of this phone, as the watch sees it. */
export interface Watched extends FleetCar {
	/** It could not be reckoned. */
	readonly failed?: boolean;
}

/** A row of a list of cars, whether they are on this phone or not. */
export type Listed = Glance & Partial<Pick<Watched, "current" | "checked" | "failed">>;
