interface ChangeProps {
	/** What it was; null where nothing was known. */
	readonly from: string | null;
	readonly to: string;
}

/** From one figure to another, in a line. */
export function Change({ from, to }: ChangeProps) {
	if (from === null) return <strong>{to}</strong>;
	if (from === to) return <strong>still {to}</strong>;
	return (
		<>
			<span>{from}</span> <span aria-hidden="true">→</span>
			<span class="hidden">became</span> <strong>{to}</strong>
		</>
	);
}
