/** What short and long term trim add up to, step by step. */
import { bankTrim } from "../readings/trims";
import type { Grid } from "./grid";

/** The fuel added in all, (1 + short)(1 + long) − 1, NaN where it is not logged. */
export interface Trims {
	/** Mean of the banks that are logged: they burn the same fuel. */
	readonly both: Float32Array;
	/** One or two. */
	readonly banks: readonly Float32Array[];
	/** Short-term trims, or what stands for them: what moves while the loop is closed. */
	readonly moving: readonly Float32Array[];
}

/** Null where neither bank has both its trims. */
export function trimsOf({ means, steps }: Grid): Trims | null {
	const complete = [
		[means.short1, means.long1],
		[means.short2, means.long2],
	].flatMap(([short, long]) => (short && long ? [{ short, long }] : []));
	const inOne = means.total ? [{ short: means.total, long: new Float32Array(steps) }] : [];
	const pairs = complete.length > 0 ? complete : inOne;
	if (pairs.length === 0) return null;
	const banks = pairs.map(({ short, long }) =>
		short.map((value, i) => bankTrim({ shortTerm: value, longTerm: long[i] })),
	);
	return { both: meanOf(banks), banks, moving: pairs.map(({ short }) => short) };
}

function meanOf(banks: readonly Float32Array[]): Float32Array {
	if (banks.length === 1) return banks[0];
	const [first, second] = banks;
	return first.map((value, i) => (value + second[i]) / 2);
}

/** Mean over `length` steps around each, NaN where one of them is missing. */
export function smoothed(values: Float32Array, length: number): Float32Array {
	const before = length >> 1;
	return values.map((_, i) => {
		let sum = 0;
		const from = Math.max(0, i - before);
		const to = Math.min(values.length, from + length);
		for (let j = from; j < to; j++) sum += values[j];
		return sum / (to - from);
	});
}
