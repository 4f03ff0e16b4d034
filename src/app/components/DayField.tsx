import { useId } from "preact/hooks";

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
	const id = useId();
	const described = [hint ? `${id}-hint` : "", fault ? `${id}-fault` : ""].filter(Boolean).join(" ");
	return (
		<div class="field">
			<label for={id}>{label}</label>
			{hint && (
				<p class="small soft" id={`${id}-hint`}>
					{hint}
				</p>
			)}
			<input
				id={id}
				class="input"
				type="date"
				value={value}
				min={min}
				max={max}
				aria-invalid={fault ? true : undefined}
				aria-describedby={described || undefined}
				onChange={(event) => onChange(event.currentTarget.value)}
			/>
			{fault && (
				<p class="fault" id={`${id}-fault`}>
					{fault}
				</p>
			)}
		</div>
	);
}
