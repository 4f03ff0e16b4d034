/**
 * Why the range is as wide as it is: a decomposition of the content's variance over what is not known, and where the fuel in
 * the tank comes from. First-order shares and widths are those of one quantity known alone. What is unknown hangs together
 * (pumps of one area, stops of one chain), so they overlap and need not add up to anything.
 */
import type { Belief, Column } from "../estimator/belief";
import type { FillEvent, TankEvent } from "../event";
import type { Tank } from "../vehicle";
import { bestCombination } from "./joint";
import { ifKnown, momentsOf, widthOf } from "./known";
import { type Origin, originsOf, sharesOf } from "./origins";
import { type Source, type SourceColumn, sourcesFrom } from "./sources";
import { type Told, type Trace, toldOf, traceOf } from "./trace";

export interface SourceWorth {
	readonly source: Source;
	/** Expected share of the content's variance that goes once it is known. */
	readonly share: number;
	/** Expected width of the central 90 % range of the content once it is known. */
	readonly width: number;
}

/** One stop as it is believed now, with all that was learned since. */
export interface ToldStop {
	/** L. */
	readonly heel: Told;
	/** Contents, fractions. */
	readonly before: Told;
	readonly after: Told;
	readonly fills: readonly { readonly event: FillEvent; readonly delivered: Told }[];
}

export interface Why {
	/** Width of the central 90 % range now. */
	readonly width: number;
	/** What knowing it would narrow most comes first. */
	readonly sources: readonly SourceWorth[];
	/** All that is not listed, known together; null where everything is listed. */
	readonly rest: { readonly count: number; readonly share: number; readonly width: number } | null;
	/** From the first stop whose fuel still counts, in order. */
	readonly stops: readonly ToldStop[];
	readonly origins: readonly Origin[];
	/** Whether fuel from before these stops hardly counts any more; else it is a source of its own. */
	readonly older: boolean;
	/** Whether there is more to trace, as fuel from before still counts. */
	readonly cut: boolean;
}

/** Rows that a reader takes in. */
const mostRows = 7;

/** What narrows the range by less than this share of it, or makes less of the variance, is not told from the luck of the draw. */
const [leastNarrowing, leastShare] = [0.03, 0.01];

/** Older fuel that makes less than this share of the variance is told in one. */
const leastOlder = 0.02;

/** Of an account from `before` on, on a sample of `size` particles, a power of two. */
export function whyOf(before: Belief, events: readonly TankEvent[], tank: Tank, size: number): Why {
	const trace = traceOf(before, events, tank, size);
	const { belief, stops } = trace;
	const { content, weight } = belief;
	const width = widthOf(content, weight);
	const direct = olderShares(trace);
	const shown = Math.max(
		0,
		direct.findLastIndex((share) => share < leastOlder),
	);
	const columns = sourcesFrom(trace, shown);
	const worths = columns
		.map(({ source, column }) => ({ source, column, ...ifKnown(column, content, weight) }))
		.sort((a, b) => a.width - b.width || b.share - a.share);
	const listed = worths
		.filter(({ width: known, share }) => width - known >= leastNarrowing * width && share >= leastShare)
		.slice(0, mostRows);
	return {
		width,
		sources: listed.map(({ column, ...worth }) => worth),
		rest: restOf(
			worths.filter((worth) => !listed.includes(worth)),
			content,
			belief,
		),
		stops: stops.slice(shown).flatMap(({ heel, before, after, fills }): ToldStop[] => {
			const told = fills.map(({ event, delivered }) => ({ event, delivered: toldOf(delivered, belief) }));
			const of = (column: Column) => toldOf(column, belief);
			return told.length > 0 ? [{ heel: of(heel), before: of(before), after: of(after), fills: told }] : [];
		}),
		origins: originsOf(trace),
		older: shown > 0,
		cut: shown === 0 && !trace.began && (direct[0] ?? 0) >= leastOlder,
	};
}

function restOf(rest: readonly SourceColumn[], content: Column, belief: Belief): Why["rest"] {
	if (rest.length === 0) return null;
	const columns = rest.map(({ column }) => column);
	return { count: rest.length, ...ifKnown(bestCombination(columns, content, belief), content, belief.weight) };
}

/**
 * By stop: how much the content would move, as a share of its variance, if all that was in the tank before the stop had been
 * of one and the same content. Not the first-order share: old fuel also tells of the pumps.
 */
function olderShares(trace: Trace): number[] {
	const { belief, stops } = trace;
	const { weight, content } = belief;
	const { variance } = momentsOf(content, weight);
	const { older } = sharesOf(trace);
	return stops.map(({ before }, s) => {
		const share = older[s];
		let [all, part, mean] = [0, 0, 0];
		for (let i = 0; i < share.length; i++) {
			all += weight[i];
			part += weight[i] * share[i];
			mean += weight[i] * share[i] * before[i];
		}
		if (!(part > 0)) return 0;
		mean /= part;
		let moved = 0;
		for (let i = 0; i < share.length; i++) moved += weight[i] * (share[i] * (before[i] - mean)) ** 2;
		return variance > 0 ? moved / all / variance : 0;
	});
}
