/** What is known of a place's pumps, in words. */
import type { PlaceKnown, ProductKnown } from "../keeper/advice";
import { ago, exactPercent, exactPercentRange, percent, percentRange } from "./format";
import { numbers, whole } from "./formatters";
import { placesWords } from "./words/places";

/** A narrowing under this is the luck of the draw, and no knowledge. */
const noticeable = 0.03;

/** Less than this is nothing that anybody could tell apart, volume fraction. */
const nothing = 0.0005;

const tenth = numbers({ maximumFractionDigits: 1 });

/** The width of a range of contents, tenths only where it is narrow. */
export function pointsWide(width: number): string {
	return placesWords().points((width * 100 < 5 ? tenth : whole).format(width * 100));
}

/** How far better a pump is known than its label says, and from what. */
export function knownWords({ pump, samples, lastSample }: ProductKnown, now: number): string {
	const { low, high, labelWidth } = pump;
	const words = placesWords();
	if (labelWidth < nothing) return words.nothingOpen;
	const tested = samples === 0 || lastSample === null ? null : words.tested(samples, ago(lastSample, now));
	if (!isBetterKnown(pump)) return tested ? words.labelAsGood(tested) : words.neverTested;
	const [width, label] = [pointsWide(high - low), pointsWide(labelWidth)];
	return tested ? words.narrower(tested, width, label) : words.narrowerUntested(width, label);
}

/** Days ahead as a person says them. */
export function aheadWords(days: number): string {
	const words = placesWords();
	if (days === 0) return words.now;
	return days % 30 === 0 ? words.inMonths(days / 30) : words.inDays(days);
}

/** Whether anything is known of a pump beyond its label, that could fade. */
export function isBetterKnown({ better, labelWidth }: ProductKnown["pump"]): boolean {
	return labelWidth >= nothing && better >= noticeable;
}

/** When a place was visited last, and how often. */
export function visitWords({ fills, samples, lastVisit }: PlaceKnown, now: number): string {
	return placesWords().visits(ago(lastVisit, now), fills, samples);
}

/** A range this narrow is told in tenths. */
const narrow = 0.03;

/** What a pump most likely delivers. */
export function deliveredWords({ median, low, high }: ProductKnown["pump"]): string {
	return high - low < narrow ? exactPercent(median) : percent(median);
}

/** Between what it delivers nine times in ten. */
export function deliveredRange({ low, high }: ProductKnown["pump"]): string {
	return high - low < narrow ? exactPercentRange(low, high) : percentRange(low, high);
}
