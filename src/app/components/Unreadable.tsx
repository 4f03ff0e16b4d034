import type { Unreadable as Why } from "../../share/frame";
import { useAppState } from "../app";
import { cardWords } from "../words/card";
import { codesWords } from "../words/codes";

/** What came can't be read; nothing was changed. */
export function Unreadable({ why }: { readonly why: Why }) {
	const { state } = useAppState();
	return (
		<section class="card">
			<p class="fault" role="alert">
				{codesWords().unchanged(unreadableWords(why))}
			</p>
			<a class="button wide" href="#/take">
				{cardWords().another}
			</a>
			<a class="button wide" href={state.car ? "#/tank" : "#/setup"}>
				{cardWords().back}
			</a>
		</section>
	);
}

export function unreadableWords(why: Why): string {
	const words = codesWords();
	return why === "newer" ? words.newer : why === "mangled" ? words.mangled : words.foreign.nothing;
}
