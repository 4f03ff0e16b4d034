/** What is believed about the tank, the car and the pumps: a weighted sample, one column per quantity. */
import type { Instant } from "../quantity";
import type { LawfulBelief } from "./lawful";
import type { StopMemory } from "./stop";

/** One number per particle. Single precision halves a checkpoint and rounds alike on every engine. */
export type Column = Float32Array;

/** Something of a pump that wanders, and when it was last looked at. */
export interface Wandering {
	readonly column: Column;
	readonly at: Instant;
}

/** Columns are never changed once a belief is out: absorbing an event makes new ones. Their length is a power of two. */
export interface Belief {
	/** Tank events absorbed since the account began, or began anew. */
	readonly age: number;
	/** Drawable fuel, L. */
	readonly level: Column;
	/** Its ethanol content, fraction. */
	readonly content: Column;
	/** True capacity over rated capacity. */
	readonly capacityFactor: Column;
	/** Mean of the gauge's bias given all else in the particle, fraction of capacity. */
	readonly biasMean: Column;
	/** Variance of the same, alike in all particles. */
	readonly biasVariance: number;
	/** Relative weight, zero or more. */
	readonly weight: Column;
	/** Particles in ascending order of content. */
	readonly order: Uint32Array;
	/** Area level by product. */
	readonly areas: ReadonlyMap<string, Wandering>;
	/** Place offset by place and product. */
	readonly places: ReadonlyMap<string, Wandering>;
	/** The stop under way: what the tank held before its first fill can still be learned about. */
	readonly stop: StopMemory | null;
	readonly lawful: LawfulBelief;
}

/** The weights times the factors, the largest brought to 1; null where nothing is left. */
export function reweighted(weight: Column, factor: Float64Array): Column | null {
	const size = weight.length;
	let largest = 0;
	for (let i = 0; i < size; i++) largest = Math.max(largest, weight[i] * factor[i]);
	if (!(largest > 0)) return null;
	const result = new Float32Array(size);
	for (let i = 0; i < size; i++) result[i] = (weight[i] * factor[i]) / largest;
	return result;
}

const buckets = 65536;

/** Indices of a column in ascending order, to 1/65536 of its largest value: a counting sort, several times quicker than comparing. */
export function ascending(column: Column): Uint32Array {
	let most = 0;
	for (let i = 0; i < column.length; i++) if (column[i] > most) most = column[i];
	const scale = most > 0 ? (buckets - 1) / most : 0;
	const starts = new Uint32Array(buckets + 1);
	for (let i = 0; i < column.length; i++) starts[((column[i] * scale) | 0) + 1]++;
	for (let b = 0; b < buckets; b++) starts[b + 1] += starts[b];
	const order = new Uint32Array(column.length);
	for (let i = 0; i < column.length; i++) order[starts[(column[i] * scale) | 0]++] = i;
	return order;
}
