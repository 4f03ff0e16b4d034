/** What measurements are worth, in words. */
import { halfDot, leastNarrowing, type Measures, type Worth, worthSaying } from "../domain/plan/worth";
import { capitalized } from "./capitalized";
import { inTwenty } from "./format";
import { productName } from "./text";
import { measuresWords } from "./words/measures";

/** Every measure worth saying, the best first, a sentence each. */
export function measureSentences(measures: Measures): string[] {
	return worthSaying(measures).map((worth) => asSentence([said(worth, measures, false)]));
}

/**
 * The best of all that can be done before the fill and the best of what can be done after it, in one sentence; where nothing is
 * worth saying, that.
 */
export function measureSummary(measures: Measures): string {
	const all = worthSaying(measures);
	const found = [all.find((worth) => !isAfter(worth)), all.find(isAfter)].flatMap((worth) => (worth ? [worth] : []));
	if (found.length === 0) return measuresWords().nothing;
	return asSentence(found.map((worth, i) => said(worth, measures, i > 0)));
}

function isAfter({ measure }: Worth): boolean {
	return "when" in measure && measure.when === "after";
}

function asSentence(all: readonly string[]): string {
	return capitalized(measuresWords().sentence(all));
}

/** `again`: the doubt was spoken of already in the same sentence. */
function said(worth: Worth, measures: Measures, again: boolean): string {
	return measuresWords().would(doing(worth, measures), effects(worth, measures, again));
}

/** The measure as something that one does. */
function doing({ measure }: Worth, { filling, worths }: Measures): string {
	const words = measuresWords();
	const before = filling ? "beforeFill" : "now";
	switch (measure.kind) {
		case "pumpSample": {
			const pumps = worths.filter((worth) => worth.measure.kind === "pumpSample").length;
			return words.pumpSample(before, pumps > 1 ? productName(measure.product) : null);
		}
		case "gauge":
			return words.gauge(before);
		case "tankSample":
		case "analyser":
		case "trim":
			return words[measure.kind](measure.when === "after" ? "after" : before);
		case "click":
			return words.click;
	}
}

function effects({ narrowing, gain }: Worth, { inside }: Measures, again: boolean): string[] {
	const narrows = narrowing < leastNarrowing ? [] : [measuresWords().narrows(shareNearest(narrowing), again)];
	return inside !== null && gain >= halfDot ? [...narrows, chanceWords(inside, inside + gain)] : narrows;
}

function chanceWords(before: number, after: number): string {
	const { raises, raisesALittle } = measuresWords();
	const [from, to] = [before, Math.min(1, after)].map(inTwenty);
	return from === to ? raisesALittle : raises(from, to);
}

/** Shares that have a short name. */
const shares = [
	[0.1, "tenth"],
	[0.2, "fifth"],
	[0.25, "quarter"],
	[1 / 3, "third"],
	[0.5, "half"],
	[2 / 3, "twoThirds"],
	[0.75, "threeQuarters"],
	[0.9, "nearlyAll"],
] as const;

function shareNearest(narrowing: number): (typeof shares)[number][1] {
	const away = ([share]: (typeof shares)[number]) => Math.abs(share - narrowing);
	return shares.reduce((nearest, share) => (away(share) < away(nearest) ? share : nearest))[1];
}
