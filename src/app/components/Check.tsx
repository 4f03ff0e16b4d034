import "./Choice.css";

interface CheckProps {
	readonly label: string;
	readonly more?: string;
	readonly checked: boolean;
	readonly disabled?: boolean;
	readonly onChange: (checked: boolean) => void;
}

/** Yes or no, as large as a radio button of `Choice`. */
export function Check({ label, more, checked, disabled, onChange }: CheckProps) {
	return (
		<label class="chip">
			<input
				type="checkbox"
				checked={checked}
				disabled={disabled}
				onChange={(event) => onChange(event.currentTarget.checked)}
			/>
			<span class="face">
				<span class="mark" />
				<span>
					{label} {more && <span class="more small">{more}</span>}
				</span>
			</span>
		</label>
	);
}
