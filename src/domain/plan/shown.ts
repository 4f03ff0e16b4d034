/** What an instrument may come to show, reckoned before it is read: a few dozen outcomes stand for all of them. */
import { normalDensity } from "../elementary";
import type { Column } from "../estimator/belief";
import { readingLikelihood } from "../estimator/reading";
import type { Instrument } from "./instrument";

/** Particles sorted into classes by what the instrument would ideally show. */
export interface Classes {
	/** Class of each particle. */
	readonly of: Uint16Array;
	/** Middle of each class. */
	readonly middle: Float64Array;
	/** Distance between the middles. */
	readonly step: number;
}

/** One outcome: its chance, and how likely it was in each class. */
export interface Shown {
	readonly chance: number;
	readonly likelihood: Float64Array;
}

const classCount = 256;

/** Uncertainties of a reading past which it is hardly ever found. */
const reach = 4;

/** Classes of equal width from the least to the largest truth. */
export function classesOf(truth: Float64Array): Classes {
	let [least, most] = [Infinity, -Infinity];
	for (let i = 0; i < truth.length; i++) {
		if (truth[i] < least) least = truth[i];
		if (truth[i] > most) most = truth[i];
	}
	const step = (most - least) / classCount;
	const of = new Uint16Array(truth.length);
	if (step > 0)
		for (let i = 0; i < of.length; i++) of[i] = Math.min(classCount - 1, Math.floor((truth[i] - least) / step));
	return { of, middle: Float64Array.from({ length: classCount }, (_, c) => least + (c + 0.5) * step), step };
}

/** Weight of each class; every particle counts one where no weights are given. */
export function massOf({ of, middle }: Pick<Classes, "of" | "middle">, weight?: Column): Float64Array {
	const mass = new Float64Array(middle.length);
	for (let i = 0; i < of.length; i++) mass[of[i]] += weight ? weight[i] : 1;
	return mass;
}

/** Sum over classes. */
export function weighted(mass: Float64Array, likelihood: ArrayLike<number>): number {
	let sum = 0;
	for (let c = 0; c < mass.length; c++) sum += mass[c] * likelihood[c];
	return sum;
}

/**
 * Outcomes one standard uncertainty apart, over all that the classes may show: for sums over bells that wide, as exact as
 * they need be (trapezoidal rule). Their chances add up to less than one: the rest is rubbish, which tells nothing. `mass` is
 * the weight of each class. An instrument finer than the classes is taken to be as fine as they are.
 */
export function outcomesOf({ middle, step }: Classes, mass: Float64Array, instrument: Instrument): Shown[] {
	let [total, from, to, apart] = [0, Infinity, -Infinity, Infinity];
	const sds = middle.map((truth) => Math.max(instrument.sd(truth), step));
	for (let c = 0; c < classCount; c++) {
		total += mass[c];
		if (!(mass[c] > 0)) continue;
		from = Math.min(from, middle[c] - reach * sds[c]);
		to = Math.max(to, middle[c] + reach * sds[c]);
		apart = Math.min(apart, sds[c]);
	}
	const shown: Shown[] = [];
	for (let k = 0; k <= (to - from) / apart; k++) {
		const value = from + k * apart;
		const likelihood = middle.map((truth, c) => density(value, truth, sds[c], instrument.rubbish));
		shown.push({ chance: (weighted(mass, likelihood) / total) * apart, likelihood });
	}
	// Rubbish over more than a whole unit would count double, and an edge may have been cut by rounding.
	const sum = shown.reduce((all, { chance }) => all + chance, 0);
	return sum > 1 ? shown.map(({ chance, likelihood }) => ({ chance: chance / sum, likelihood })) : shown;
}

function density(value: number, truth: number, sd: number, rubbish: boolean): number {
	return rubbish ? readingLikelihood(value, truth, sd) : normalDensity((value - truth) / sd) / sd;
}
