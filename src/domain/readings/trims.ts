/** Closed-loop fuel trims as a reading of the fuel demand, and what content that would be. */
import { contentAtDemand } from "../engine/fuelling";
import { fuelDemand } from "../fuel";
import type { Fraction } from "../quantity";
import { err, ok, type Result } from "../result";

/** Trims of one bank of cylinders, fractions. */
export interface BankTrims {
	readonly shortTerm: number;
	readonly longTerm: number;
}

export interface CombinedTrim {
	/** Mean over the banks. */
	readonly trim: number;
	/** Largest less smallest bank. */
	readonly spread: number;
}

/** Banks this far apart point to a leak or a sensor, not to the fuel (common practice: a few percent). */
export const unevenBanks = 0.05;

/** Most engine computers stop correcting about here (from memory; makers' fault limits lie between 23 and 45 %). */
export const usualTrimLimit = 0.25;

/** Short and long term multiply: the injected volume is the calibrated one times both corrections. */
export function bankTrim({ shortTerm, longTerm }: BankTrims): number {
	return (1 + shortTerm) * (1 + longTerm) - 1;
}

/**
 * Share of a trim's usual uncertainty that is the car's baseline, the same in all its trims (common practice: 2.5 of 3 % lie in
 * air meter, injectors and leaks, the rest in the day).
 */
export const baselineShare = 5 / 6;

export function combinedTrim(banks: readonly BankTrims[]): CombinedTrim {
	const trims = banks.map(bankTrim);
	const mean = trims.reduce((sum, trim) => sum + trim, 0) / trims.length;
	return { trim: mean, spread: Math.max(...trims) - Math.min(...trims) };
}

/** What a trim alone would say of the content, and the standard uncertainty that the trim's own becomes there. */
export interface ImpliedContent {
	readonly content: number;
	readonly sd: number;
}

/**
 * Content at which a calibration made for `calibratedFor` needs this trim: the inverse of `fuelDemand`. The reason why there
 * is none is the side on which the trim leaves 0 to 1.
 */
export function impliedContent(
	trim: number,
	sd: number,
	calibratedFor: number,
): Result<ImpliedContent, "below" | "above"> {
	const content = contentAtDemand(1 + trim, calibratedFor as Fraction);
	if (content === null) return err(trim < 0 ? "below" : "above");
	const air = (content: number) => 1 / fuelDemand(content, 0);
	const slope = air(0) - air(1);
	return ok({ content, sd: (sd * air(calibratedFor)) / ((1 + trim) ** 2 * slope) });
}
