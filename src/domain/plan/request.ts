/** What a driver asks before pumping, and the answer: how much of each, in which order. */
import type { Budgets } from "../estimator/stretch";
import type { Product } from "../event";
import type { ContentRange, Fraction, Litres } from "../quantity";

/** A product on sale where the car stands. */
export interface Offer {
	readonly product: Product;
	/** In any one currency; left out where nobody knows. */
	readonly pricePerLitre?: number;
}

/** Where and when; what is noted on arrival. */
export interface Visit {
	/** Id of the stop. */
	readonly stop: string;
	/** ISO 8601 with offset. */
	readonly at: string;
	readonly place?: string;
	/** Fuel gauge before the stop's first fill, fraction of the capacity. */
	readonly gauge?: Fraction;
	/** Odometer, km. */
	readonly odometerKm?: number;
}

/** How full: until the nozzle clicks, so many litres, or for so much money. */
export type Fullness =
	| { readonly kind: "click" }
	| { readonly kind: "litres"; readonly litres: Litres }
	| { readonly kind: "money"; readonly amount: number };

/** Where the blend is to end. */
export interface Target {
	readonly window: ContentRange;
	/** The content aimed at where the window itself is out of reach. */
	readonly aim: Fraction;
	readonly budgets: Budgets;
}

/** Amounts that a hand can hit and a dispenser sells, L. */
export interface Handling {
	readonly step: Litres;
	/** Least that the dispenser sells; 0 where it does not matter. */
	readonly minimum: Litres;
}

export interface PlanRequest {
	readonly offers: readonly Offer[];
	readonly fullness: Fullness;
	readonly target: Target;
	readonly handling: Handling;
	/** How many products may still be poured at this stop, one or two. */
	readonly pours: 1 | 2;
}

export interface PlannedPour {
	readonly product: Product;
	/** As the dispenser will display; for a pour to the click, the median of what will fit. */
	readonly litres: Litres;
	readonly toClick: boolean;
}

/** Chances of where a plan ends; they add up to one. */
export interface Chances {
	readonly below: number;
	readonly inside: number;
	readonly above: number;
}

export interface Plan {
	/** One or two, in the order to pump them. */
	readonly pours: readonly PlannedPour[];
	readonly chances: Chances;
	/** Content after it: median and ends of the central 90 % interval. */
	readonly content: { readonly median: Fraction; readonly low: Fraction; readonly high: Fraction };
	/** What it costs in all; null where a price is missing. */
	readonly cost: number | null;
	/** Chances with the same pours in the other order, where there are two. */
	readonly swapped: Chances | null;
}

/** Why nothing can be planned as asked. */
export type Unplannable =
	| { readonly code: "nothingOnSale" }
	/** Asked for less than the dispenser sells, or for nothing; `least` is what it sells, L. */
	| { readonly code: "tooLittle"; readonly least: Litres }
	/** Asked for more than surely fits; `room` is what does, L. */
	| { readonly code: "doesNotFit"; readonly room: Litres }
	/** The tank is as full as it gets, or what still fits is less than the dispenser sells. */
	| { readonly code: "full"; readonly room: Litres }
	| { readonly code: "noPrice"; readonly product: Product }
	/** The money does not buy the least that the dispenser sells. */
	| { readonly code: "tooLittleMoney" };

export interface Planned {
	readonly plan: Plan;
	/**
	 * `inside`: both chances within their budgets. `lean`: no plan keeps the lean chance within its budget, this one comes
	 * nearest. `knock`: the lean chance is kept, the other is not.
	 */
	readonly verdict: "inside" | "lean" | "knock";
	/**
	 * Contents that the tank and these products can reach at all, in nine cases of ten: a window that does not meet them is out
	 * of reach at this stop, whatever is poured.
	 */
	readonly reach: ContentRange;
}
