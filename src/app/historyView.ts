/** The account over time: what the chart and the table under it show, and the finding in words. */
import type { ContentRange } from "../domain/quantity";
import type { Car } from "../domain/vehicle";
import type { Figures } from "../keeper/view";
import { type Side, sideOf } from "./components/dotLayout";
import { date, percent } from "./format";
import type { LogItem } from "./logView";
import { logScreenWords } from "./words/log";

/** What was believed after one entry; it holds until the next. */
export interface HistoryPoint {
	readonly id: string;
	/** As it was written. */
	readonly iso: string;
	/** The same in milliseconds since 1970 UTC, as are all times here. */
	readonly at: number;
	readonly figures: Figures;
	/** In force then. */
	readonly window: ContentRange | null;
	/** Where the median lies. */
	readonly side: Side;
	/** What was measured in the tank, if that is what the entry is. */
	readonly reading: { readonly value: number; readonly sd: number } | null;
}

/** A window and since when it is in force; it holds until the next. */
export interface WindowSince {
	readonly from: number;
	readonly window: ContentRange | null;
}

export interface History {
	readonly points: readonly HistoryPoint[];
	readonly windows: readonly WindowSince[];
	/** When the stops were made. */
	readonly stops: readonly number[];
}

export type Span = "stops" | "months" | "all";

/** The part of a history that is looked at. */
export interface Shown {
	readonly span: Span;
	readonly from: number;
	readonly to: number;
	/** Stops from `from` on; where there are fewer than asked for, the log begins there. */
	readonly stops: number;
	/** The last entry before `from`, whose content holds there; null where another begins or nothing was known. */
	readonly held: HistoryPoint | null;
	readonly points: readonly HistoryPoint[];
	/** The first from before or at `from`. */
	readonly windows: readonly WindowSince[];
}

const stopsShown = 10;
const monthsShown = 3;
const leastSpanMs = 2 * 86_400_000;
/** How far the last content is drawn on at most, share of the time shown. */
const tail = 0.06;

/** Items in order; the void ones tell nothing here. */
export function historyOf(car: Car, items: readonly LogItem[]): History {
	const points: HistoryPoint[] = [];
	const windows: WindowSince[] = [{ from: -Infinity, window: car.calibrations[0]?.window ?? null }];
	const stops: number[] = [];
	for (const { id, events, after, calibration, isVoid } of items) {
		if (isVoid) continue;
		const last = events[events.length - 1];
		const at = Date.parse(last.at);
		const window = calibration?.window ?? null;
		if (last.kind === "calibration") windows.push({ from: at, window });
		if (last.kind === "fill") stops.push(at);
		if (!after) continue;
		const reading = last.kind === "reading" && last.of === "tank" ? { value: last.value, sd: last.sd } : null;
		points.push({ id, iso: last.at, at, figures: after, window, side: sideOf(after.median, window), reading });
	}
	return { points, windows, stops };
}

export function shownOf(history: History, span: Span, now: number): Shown | null {
	const { points, windows, stops } = history;
	if (points.length === 0) return null;
	const first = points[0].at;
	const last = points[points.length - 1].at;
	let from = first;
	let to = Math.max(now, last);
	if (span === "stops") from = stops.at(-stopsShown) ?? first;
	if (span === "months") from = monthsBefore(now, monthsShown);
	else to = Math.min(to, last + Math.max(leastSpanMs, tail * (last - from)));
	from = Math.min(from, to - leastSpanMs);
	const shown = points.filter(({ at }) => at >= from && at <= to);
	const before = points.findLast(({ at }) => at < from) ?? null;
	return {
		span,
		from,
		to,
		stops: stops.filter((at) => at >= from).length,
		held: shown[0]?.at === from ? null : before,
		points: shown,
		windows: windows.filter((since, i) => since.from <= to && (windows[i + 1]?.from ?? Infinity) > from),
	};
}

function monthsBefore(now: number, months: number): number {
	const date = new Date(now);
	const day = date.getDate();
	date.setDate(1);
	date.setMonth(date.getMonth() - months);
	const lastDay = new Date(date.getFullYear(), date.getMonth() + 1, 0).getDate();
	date.setDate(Math.min(day, lastDay));
	return date.getTime();
}

/** What the chart says, in a sentence or two. */
export function findingOf(shown: Shown): string {
	const { span, stops, points, held } = shown;
	const words = logScreenWords();
	const told = span === "stops" && stops < stopsShown ? "all" : span;
	const finding = (said: string) => words.finding(told, dateAt(shown.from), dateAt(shown.to), said);
	if (points.length === 0) return finding(held ? words.stayed(percent(held.figures.median)) : words.noEntries);
	const medians = points.map(({ figures }) => figures.median);
	const latest = percent(medians[medians.length - 1]);
	const low = percent(Math.min(...medians));
	const high = percent(Math.max(...medians));
	const range = low === high ? words.likely(latest) : words.likelyBetween(low, high, latest);
	const inside = insideWords(points);
	return finding(inside === null ? range : `${range} ${inside}`);
}

function insideWords(points: readonly HistoryPoint[]): string | null {
	const held = points.filter(({ window }) => window !== null);
	const count = (side: Side) => held.filter((point) => point.side === side).length;
	if (held.length === 0) return null;
	const words = logScreenWords();
	return count("inside") === held.length
		? words.allInside(held.length)
		: words.someInside(count("inside"), held.length, count("above"), count("below"));
}

function dateAt(at: number): string {
	return date(new Date(at).toISOString());
}
