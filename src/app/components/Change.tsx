interface ChangeProps {
	/** What it was; null where nothing was known. */
	readonly from: string | null;
	readonly to: string;
}

/** From one figure to another, in a line. */
export function Change({ from, to }: ChangeProps) {
	if (from === null) return <strong class={wrapping(to)}>{to}</strong>;
	if (from === to) return <strong class={wrapping(to)}>still {to}</strong>;
	return (
		<>
			<span class={wrapping(from)}>{from}</span> <span aria-hidden="true">→</span>
			<span class="hidden">became</span> <strong class={wrapping(to)}>{to}</strong>
		</>
	);
}

/** A mere figure stays on one line, words need not. */
function wrapping(text: string): string {
	return text.length <= 10 ? "figure" : "";
}
