/**
 * Lambda under load against what is commanded. In open loop the injectors deliver the volume meant for the calibration's
 * fuel, so lambda is the commanded one times K(E)/K(E₀), and the ratio is a reading of the same thing as the trim. Where a
 * car carries its trims into open loop they hide it; 13 of the 25 cars screened in CRC E-87-1 did not.
 */
import { delayS, frozenWithin, highLoad, highManifold, modelSd, pullS, richest, warmC } from "./constants";
import type { Grid } from "./grid";
import { blockMeans, medianOf, robustMean, sdOfMean } from "./robust";
import { type Span, spansOf } from "./steady";
import type { Uncertainty } from "./trimReading";

export interface LoadFound extends Uncertainty {
	/** Measured over commanded, less 1. */
	readonly value: number;
	readonly pulls: number;
	readonly seconds: number;
	/** Median commanded lambda. */
	readonly commanded: number;
	/** Median long-term trim that the car showed meanwhile, the first bank; null where none is logged. */
	readonly longTrim: number | null;
}

export interface UnderLoad {
	readonly spans: readonly Span[];
	/** Pulls in which the short-term trims were at work: there the mixture is corrected, and tells nothing. */
	readonly corrected: number;
	/** Null where no pull tells anything. */
	readonly found: LoadFound | null;
}

/** Null where measured and commanded lambda are not both in the log, or nothing that tells the load. */
export function underLoad(grid: Grid): UnderLoad | null {
	const { means, stepS } = grid;
	const { lambda, commanded, short1, short2, long1 } = means;
	const high = highIn(grid);
	if (!lambda || !commanded || !high) return null;
	const delay = Math.ceil(delayS / stepS);
	const pulls = spansOf(high, (each) => each === 1)
		// The last step may hold the foot coming off.
		.map(({ from, to }) => ({ from: from + delay, to: to - 1 }))
		.filter(({ from, to }) => to - from >= pullS / stepS);
	const spans = pulls.filter(({ from, to }) => [short1, short2].every((short) => !short || !moves(short, from, to)));
	const corrected = pulls.length - spans.length;
	if (spans.length === 0) return { spans, corrected, found: null };
	const ratio = lambda.map((measured, i) => measured / commanded[i] - 1);
	const { value, within, between } = robustMean(
		spans.map((span) => {
			// A pull is short, and lambda has no beat in open loop: every step counts.
			const steps = blockMeans(ratio, span, 1);
			return { value: medianOf(steps), weight: steps.length * stepS, sd: sdOfMean(steps) };
		}),
	);
	const over = (mean: Float32Array) =>
		medianOf(Float32Array.from(spans.flatMap(({ from, to }) => [...mean.subarray(from, to)])));
	return {
		spans,
		corrected,
		found: {
			value,
			pulls: spans.length,
			seconds: spans.reduce((sum, { from, to }) => sum + (to - from) * stepS, 0),
			commanded: over(commanded),
			longTrim: long1 ? over(long1) : null,
			sd: Math.hypot(within, between, modelSd),
			within,
			between,
			banks: 0,
			model: modelSd,
		},
	};
}

/** 1 where the engine is warm, under load and in open loop. */
function highIn({ means, steps }: Grid): Uint8Array | null {
	const { coolant, load, throttle, manifold, lambda, commanded, fuelSystem } = means;
	const gauge = load ?? throttle ?? manifold;
	if (!gauge) return null;
	const limit = load || throttle ? highLoad : highManifold;
	const high = new Uint8Array(steps);
	for (let i = 0; i < steps; i++) {
		if (!(gauge[i] >= limit) || (coolant && !(coolant[i] >= warmC))) continue;
		if (!lambda || !commanded || Number.isNaN(lambda[i]) || Number.isNaN(commanded[i])) continue;
		const open = fuelSystem && !Number.isNaN(fuelSystem[i]) ? fuelSystem[i] === 0 : commanded[i] <= richest;
		if (open) high[i] = 1;
	}
	return high;
}

function moves(short: Float32Array, from: number, to: number): boolean {
	let least = Infinity;
	let most = -Infinity;
	for (let i = from; i < to; i++) {
		if (short[i] < least) least = short[i];
		if (short[i] > most) most = short[i];
	}
	return most - least > frozenWithin;
}

/**
 * How lambda under load and the trim of steady driving go together. `agree`: they say the same, as where trims are not
 * carried into open loop. `carried`: the trims correct but the mixture under load is as commanded, so it seems to be
 * corrected there too, and says nothing about the fuel. `differ`: neither explains the other. `alone`: no trim to hold it
 * against.
 */
export type Agreement = "agree" | "carried" | "differ" | "alone";

export function agreementOf(
	load: Uncertainty & { readonly value: number },
	trim: (Uncertainty & { readonly value: number }) | null,
): Agreement {
	if (!trim) return "alone";
	const apart = Math.abs(load.value - trim.value);
	const explains = Math.hypot(load.sd, trim.sd);
	const nearNothing = Math.abs(load.value) <= load.sd;
	if (nearNothing && Math.abs(trim.value) > trim.sd && Math.abs(load.value) < apart) return "carried";
	return apart <= explains ? "agree" : "differ";
}
