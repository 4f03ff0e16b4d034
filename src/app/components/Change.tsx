import { changeWords } from "../words/change";

interface ChangeProps {
	/** What it was; null where nothing was known. */
	readonly from: string | null;
	readonly to: string;
}

/** From one figure to another, in a line. */
export function Change({ from, to }: ChangeProps) {
	const words = changeWords();
	if (from === null || from === to) {
		const told = from === null ? to : words.still(to);
		return <strong class={wrapping(told)}>{told}</strong>;
	}
	return (
		<>
			<span class={wrapping(from)}>{from}</span> <span aria-hidden="true">→</span>
			<span class="hidden">{words.became}</span> <strong class={wrapping(to)}>{to}</strong>
		</>
	);
}

/** A mere figure stays on one line, words need not. */
function wrapping(text: string): string {
	return text.length <= 10 ? "figure" : "";
}
