/** What measurements are worth, in words. */
import { halfDot, leastNarrowing, type Measures, type Worth, worthSaying } from "../domain/plan/worth";
import { inTwenty } from "./format";
import { productName } from "./text";

/** Every measure worth saying, the best first, a sentence each. */
export function measureSentences(measures: Measures): string[] {
	return worthSaying(measures).map((worth) => {
		const effect = effectWords(worth, measures);
		return `${capitalized(doing(worth, measures))} would ${effect}.`;
	});
}

/**
 * The best of all that can be done before the fill and the best of what can be done after it, in one sentence; where nothing is
 * worth saying, that.
 */
export function measureSummary(measures: Measures): string {
	const all = worthSaying(measures);
	const first = all.find((worth) => !isAfter(worth));
	const then = all.find(isAfter);
	const found = [first, then].flatMap((worth) => (worth ? [worth] : []));
	if (found.length === 0) return "Nothing that you could measure now would tell you much more.";
	const [best, next] = found.map((worth) => `${doing(worth, measures)} would ${effectWords(worth, measures)}`);
	return `${capitalized(next ? `${best}; ${shortened(next)}` : best)}.`;
}

function isAfter({ measure }: Worth): boolean {
	return "when" in measure && measure.when === "after";
}

/** "the doubt" need not be said twice. */
function shortened(sentence: string): string {
	return sentence.replace(" of the doubt", "");
}

function capitalized(sentence: string): string {
	return sentence[0].toUpperCase() + sentence.slice(1);
}

/** The measure as something that one does. */
function doing({ measure }: Worth, { filling, worths }: Measures): string {
	const before = filling ? " before you fill" : "";
	switch (measure.kind) {
		case "pumpSample": {
			const pumps = worths.filter((worth) => worth.measure.kind === "pumpSample").length;
			const fuel = pumps > 1 ? `the “${productName(measure.product)}” of this pump` : "this pump’s fuel";
			return `testing ${fuel}${before}`;
		}
		case "gauge":
			return `noting the gauge${before}`;
		case "tankSample":
			return `a water test of the tank${measure.when === "after" ? " afterwards" : before}`;
		case "analyser":
			return `an analyser’s reading of the tank${measure.when === "after" ? " afterwards" : before}`;
		case "trim":
			return measure.when === "after"
				? "the fuel trims, once learned on the new blend,"
				: `the fuel trims, read${before || " now"},`;
		case "click":
			return "filling to the click instead";
	}
}

/** "halve the doubt and raise the chance of being inside from 14 in 20 to 17 in 20" */
function effectWords({ narrowing, gain }: Worth, { inside }: Measures): string {
	const chances = inside !== null && gain >= halfDot ? chanceWords(inside, inside + gain) : null;
	return [doubtWords(narrowing), chances].filter((words) => words !== null).join(" and ");
}

function chanceWords(before: number, after: number): string {
	const [from, to] = [before, Math.min(1, after)].map(inTwenty);
	return `raise the chance of being inside ${from === to ? "a little" : `from ${from} to ${to}`}`;
}

/** Shares that have a short name. */
const shares = [
	[0.1, "take off a tenth of the doubt"],
	[0.2, "take off a fifth of the doubt"],
	[0.25, "take off a quarter of the doubt"],
	[1 / 3, "take off a third of the doubt"],
	[0.5, "halve the doubt"],
	[2 / 3, "take off two thirds of the doubt"],
	[0.75, "take off three quarters of the doubt"],
	[0.9, "take off nearly all of the doubt"],
] as const;

/** The nearest share; null where it is hardly any. */
function doubtWords(narrowing: number): string | null {
	if (narrowing < leastNarrowing) return null;
	const away = ([share]: (typeof shares)[number]) => Math.abs(share - narrowing);
	return shares.reduce((nearest, share) => (away(share) < away(nearest) ? share : nearest))[1];
}
