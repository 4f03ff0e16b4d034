/** The rule-of-thumb table made honest: what amounts of two products make of this very tank. */
import { ascending, type Column } from "../estimator/belief";
import { edgeWidth } from "../estimator/estimate";
import { quantilesOf } from "../estimator/quantile";
import type { Budgets } from "../estimator/stretch";
import type { ContentRange, Fraction, Litres } from "../quantity";
import type { Chances, Planned } from "./request";
import { verdictOf } from "./search";
import type { Standing } from "./standing";

/** Amounts of each of two products, L, ascending. */
export interface MixGrid {
	readonly first: readonly Litres[];
	readonly second: readonly Litres[];
}

export type MixVerdict = Planned["verdict"];

export interface MixCell {
	/** Chance that so much goes in before the nozzle clicks. */
	readonly fits: number;
	/** What the tank then holds; null where so much will hardly fit. */
	readonly mix: Mix | null;
}

export interface Mix {
	readonly median: Fraction;
	/** Ends of the central 90 % interval. */
	readonly low: Fraction;
	readonly high: Fraction;
	/** Null where no window is known. */
	readonly judged: { readonly chances: Chances; readonly verdict: MixVerdict } | null;
}

/** So much of the first product, then the second to the click; `litres` is the median of what then goes in of it. */
export interface ClickCell extends MixCell {
	readonly litres: Litres;
}

export interface MixRow {
	/** Of the first product, L. */
	readonly first: Litres;
	/** One for each amount of the second product. */
	readonly cells: readonly MixCell[];
	readonly toClick: ClickCell;
}

export interface MixTable {
	readonly grid: MixGrid;
	readonly rows: readonly MixRow[];
}

/** What a mix is held against. */
export interface MixTarget {
	readonly window: ContentRange;
	readonly budgets: Budgets;
}

/** Chance of fitting below which a mix is not worth telling: there is nothing left that it would be about. */
const hardly = 0.05;

/** Sums of litres are rounded to less than this, L. */
const roundingL = 1e-9;

/**
 * Every mix of the grid, of the standing's first two offers. What a mix makes of the tank is told for the tanks that it fits
 * in, as the nozzle would click before in the others.
 */
export function mixTableOf(standing: Standing, grid: MixGrid, target: MixTarget | null): MixTable {
	if (standing.delivered.length < 2) throw new RangeError("a table of mixes takes two offers");
	const rows = grid.first.map((first) => ({
		first,
		cells: grid.second.map((second) => cellOf(standing, first, second, target)),
		toClick: clickCellOf(standing, first, target),
	}));
	return { grid, rows };
}

function clickCellOf(standing: Standing, first: Litres, target: MixTarget | null): ClickCell {
	const { room, weight } = standing;
	const rest = Float32Array.from(room, (litres) => Math.max(0, litres - first));
	const litres = quantilesOf(rest, weight, ascending(rest))(0.5) as Litres;
	return { ...cellOf(standing, first, null, target), litres };
}

/** The cell with so much of the first product and so much of the second; null: to the click. */
function cellOf(standing: Standing, first: Litres, second: Litres | null, target: MixTarget | null): MixCell {
	const { level, content, room, weight, delivered } = standing;
	const [mixed, counted] = [new Float32Array(weight.length), new Float32Array(weight.length)];
	const sums = { all: 0, fitting: 0, below: 0, above: 0 };
	let count = 0;
	for (let i = 0; i < weight.length; i++) {
		sums.all += weight[i];
		const free = Math.max(0, room[i]);
		const rest = second ?? free - first;
		if (first > free || first + rest > free + roundingL) continue;
		const total = level[i] + first + rest;
		const ethanol = level[i] * content[i] + first * delivered[0][i] + rest * delivered[1][i];
		// Nothing into nothing leaves the content as it was.
		const e = total > 0 ? ethanol / total : content[i];
		mixed[count] = e;
		counted[count++] = weight[i];
		sums.fitting += weight[i];
		if (target && e < target.window[0] - edgeWidth) sums.below += weight[i];
		else if (target && e > target.window[1] + edgeWidth) sums.above += weight[i];
	}
	const fits = sums.fitting / sums.all;
	if (!(fits >= hardly)) return { fits, mix: null };
	const chances = chancesOf(sums.below / sums.fitting, sums.above / sums.fitting);
	return {
		fits,
		mix: {
			...rangeOf(mixed.subarray(0, count), counted.subarray(0, count)),
			judged: target && { chances, verdict: verdictOf(chances, target) },
		},
	};
}

function rangeOf(mixed: Column, counted: Column): Pick<Mix, "median" | "low" | "high"> {
	const quantile = quantilesOf(mixed, counted, ascending(mixed));
	return { median: quantile(0.5) as Fraction, low: quantile(0.05) as Fraction, high: quantile(0.95) as Fraction };
}

function chancesOf(below: number, above: number): Chances {
	return { below, inside: Math.max(0, 1 - below - above), above };
}
