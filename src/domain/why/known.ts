/** What it would be worth to know one quantity exactly: its part of the variance, and of the 90 % range. */
import { ascending, type Column } from "../estimator/belief";
import { quantilesOf } from "../estimator/quantile";

export interface Known {
	/** Variance of the content's mean over what the quantity may be, as a share of the content's variance: 0 to 1. */
	readonly share: number;
	/** Width of the content's central 90 % range that is to be expected once the quantity is known. */
	readonly width: number;
}

/** Classes that a quantity is sorted into, and the fewest effective particles in one: fewer make the quantiles too short. */
const [mostClasses, fewestClasses, leastInClass] = [32, 4, 128];

/**
 * First-order share of the variance, by the correlation ratio over classes of equal weight (K. Pearson, 1905; Saltelli and
 * others, Global Sensitivity Analysis, 2008, 1.2.4), and the mean width within them. The luck of the draw makes class means
 * differ as well: its part is reckoned from how the particles of one value of x lie together, and taken off. Within a class a
 * straight line stands for what is left of the relation.
 */
export function ifKnown(x: Column, y: Column, weight: Column): Known {
	const all = momentsOf(y, weight);
	if (!(all.variance > 0)) return { share: 0, width: 0 };
	const sorted = sortedBy(x);
	if (!(x[sorted[x.length - 1]] > x[sorted[0]])) return { share: 0, width: widthOf(y, weight) };
	const count = classCount(x, weight, sorted, all.weight);
	const classes = classesOf(sorted, weight, count, all.weight);
	const residual = new Float32Array(y.length);
	const of = new Uint8Array(y.length);
	let [explained, luck] = [0, 0];
	for (const [c, members] of classes.entries()) {
		const { mass, mean, line, noise } = regressed(members, x, y, weight, residual);
		const part = mass / all.weight;
		explained += part * ((mean - all.mean) ** 2 + line);
		// Of the mean and of the slope, each as much.
		luck += part * (2 - part) * noise;
		for (const i of members) of[i] = c;
	}
	const share = Math.min(1, Math.max(0, (explained - luck) / all.variance));
	return { share, width: meanWidth(residual, weight, of, classes) };
}

/** Width of the central 90 % range of a column. */
export function widthOf(y: Column, weight: Column): number {
	const quantile = quantilesOf(y, weight, sortedBy(y));
	return quantile(0.95) - quantile(0.05);
}

export function momentsOf(y: Column, weight: Column) {
	let [all, mean, variance] = [0, 0, 0];
	for (let i = 0; i < y.length; i++) {
		all += weight[i];
		mean += weight[i] * y[i];
	}
	mean /= all;
	for (let i = 0; i < y.length; i++) variance += weight[i] * (y[i] - mean) ** 2;
	return { weight: all, mean, variance: variance / all };
}

/** Particles in ascending order of any numbers. */
function sortedBy(x: Column): Uint32Array {
	let least = 0;
	for (let i = 0; i < x.length; i++) if (x[i] < least) least = x[i];
	return ascending(least < 0 ? x.map((value) => value - least) : x);
}

/** As many classes as the sample bears, by Kish's effective size of the values that are truly different. */
function classCount(x: Column, weight: Column, sorted: Uint32Array, total: number): number {
	let [squares, run] = [0, 0];
	for (let k = 0; k < sorted.length; k++) {
		run += weight[sorted[k]];
		if (k + 1 < sorted.length && x[sorted[k + 1]] === x[sorted[k]]) continue;
		squares += run * run;
		run = 0;
	}
	return Math.max(fewestClasses, Math.min(mostClasses, Math.floor((total * total) / squares / leastInClass)));
}

/** Of equal weight, as near as whole particles come. */
function classesOf(sorted: Uint32Array, weight: Column, count: number, total: number): Uint32Array[] {
	const classes: Uint32Array[] = [];
	let [from, reached] = [0, 0];
	for (let k = 0; k < sorted.length; k++) {
		reached += weight[sorted[k]];
		const last = k === sorted.length - 1;
		if (!last && (classes.length === count - 1 || reached < ((classes.length + 1) * total) / count)) continue;
		classes.push(sorted.subarray(from, k + 1));
		from = k + 1;
	}
	return classes;
}

/**
 * Writes what a straight line over x leaves of y in one class: its ends are not its middle. Told are the mean of y, the
 * variance along the line, and the one that the mean has from having been drawn, particles of the same x counting as one.
 */
function regressed(members: Uint32Array, x: Column, y: Column, weight: Column, residual: Column) {
	let [mass, mean, middle] = [0, 0, 0];
	for (const i of members) {
		mass += weight[i];
		mean += weight[i] * y[i];
		middle += weight[i] * x[i];
	}
	if (!(mass > 0)) return { mass: 0, mean: 0, line: 0, noise: 0 };
	mean /= mass;
	middle /= mass;
	let [spread, common] = [0, 0];
	for (const i of members) {
		spread += weight[i] * (x[i] - middle) ** 2;
		common += weight[i] * (x[i] - middle) * (y[i] - mean);
	}
	const slope = spread > 0 ? common / spread : 0;
	let [squares, family, families] = [0, 0, 0];
	for (let k = 0; k < members.length; k++) {
		const i = members[k];
		residual[i] = y[i] - slope * (x[i] - middle);
		family += weight[i] * (residual[i] - mean);
		if (k + 1 < members.length && x[members[k + 1]] === x[i]) continue;
		squares += family * family;
		families++;
		family = 0;
	}
	const noise = families > 1 ? (squares / (mass * mass)) * (families / (families - 1)) : 0;
	return { mass, mean, line: (slope * common) / mass, noise };
}

/** Mean over the classes of the width of the central 90 % range of what is left in each. */
function meanWidth(residual: Column, weight: Column, of: Uint8Array, classes: readonly Uint32Array[]): number {
	const inOrder = classes.map(({ length }) => ({
		values: new Float32Array(length),
		weights: new Float32Array(length),
	}));
	const placed = new Uint32Array(classes.length);
	for (const i of sortedBy(residual)) {
		const { values, weights } = inOrder[of[i]];
		const at = placed[of[i]]++;
		values[at] = residual[i];
		weights[at] = weight[i];
	}
	const widths = inOrder.map(({ values, weights }) => {
		const quantile = quantilesOf(values, weights, Uint32Array.from(values.keys()));
		return quantile(0.95) - quantile(0.05);
	});
	return widths.reduce((sum, width) => sum + width, 0) / classes.length;
}
