/** What is known of the fuel that a pump delivers, and how that fades while nobody looks. */
import type { Product } from "../event";
import type { Fraction, Instant } from "../quantity";
import { seedsFor } from "../random";
import { ascending, type Belief } from "./belief";
import { drawsFor } from "./draws";
import { deliver } from "./pump";
import { quantilesOf } from "./quantile";
import { prepared } from "./resample";

export interface PumpView {
	/** Content that a purchase now would deliver: median and ends of the central 90 % interval. */
	readonly median: Fraction;
	readonly low: Fraction;
	readonly high: Fraction;
	/** Twenty equally likely contents. */
	readonly dots: readonly Fraction[];
	/** Width of the central 90 % interval of a pump of which nothing but the label is known. */
	readonly labelWidth: number;
	/** Share by which the interval is narrower than that; 0 where nothing was learned, or nothing is to be learned. */
	readonly better: number;
	/** Width of the interval after so many days from now with no visit and no sample; the first is now. */
	readonly fading: readonly { readonly days: number; readonly width: number }[];
}

/** Days without a visit for which the width is told. */
const fadingDays = [0, 30, 90, 180] as const;

/** A sample that tells the ends of an interval to about a hundredth of its width. Of one that size, views are quicker. */
export const pumpSample = 2 ** 13;

const dayMs = 86_400_000;
const dotCount = 20;

/** What a product's pump would deliver at an instant; without a place, any pump of the area that was never visited. */
export function pumpView(belief: Belief, product: Product, place: string | undefined, at: Instant): PumpView {
	const known = prepared(belief, pumpSample, seedsFor("pump view"));
	const unknown: Belief = {
		...known,
		weight: new Float32Array(pumpSample).fill(1),
		areas: new Map(),
		places: new Map(),
	};
	// The same draws for every day: what differs is the knowledge, not the luck.
	const contentAfter = (from: Belief, days: number) => {
		const draws = drawsFor(pumpSample, seedsFor(`pump view of ${product.id}`));
		const { delivered } = deliver(from, product, place, (at + days * dayMs) as Instant, draws);
		return quantilesOf(delivered, from.weight, ascending(delivered));
	};
	const widthOf = (content: (chance: number) => number) => content(0.95) - content(0.05);
	const now = contentAfter(known, 0);
	const labelWidth = widthOf(contentAfter(unknown, 0));
	return {
		median: now(0.5) as Fraction,
		low: now(0.05) as Fraction,
		high: now(0.95) as Fraction,
		dots: Array.from({ length: dotCount }, (_, i) => now((2 * i + 1) / (2 * dotCount)) as Fraction),
		labelWidth,
		better: labelWidth > 0 ? Math.max(0, 1 - widthOf(now) / labelWidth) : 0,
		fading: fadingDays.map((days) => ({ days, width: widthOf(contentAfter(known, days)) })),
	};
}
