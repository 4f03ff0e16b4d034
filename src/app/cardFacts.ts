/** What a card, or a calibration, says. */
import { usualBudget } from "../domain/warnings";
import type { Card } from "../share/card";
import { budgetWords } from "./calibrationForm";
import { date, exactPercent, exactPercentRange } from "./format";
import { typedNumber } from "./typedNumber";
import { cardWords } from "./words/card";

export interface CardFact {
	readonly term: string;
	readonly is: string;
}

/** In short, one a line. */
export function cardFacts(card: Card): CardFact[] {
	const { facts } = cardWords();
	const { validUntil } = card;
	const until = validUntil === undefined ? [] : [{ term: facts.validUntil, is: date(`${validUntil}T12:00:00`) }];
	return [...reckonedFacts(card), ...until];
}

/** What it says in sentences. */
export function cardTexts({ notes, wayBack }: Card): CardFact[] {
	const { facts } = cardWords();
	return [
		...(notes === undefined ? [] : [{ term: facts.notes, is: notes }]),
		...(wayBack === undefined ? [] : [{ term: facts.wayBack, is: wayBack }]),
	];
}

/** What the app reckons with. */
function reckonedFacts({ calibratedFor, window, leanBudget, knockBudget, leanestLambda }: Card): CardFact[] {
	const { facts } = cardWords();
	return [
		{ term: facts.madeFor, is: exactPercent(calibratedFor) },
		{ term: facts.window, is: exactPercentRange(...window) },
		{ term: facts.lean, is: chance(leanBudget) },
		{ term: facts.knock, is: chance(knockBudget) },
		...(leanestLambda === undefined ? [] : [{ term: facts.lambda, is: typedNumber(leanestLambda) }]),
	];
}

function chance(budget: number = usualBudget): string {
	return budget === usualBudget ? cardWords().usual(budgetWords(budget)) : budgetWords(budget);
}

/** Where the card differs from what is in force, in what the app reckons with. */
export function differences(now: Card, card: Card): string[] {
	const before = new Map(reckonedFacts(now).map(({ term, is }) => [term, is]));
	return reckonedFacts(card).flatMap(({ term, is }) => {
		const was = before.get(term);
		if (was === is) return [];
		return [was === undefined ? cardWords().adds(term, is) : cardWords().differs(term, was, is)];
	});
}
