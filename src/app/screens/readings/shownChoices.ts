/** How scan tools show a figure. */
import type { Option } from "../../components/Choice";
import type { ShownAs } from "../../shownByte";
import { figuresWords } from "../../words/figures";

export function shownChoices(): readonly Option<ShownAs>[] {
	const { percent, byte, byteMore } = figuresWords();
	return [
		{ value: "percent", label: percent },
		{ value: "byte", label: byte, more: byteMore },
	];
}
