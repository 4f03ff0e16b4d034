/** The fuel trim of a log: one value from its steady stretches. */
import { modelSd, settlingS } from "./constants";
import type { Grid } from "./grid";
import { blockMeans, medianOf, type Part, robustMean, sdOfMean, weightedMedian } from "./robust";
import { type Reason, steadySpans } from "./steady";
import { type Trims, trimsOf } from "./trims";

export interface Stretch {
	/** From the beginning of the log, s. */
	readonly fromS: number;
	readonly toS: number;
	/** (1 + short)(1 + long) − 1, the banks' mean. */
	readonly trim: number;
	/** By bank. */
	readonly banks: readonly number[];
}

/** Where a standard uncertainty comes from; they add up in squares. */
export interface Uncertainty {
	readonly sd: number;
	readonly within: number;
	readonly between: number;
	/** From the banks' lying apart. */
	readonly banks: number;
	/** What a trim says about the fuel at all. */
	readonly model: number;
}

export interface TrimFound extends Uncertainty {
	/** K(E)/K(E₀) − 1. */
	readonly value: number;
	/** By bank. */
	readonly banksApart: readonly number[];
	/** All of it, s. */
	readonly seconds: number;
}

export interface SteadyTrim {
	readonly trims: Trims;
	readonly stretches: readonly Stretch[];
	/** Seconds that say nothing, by the reason. */
	readonly left: Readonly<Record<Reason, number>>;
	/** Null where no stretch is steady. */
	readonly found: TrimFound | null;
}

/** Null where the log has no trims, or not both of one bank. */
export function steadyTrim(grid: Grid): SteadyTrim | null {
	const trims = trimsOf(grid);
	if (!trims) return null;
	const { spans, left } = steadySpans(grid, trims);
	const { stepS } = grid;
	const block = Math.max(1, Math.round(settlingS / stepS));
	const stretches = spans.map((span): Stretch => {
		const banks = trims.banks.map((bank) => medianOf(blockMeans(bank, span, block)));
		const trim = medianOf(blockMeans(trims.both, span, block));
		return { fromS: span.from * stepS, toS: span.to * stepS, trim, banks };
	});
	const parts = spans.map((span, i) => ({
		value: stretches[i].trim,
		weight: (span.to - span.from) * stepS,
		sd: sdOfMean(blockMeans(trims.both, span, block)),
	}));
	return { trims, stretches, left, found: spans.length > 0 ? foundIn(parts, stretches) : null };
}

function foundIn(parts: readonly Part[], stretches: readonly Stretch[]): TrimFound {
	const { value, within, between } = robustMean(parts);
	const banksApart = stretches[0].banks.map((_, bank) =>
		weightedMedian(stretches.map(({ banks }, i) => ({ value: banks[bank], weight: parts[i].weight }))),
	);
	// The standard error of a mean of two.
	const banks = banksApart.length > 1 ? Math.abs(banksApart[0] - banksApart[1]) / 2 : 0;
	return {
		value,
		banksApart,
		seconds: parts.reduce((sum, { weight }) => sum + weight, 0),
		sd: Math.hypot(within, between, banks, modelSd),
		within,
		between,
		banks,
		model: modelSd,
	};
}
