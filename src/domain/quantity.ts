/**
 * Conventions of the whole core. All volumes are litres at pump conditions; all contents are volume
 * fractions of ethanol, 0 to 1; all instants are milliseconds since 1970 UTC; durations are days.
 * The screens convert, nothing in here does.
 */

declare const unit: unique symbol;
type Quantity<Unit extends string> = number & { readonly [unit]: Unit };

/** Volume, L. */
export type Litres = Quantity<"litres">;
/** Volume fraction of ethanol (or of the tank's capacity, for a gauge), 0 to 1. */
export type Fraction = Quantity<"fraction">;
/** Milliseconds since 1970-01-01 UTC. */
export type Instant = Quantity<"instant">;
/** Closed interval of contents, low end first. */
export type ContentRange = readonly [low: Fraction, high: Fraction];

/** Throws unless zero or more and finite. */
export function litres(value: number): Litres {
	if (!(value >= 0 && value < Infinity)) throw new RangeError(`litres must be zero or more, got ${value}`);
	return value as Litres;
}

/** Throws unless from 0 to 1. */
export function fraction(value: number): Fraction {
	if (!(value >= 0 && value <= 1)) throw new RangeError(`fraction must be from 0 to 1, got ${value}`);
	return value as Fraction;
}

/** Throws unless both ends are fractions and in order. */
export function contentRange(low: number, high: number): ContentRange {
	if (!(low <= high)) throw new RangeError(`range must run from low to high, got ${low} to ${high}`);
	return [fraction(low), fraction(high)];
}

/** Reads an ISO 8601 time with offset; throws where it is none. */
export function instant(iso: string): Instant {
	const value = Date.parse(iso);
	if (!Number.isFinite(value)) throw new RangeError(`time must be ISO 8601, got ${iso}`);
	return value as Instant;
}

const dayMs = 86_400_000;

/** Days from one instant to a later one; a clock that ran backwards counts as no time at all. */
export function daysBetween(from: Instant, to: Instant): number {
	return Math.max(0, (to - from) / dayMs);
}
