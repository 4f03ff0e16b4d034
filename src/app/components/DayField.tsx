import { Field } from "./Field";

interface DayFieldProps {
	readonly label: string;
	readonly hint?: string;
	/** `2026-06-01`, or empty. */
	readonly value: string;
	readonly min?: string;
	readonly max?: string;
	readonly fault?: string | null | undefined;
	readonly onChange: (day: string) => void;
}

/** A day by the phone's own calendar. */
export function DayField({ label, hint, value, min, max, fault, onChange }: DayFieldProps) {
	return (
		<Field label={label} hint={hint} fault={fault}>
			{(input) => (
				<input
					{...input}
					class="input"
					type="date"
					value={value}
					min={min}
					max={max}
					onChange={(event) => onChange(event.currentTarget.value)}
				/>
			)}
		</Field>
	);
}
