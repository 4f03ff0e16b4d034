/** Readings of a content: mostly good, now and then rubbish. */
import { normalChance, normalDensity } from "../elementary";
import type { Belief } from "./belief";
import { rubbishChance } from "./constants";

/** Density of a reading where the truth is known: normal with the stated sd, or anything at all with density 1. */
export function readingLikelihood(value: number, truth: number, sd: number): number {
	return ((1 - rubbishChance) * normalDensity((value - truth) / sd)) / sd + rubbishChance;
}

/** How likely a reading at least so far out was, on either side, before it was taken and supposing it is not rubbish. */
export function chanceOf(belief: Belief, value: number, sd: Float64Array, truth: Float64Array): number {
	let total = 0;
	let lower = 0;
	for (let i = 0; i < truth.length; i++) {
		total += belief.weight[i];
		lower += belief.weight[i] * normalChance((value - truth[i]) / sd[i]);
	}
	return (2 * Math.min(lower, total - lower)) / total;
}
