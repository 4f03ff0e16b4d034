/** What may be behind a contradiction, as data: the words are the screens' business. */
import type { Product } from "../event";
import type { Litres } from "../quantity";

/** One thing gone wrong; `event` is the id of the entry that it is about. */
export type Explanation =
	/** The reading says nothing. */
	| { readonly kind: "reading"; readonly event: string }
	/** The gauge was misread or mistyped. */
	| { readonly kind: "gauge"; readonly event: string }
	/** The nozzle clicked too early, or the tank was not filled until it did. */
	| { readonly kind: "click"; readonly event: string }
	| { readonly kind: "odometer"; readonly event: string }
	/** The start's contents were not what they were said to be. */
	| { readonly kind: "start"; readonly event: string }
	/** Another amount was poured: the decimal point or the unit slipped. */
	| { readonly kind: "amount"; readonly event: string; readonly litres: Litres }
	/** Another product was poured. */
	| { readonly kind: "product"; readonly event: string; readonly product: Product }
	/** The amounts of two fills of a stop, or their products, were exchanged. */
	| { readonly kind: "exchange"; readonly event: string; readonly other: string }
	/** The pump gave something far from its label. */
	| { readonly kind: "pump"; readonly event: string }
	/** A fill before this entry was never entered. */
	| { readonly kind: "missing"; readonly event: string; readonly product: Product };

export interface Weighed {
	readonly explanation: Explanation;
	/** Posterior chance. */
	readonly weight: number;
}

/** Everything that may explain the entries gone through, the likeliest first, and the chance that nothing is wrong with them. */
export interface Doubt {
	readonly nothing: number;
	readonly explanations: readonly Weighed[];
}

/**
 * How often such things go wrong, by entry, before anything is known; a reading's own chance stands in `constants.ts`. Slips of
 * one in a hundred to one in a thousand are usual where people choose and write down (NUREG/CR-1278, from memory); the rest is
 * common practice. They only matter against each other.
 */
export const priors = {
	gauge: 0.01,
	click: 0.01,
	odometer: 0.005,
	start: 0.01,
	tenfold: 0.003,
	unit: 0.001,
	product: 0.01,
	exchange: 0.003,
	pump: 0.002,
	missing: 0.01,
} as const;
