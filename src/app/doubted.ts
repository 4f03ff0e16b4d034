/** What the Tank screen loads where the last entries may contradict each other. */
import type { Contradiction } from "../keeper/view";
import { ContradictionCard } from "./components/ContradictionCard";
import type { Model } from "./model";
import { doubtWords } from "./words/doubt";
import { wordsReady } from "./words/language";

export interface Doubted {
	/** Number of events in the log that this is about. */
	readonly count: number;
	readonly contradiction: Contradiction;
	readonly Card: typeof ContradictionCard;
	/** The verdict, in place of a plain yes. */
	readonly words: { readonly line: string; readonly more: string };
}

/** Of the active car; null where nothing contradicts gravely: a single entry that disagrees has a warning of its own. */
export async function doubtedIn(model: Model, count: number): Promise<Doubted | null> {
	const contradiction = await model.contradiction(model.state().car?.id ?? "");
	if (!contradiction?.grave) return null;
	await wordsReady();
	return { count, contradiction, Card: ContradictionCard, words: doubtWords().verdict };
}
