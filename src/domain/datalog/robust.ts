/** One value from many stretches of unlike length, and how uncertain it is. */
import { spreadWeight, usualSpread } from "./constants";
import type { Span } from "./steady";

/** A stretch's own value, its weight, and the standard uncertainty of that value from within the stretch. */
export interface Part {
	readonly value: number;
	readonly weight: number;
	readonly sd: number;
}

export interface Robust {
	readonly value: number;
	/** Standard uncertainty from within the stretches. */
	readonly within: number;
	/** Standard uncertainty from how far the stretches lie apart. */
	readonly between: number;
}

/** Spread of a median over that of a mean, for normal errors: √(π/2). */
const medianOverMean = 1.2533;

/**
 * The weighted median, which a third of odd stretches cannot carry away. How far the stretches lie apart is weighed against
 * what is usual, since two or three stretches hardly tell (Gelman et al., Bayesian Data Analysis, 3rd ed., section 2.6).
 */
export function robustMean(parts: readonly Part[]): Robust {
	const total = parts.reduce((sum, { weight }) => sum + weight, 0);
	const value = weightedMedian(parts);
	const share = parts.map(({ weight }) => weight / total);
	const squares = share.reduce((sum, each) => sum + each * each, 0);
	// So many stretches of like length would tell as much.
	const count = 1 / squares;
	const scatter = parts.reduce((sum, part, i) => sum + share[i] * (part.value - value) ** 2, 0);
	const variance = (spreadWeight * usualSpread ** 2 + count * scatter) / (spreadWeight + count - 1);
	const within = Math.sqrt(parts.reduce((sum, { sd }, i) => sum + (share[i] * sd) ** 2, 0));
	return { value, within, between: medianOverMean * Math.sqrt(variance * squares) };
}

/** Half of the weight lies on either side. */
export function weightedMedian(parts: readonly Pick<Part, "value" | "weight">[]): number {
	const sorted = [...parts].sort((a, b) => a.value - b.value);
	const half = sorted.reduce((sum, { weight }) => sum + weight, 0) / 2;
	let below = 0;
	for (const [i, { value, weight }] of sorted.entries()) {
		below += weight;
		if (below > half) return value;
		if (below === half) return (value + (sorted[i + 1]?.value ?? value)) / 2;
	}
	return Number.NaN;
}

/** Median of a part of a column, what is missing left out. */
export function medianOf(values: Float32Array, from = 0, to = values.length): number {
	const sorted = values
		.slice(from, to)
		.filter((value) => !Number.isNaN(value))
		.sort();
	const middle = sorted.length >> 1;
	return sorted.length === 0 ? Number.NaN : (sorted[middle] + sorted[sorted.length - 1 - middle]) / 2;
}

/** Means of a part of a column over blocks, which are long against the beat of the loop; what is missing is left out. */
export function blockMeans(values: Float32Array, { from, to }: Span, block: number): Float32Array {
	const means: number[] = [];
	for (let i = from; i === from || i + block <= to; i += block) {
		let sum = 0;
		let count = 0;
		for (let j = i; j < Math.min(to, i + block); j++) {
			if (Number.isNaN(values[j])) continue;
			sum += values[j];
			count++;
		}
		if (count > 0) means.push(sum / count);
	}
	return Float32Array.from(means);
}

/** Standard uncertainty of the mean of blocks. A single block tells nothing of it: then what is usual. */
export function sdOfMean(blocks: Float32Array): number {
	const mean = blocks.reduce((sum, each) => sum + each, 0) / blocks.length;
	const squares = blocks.reduce((sum, each) => sum + (each - mean) ** 2, 0);
	return blocks.length < 2 ? usualSpread : Math.sqrt(squares / (blocks.length - 1) / blocks.length);
}
