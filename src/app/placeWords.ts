/** What is known of a place's pumps, in words. */
import type { PlaceKnown, ProductKnown } from "../keeper/advice";
import { ago, exactPercent, exactPercentRange, percent, percentRange } from "./format";

const space = "\u00a0";

/** A narrowing under this is the luck of the draw, and no knowledge. */
const noticeable = 0.03;

/** Less than this is nothing that anybody could tell apart, volume fraction. */
const nothing = 0.0005;

const tenth = new Intl.NumberFormat(undefined, { maximumFractionDigits: 1 });
const whole = new Intl.NumberFormat(undefined, { maximumFractionDigits: 0 });

/** The width of a range of contents, tenths only where it is narrow. */
export function pointsWide(width: number): string {
	const points = (width * 100 < 5 ? tenth : whole).format(width * 100);
	return `${points}${space}${points === "1" ? "point" : "points"}`;
}

/** How far better a pump is known than its label says, and from what. */
export function knownWords({ pump, samples, lastSample }: ProductKnown, now: number): string {
	const { low, high, labelWidth } = pump;
	if (labelWidth < nothing) return "The label leaves nothing open.";
	const tested =
		samples === 0 || lastSample === null
			? null
			: samples === 1
				? `Tested once, ${ago(lastSample, now)}`
				: `Tested ${samples} times, last ${ago(lastSample, now)}`;
	if (!isBetterKnown(pump)) {
		return tested ? `${tested}: by now the label says as much.` : "Never tested: the label is all that is known.";
	}
	const narrower = `9 in 10 span ${pointsWide(high - low)} where the label alone leaves ${pointsWide(labelWidth)}`;
	return tested
		? `${tested}: ${narrower}.`
		: `Never tested. What the tank and other pumps showed narrows it: ${narrower}.`;
}

/** Days ahead as a person says them. */
export function aheadWords(days: number): string {
	if (days === 0) return "Now";
	if (days % 30 !== 0) return `In ${days} days`;
	const months = days / 30;
	return months === 1
		? "In a month"
		: months === 3
			? "In three months"
			: months === 6
				? "In half a year"
				: `In ${months} months`;
}

/** Whether anything is known of a pump beyond its label, that could fade. */
export function isBetterKnown({ better, labelWidth }: ProductKnown["pump"]): boolean {
	return labelWidth >= nothing && better >= noticeable;
}

/** When a place was visited last, and how often. */
export function visitWords({ fills, samples, lastVisit }: PlaceKnown, now: number): string {
	const filled = fills === 0 ? "Never filled" : fills === 1 ? "One fill" : `${fills} fills`;
	const tested = samples === 0 ? "never tested" : samples === 1 ? "one test" : `${samples} tests`;
	return `Last visit ${ago(lastVisit, now)}. ${filled}, ${tested}.`;
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
