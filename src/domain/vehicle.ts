/** The car as far as the account of its tank needs it. */
import type { FuelSystem } from "./engine/fuelSystem";
import type { ContentRange, Fraction, Litres } from "./quantity";

export interface Calibration {
	readonly id: string;
	readonly name: string;
	/** The content this calibration was made for. */
	readonly calibratedFor: Fraction;
	/** The contents it tolerates. Below it the engine may knock, above it open-loop fuelling runs lean. */
	readonly window: ContentRange;
	/** Accepted chance of being above the window; one in twenty unless set. */
	readonly leanBudget?: Fraction;
	/** Accepted chance of being below the window; one in twenty unless set. */
	readonly knockBudget?: Fraction;
	/** The leanest lambda at full load that its tuner accepts. */
	readonly leanestLambda?: number;
	/** What its tuner says besides, and how to go back to what was flashed before. */
	readonly notes?: string;
	readonly wayBack?: string;
}

export interface Tank {
	/** Rated capacity, L. */
	readonly capacityL: Litres;
	/** Standard uncertainty of a gauge reading, fraction of the capacity. */
	readonly gaugeSd?: number;
	/** Standard uncertainty of the level at the first click, fraction of the capacity. */
	readonly clickSd?: number;
}

export interface Car {
	readonly id: string;
	readonly name: string;
	readonly tank: Tank;
	readonly calibrations: readonly Calibration[];
	/** ISO 4217 code of the currency that its fuel is paid in. */
	readonly currency?: string;
	/** What is known of its injectors, pump and trims; nothing of it moves the account. */
	readonly fuelSystem?: FuelSystem;
	/** When each of these was changed last, ISO 8601, by the name of its field: of two copies of a car the later change counts. */
	readonly changed?: Readonly<Partial<Record<"name" | "tank" | "currency" | "fuelSystem", string>>>;
}
