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

export interface PlaceOffset extends Wandering {
	readonly product: string;
}

/** How far the trims of one calibration are off on their own fuel, normal in every particle; drifts like `Wandering`. */
export interface Baseline {
	/** Shares of the fuel demand. */
	readonly mean: Column;
	readonly variance: Column;
	readonly at: Instant;
	/** Spread before any trim was seen. */
	readonly sd: number;
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
	/** What the car burns, L of pure gasoline per km; null until a leg was measured. */
	readonly consumption: Column | null;
	/** Odometer where the last burning ended, km; null: not given, `unusable`: no leg can be measured from there. */
	readonly odometer: number | "unusable" | null;
	/** Relative weight, zero or more. */
	readonly weight: Column;
	/** Particles in ascending order of content. */
	readonly order: Uint32Array;
	/** Area level by product. */
	readonly areas: ReadonlyMap<string, Wandering>;
	/** Place offset by place and product, the product as in `areas`. */
	readonly places: ReadonlyMap<string, PlaceOffset>;
	/** Products that went into this tank since its account began: only their pumps have to do with what it holds. */
	readonly bought: ReadonlySet<string>;
	/** Trims on their own fuel, by the content that the calibration is made for. */
	readonly baselines: ReadonlyMap<number, Baseline>;
	/** Columns of the past that somebody asked to be carried along, by a name of their own; none in a belief that is kept. */
	readonly traced: ReadonlyMap<string, Column>;
	/** Id of the last stop, over or not: nothing is burned until another one begins. */
	readonly lastStop: string | null;
	/** The stop under way: what the tank held before its first fill can still be learned about. */
	readonly stop: StopMemory | null;
	readonly lawful: LawfulBelief;
}

/** The weights times the factors, the largest brought to 1; null where nothing is left, or a factor is beyond all numbers. */
export function reweighted(weight: Column, factor: Float64Array): Column | null {
	const size = weight.length;
	let largest = 0;
	for (let i = 0; i < size; i++) largest = Math.max(largest, weight[i] * factor[i]);
	if (!(largest > 0 && largest < Infinity)) return null;
	const result = new Float32Array(size);
	for (let i = 0; i < size; i++) result[i] = (weight[i] * factor[i]) / largest;
	return result;
}

/**
 * Indices of a column of numbers zero or more, in ascending order. The bits of such numbers order like whole numbers, so two
 * counting sorts by 16 bits each will do: several times quicker than comparing.
 */
export function ascending(column: Column): Uint32Array {
	const bits = new Uint32Array(column.buffer, column.byteOffset, column.length);
	return byDigit(byDigit(null, bits, 0), bits, 16);
}

/** Orders by the 16 bits above `shift`, keeping the order before where they tie. */
function byDigit(before: Uint32Array | null, bits: Uint32Array, shift: number): Uint32Array {
	const starts = new Uint32Array(65537);
	for (let i = 0; i < bits.length; i++) starts[((bits[i] >>> shift) & 0xffff) + 1]++;
	for (let digit = 0; digit < 65536; digit++) starts[digit + 1] += starts[digit];
	const order = new Uint32Array(bits.length);
	for (let i = 0; i < bits.length; i++) {
		const next = before ? before[i] : i;
		order[starts[(bits[next] >>> shift) & 0xffff]++] = next;
	}
	return order;
}
