/** A car of a list in words: what it needs, and what is known of it. */
import { daysSilent, type Need, needOf, silentDays } from "./attention";
import type { Listed } from "./fleet";
import { ago, exactPercentRange, inTwenty, percent, percentRange } from "./format";
import { carsWords } from "./words/cars";

export interface CarLines {
	readonly need: Need;
	readonly title: string;
	readonly lines: readonly string[];
}

export function carLines(car: Listed, now: number): CarLines {
	const words = carsWords();
	const { figures, calibration, lastAt } = car;
	const need = needOf(car, now);
	const lines: string[] = [];
	if (figures) {
		lines.push(words.figures(percent(figures.median), percentRange(figures.low, figures.high)));
		if (figures.above !== null && figures.below !== null)
			lines.push(words.chances(inTwenty(figures.above), inTwenty(figures.below)));
		if (calibration) lines.push(words.window(calibration.name, exactPercentRange(...calibration.window)));
	}
	if (car.checked) lines.push(words.checked);
	else if (car.grave && need !== "doubt") lines.push(words.doubtToo);
	else if (!car.grave && car.surprise && need !== "odd") lines.push(words.oddToo);
	const days = daysSilent(car, now);
	if (lastAt !== null && days !== null)
		lines.push(days < silentDays ? words.lastEntry(ago(lastAt, now)) : words.silent(days));
	return { need, title: words.needs[need], lines };
}
