/** What a belief says in numbers. */
import type { ContentRange, Fraction, Litres } from "../quantity";
import { ascending, type Belief } from "./belief";
import { quantilesOf } from "./quantile";

export interface Estimate {
	readonly median: Fraction;
	/** Ends of the central 90 % interval. */
	readonly low: Fraction;
	readonly high: Fraction;
	/** Chances of being below and above the window; null where no window is known. */
	readonly below: Fraction | null;
	readonly above: Fraction | null;
	/** What the labels and the level readings allow, see lawful.ts. */
	readonly lawfulLow: Fraction;
	readonly lawfulHigh: Fraction;
	/** Twenty equally likely contents, the 1/40, 3/40, … 39/40 quantiles. */
	readonly dots: readonly Fraction[];
}

/** Drawable fuel: median and ends of the central 90 % interval, L. */
export interface LevelEstimate {
	readonly median: Litres;
	readonly low: Litres;
	readonly high: Litres;
}

const dotCount = 20;

/** Contents this near an edge of the window lie on it, and so inside: mixing rounds in the seventh place. */
export const edgeWidth = 1e-6;

export function estimateOf(belief: Belief, window: ContentRange | null): Estimate {
	const { weight } = belief;
	const content = quantilesOf(belief.content, weight, belief.order);
	let total = 0;
	let below = 0;
	let above = 0;
	for (let i = 0; i < weight.length; i++) {
		total += weight[i];
		if (!window) continue;
		if (belief.content[i] < window[0] - edgeWidth) below += weight[i];
		else if (belief.content[i] > window[1] + edgeWidth) above += weight[i];
	}
	return {
		median: content(0.5) as Fraction,
		low: content(0.05) as Fraction,
		high: content(0.95) as Fraction,
		below: window && ((below / total) as Fraction),
		above: window && ((above / total) as Fraction),
		lawfulLow: belief.lawful.content[0],
		lawfulHigh: belief.lawful.content[1],
		dots: Array.from({ length: dotCount }, (_, i) => content((2 * i + 1) / (2 * dotCount)) as Fraction),
	};
}

export function levelOf(belief: Belief): LevelEstimate {
	const level = quantilesOf(belief.level, belief.weight, ascending(belief.level));
	return { median: level(0.5) as Litres, low: level(0.05) as Litres, high: level(0.95) as Litres };
}
