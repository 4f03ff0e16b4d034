/** What more than one screen says of the blend: products, verdicts, warnings. */
import type { Product } from "../domain/event";
import type { Verdict, Warning } from "../domain/warnings";
import { exactPercent, exactPercentRange, inTwenty, percent } from "./format";
import { blendWords } from "./words/blend";

/** Flex fuel named by the percentage on its label: `flex-60`. */
const labelledId = /^flex-(\d+(?:\.\d+)?)$/;

export function productName({ id }: Product): string {
	const { products, labelled } = blendWords();
	if (Object.hasOwn(products, id)) return products[id as keyof typeof products];
	const label = labelledId.exec(id);
	return label ? labelled(exactPercent(Number(label[1]) / 100)) : id;
}

/** What the label allows, as a person would read it off the pump. */
export function productRange({ range: [low, high] }: Product): string {
	return low === high ? exactPercent(low) : exactPercentRange(low, high);
}

export function soldIn(sold: "US" | "EU" | "AU" | "BR" | "any"): string {
	return blendWords().soldIn[sold];
}

export function verdictWords(verdict: Verdict): { readonly line: string; readonly more: string } {
	return blendWords().verdicts[verdict];
}

/** A warning in words: what is wrong, how sure, what to do now, and why one is told. */
export interface WarningWords {
	readonly title: string;
	readonly sure: string;
	readonly now: readonly string[];
	readonly why: string;
}

export function warningWords(warning: Warning, calibrationName: string): WarningWords {
	const words = blendWords();
	switch (warning.code) {
		case "lean":
		case "knock": {
			const said = words[warning.code];
			const { severity, chance, budget, alone } = warning;
			return {
				title: said[severity],
				sure: said.sure(words.howLikely(inTwenty(chance), percent(chance), exactPercent(budget))),
				now: [said.now, words.measure, ...(alone ? [said.flash] : [])],
				why: said.why(calibrationName),
			};
		}
		default:
			return words[warning.code];
	}
}

export function signalWord(): string {
	return blendWords().signal;
}
