/** Readings of a content: mostly good, now and then rubbish. */
import { normalChance, normalDensity } from "../elementary";
import { type Belief, reweighted } from "./belief";
import { rubbishChance } from "./constants";

/** Density of a reading where the truth is known: normal with the stated sd, or anything at all with density 1. */
export function readingLikelihood(value: number, truth: number, sd: number): number {
	return ((1 - rubbishChance) * normalDensity((value - truth) / sd)) / sd + rubbishChance;
}

/** The belief weighed by a reading of what `truth` holds for each particle. */
export function weighed(belief: Belief, value: number, sd: number, truth: Float64Array): Belief {
	const factor = new Float64Array(truth.length);
	for (let i = 0; i < truth.length; i++) factor[i] = readingLikelihood(value, truth[i], sd);
	return { ...belief, weight: reweighted(belief.weight, factor) ?? belief.weight };
}

/** How likely a reading at least so far out was, on either side, before it was taken and supposing it is not rubbish. */
export function chanceOf(belief: Belief, value: number, sd: number, truth: Float64Array): number {
	let total = 0;
	let lower = 0;
	for (let i = 0; i < truth.length; i++) {
		total += belief.weight[i];
		lower += belief.weight[i] * normalChance((value - truth[i]) / sd);
	}
	return (2 * Math.min(lower, total - lower)) / total;
}
