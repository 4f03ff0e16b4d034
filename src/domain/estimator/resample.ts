/** Drawing a fresh, equally weighted sample once few particles carry most of the weight, and choosing how large it is. */
import { type Seeds, uniform } from "../random";
import type { Belief, Column, Wandering } from "./belief";
import { quantilesOf } from "./quantile";
import { largeSample, smallSample } from "./sampleSize";

/** Tank events since the account began (anew) during which it counts as young. */
const youngUntil = 12;
/** 90 % range of the content, above which it counts as little known. */
const wide = 0.4;

/** Share of the sample that must still count, by Kish's effective size, for it to be left alone. */
const enough = 0.6;

/** The sample size that absorbing one more event asks for. */
export function fittingSize(belief: Belief): number {
	return belief.age < youngUntil || contentSpread(belief) > wide ? largeSample : smallSample;
}

/** The belief with a sample of that size, drawn afresh if the weights have become too uneven. */
export function prepared(belief: Belief, size: number, seeds: Seeds): Belief {
	return size === belief.weight.length && effectiveShare(belief.weight) >= enough ? belief : drawn(belief, size, seeds);
}

/** Kish's effective sample size, as a share of the sample. */
export function effectiveShare(weight: Column): number {
	let total = 0;
	let squares = 0;
	for (let i = 0; i < weight.length; i++) {
		total += weight[i];
		squares += weight[i] * weight[i];
	}
	return (total * total) / (squares * weight.length);
}

function contentSpread(belief: Belief): number {
	const content = quantilesOf(belief.content, belief.weight, belief.order);
	return content(0.95) - content(0.05);
}

/**
 * Systematic resampling along the order of content, which leaves the reported distribution nearly untouched
 * (Kitagawa, J. Comput. Graph. Stat. 5 (1996) 1, appendix). The new sample comes out in that order.
 */
function drawn(belief: Belief, size: number, seeds: Seeds): Belief {
	const { weight, order, stop } = belief;
	const parent = new Uint32Array(size);
	let total = 0;
	for (let i = 0; i < weight.length; i++) total += weight[i];
	const step = total / size;
	const start = uniform(seeds);
	const ranks = new Uint32Array(size);
	let at = 0;
	let reached = weight[order[0]];
	for (let i = 0; i < size; i++) {
		const mark = (i + start) * step;
		while (reached < mark && at < order.length - 1) reached += weight[order[++at]];
		parent[i] = order[at];
		ranks[i] = i;
	}
	return {
		...belief,
		level: pick(belief.level),
		content: pick(belief.content),
		capacityFactor: pick(belief.capacityFactor),
		biasMean: pick(belief.biasMean),
		consumption: belief.consumption && pick(belief.consumption),
		weight: new Float32Array(size).fill(1),
		order: ranks,
		areas: pickAll(belief.areas),
		places: pickAll(belief.places),
		baselines: new Map(
			[...belief.baselines].map(([key, baseline]) => [
				key,
				{ ...baseline, mean: pick(baseline.mean), variance: pick(baseline.variance) },
			]),
		),
		traced: new Map([...belief.traced].map(([key, column]) => [key, pick(column)])),
		stop: stop && {
			...stop,
			levelBound: pick(stop.levelBound),
			contentBefore: pick(stop.contentBefore),
			biasBefore: pick(stop.biasBefore),
			poured: pick(stop.poured),
			pouredEthanol: pick(stop.pouredEthanol),
			saidMean: pick(stop.saidMean),
			saidPrecision: pick(stop.saidPrecision),
			saidFactor: pick(stop.saidFactor),
			counted: pick(stop.counted),
			legStart: stop.legStart && { ...stop.legStart, level: pick(stop.legStart.level) },
			leg: stop.leg && {
				expected: pick(stop.leg.expected),
				consumptionBefore: stop.leg.consumptionBefore && pick(stop.leg.consumptionBefore),
			},
		},
	};

	function pick<Numbers extends Float32Array | Float64Array>(from: Numbers): Numbers {
		const result = (from instanceof Float64Array ? new Float64Array(size) : new Float32Array(size)) as Numbers;
		for (let i = 0; i < size; i++) result[i] = from[parent[i]];
		return result;
	}
	function pickAll<Seen extends Wandering>(from: ReadonlyMap<string, Seen>): Map<string, Seen> {
		return new Map([...from].map(([key, seen]) => [key, { ...seen, column: pick(seen.column) }]));
	}
}
