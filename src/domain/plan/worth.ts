/** What a measurement is worth before it is made, and which of them are worth the trouble. */
import type { Fraction } from "../quantity";
import type { Offer } from "./request";

/** What the driver can measure: now, before anything more is poured, or once the fill is made as planned. */
export type Measure =
	/** A sample from the pump of an offer, by its place among the offers, in a water tube. */
	| { readonly kind: "pumpSample"; readonly offer: number; readonly product: Offer["product"] }
	/** Noting the fuel gauge before filling. */
	| { readonly kind: "gauge" }
	/** A sample from the tank in a water tube. */
	| { readonly kind: "tankSample"; readonly when: When }
	/** An analyser or sensor gauge reading the tank. */
	| { readonly kind: "analyser"; readonly when: When }
	/** The fuel trim that the engine has learned, on the flashed calibration. */
	| { readonly kind: "trim"; readonly when: When; readonly calibratedFor: Fraction }
	/** Filling to the nozzle's click, planned anew for that. */
	| { readonly kind: "click" };

/** `before`: before filling, or of the tank as it stands where no fill is planned. */
export type When = "before" | "after";

export interface Worth {
	readonly measure: Measure;
	/** Expected share by which it shrinks the central 90 % range of the content; below zero where it widens. */
	readonly narrowing: number;
	/** Expected rise of the chance of ending inside the window; 0 where nothing can be done with the answer. */
	readonly gain: number;
}

export interface Measures {
	/** True: all is about the content after the fill as planned. False: about the tank as it stands. */
	readonly filling: boolean;
	/** Width of the central 90 % range of that content, volume fraction. */
	readonly width: number;
	/** Chance of ending inside the window with none of them; null where no window is known. */
	readonly inside: number | null;
	/** The best first. */
	readonly worths: readonly Worth[];
}

/** Chances nearer than this are alike to a driver: half a dot of twenty. */
export const halfDot = 1 / 40;

/** Narrowings of less than this are not worth the trouble (common practice). */
export const leastNarrowing = 0.05;

/** Order of worth: what raises the chance most comes first; where that is about alike, what narrows most. */
export function byWorth(a: Worth, b: Worth): number {
	return Math.round(b.gain / halfDot) - Math.round(a.gain / halfDot) || b.narrowing - a.narrowing;
}

/** Those worth saying, the best first: none that lowers the chance, or does next to nothing. */
export function worthSaying({ worths }: Measures): Worth[] {
	return worths.filter(({ gain, narrowing }) => gain > -halfDot && (gain >= halfDot || narrowing >= leastNarrowing));
}
