interface BeginButtonProps {
	readonly label: string;
	readonly disabled: boolean;
	/** Why it did not begin when it was last tried. */
	readonly fault: string | null;
	readonly onBegin: () => void;
}

/** Begins what a code offers, or says why it could not. */
export function BeginButton({ label, disabled, fault, onBegin }: BeginButtonProps) {
	return (
		<>
			{fault && (
				<p class="fault" role="alert">
					{fault}
				</p>
			)}
			<button type="button" class="button main" disabled={disabled} onClick={onBegin}>
				{label}
			</button>
		</>
	);
}
