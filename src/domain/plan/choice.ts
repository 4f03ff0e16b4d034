/** Which of many plans to recommend. */
import type { Pouring } from "./pouring";
import type { Chances, Target } from "./request";

export interface Candidate {
	readonly pouring: Pouring;
	readonly chances: Chances;
	/** In all; 0 where not every offer has a price, or all cost the same. */
	readonly cost: number;
}

/** Chances no further apart than this are alike to a driver (common practice). */
const alike = 0.005;

/** Where no plan is more likely inside than this, being inside does not tell plans apart (common practice). */
const nearlyNever = 0.05;

/**
 * The best of one or more candidates; `mixOf` tells the mean mix of one. The lean budget is a hard limit. Of those within
 * it: about as likely inside as can be, then the cheapest, the fewest products, the most likely inside. Where inside is out
 * of reach: the mix nearest the aim. Where none keeps the budget: the least likely lean, then the same. Of equals the first.
 */
export function bestOf(
	candidates: readonly Candidate[],
	{ budgets, aim }: Target,
	mixOf: (pouring: Pouring) => number,
): Candidate {
	const distance = ({ pouring }: Candidate) => Math.abs(mixOf(pouring) - aim);
	const kept = candidates.filter(({ chances }) => chances.above <= budgets.lean);
	if (kept.length === 0) {
		const least = candidates.reduce((found, { chances }) => Math.min(found, chances.above), 1);
		const nearly = candidates.filter(({ chances }) => chances.above <= leanLimit(least, budgets.lean));
		return leastBy(nearly, distance, cost, products);
	}
	const most = kept.reduce((found, { chances }) => Math.max(found, chances.inside), 0);
	if (most < nearlyNever) return leastBy(kept, distance, cost, products);
	const nearly = kept.filter(({ chances }) => chances.inside >= most - alike);
	return leastBy(nearly, cost, products, ({ chances }) => -chances.inside);
}

/** The lean chance that a plan may have, where the least that any has is `least`. */
export function leanLimit(least: number, budget: number): number {
	// Over a budget of next to nothing, a plan that adds more than that again is not alike.
	return least > budget ? least + Math.min(alike, budget / 2) : budget;
}

type Measure = (candidate: Candidate) => number;

const cost: Measure = (candidate) => candidate.cost;
const products: Measure = ({ pouring }) => (pouring.amount > 0 ? 2 : 1);

/** Differences below this are rounding, in money, chances and contents alike. */
const resolution = 1e-9;

/** The least by the first measure; of those that tie, by the next. */
function leastBy(candidates: readonly Candidate[], ...measures: readonly Measure[]): Candidate {
	let left = candidates;
	for (const measure of measures) {
		const values = left.map(measure);
		const least = values.reduce((found, value) => Math.min(found, value), Infinity);
		left = left.filter((_, i) => values[i] <= least + resolution);
	}
	return left[0];
}
