import { oneLine } from "../oneLine";
import { Field } from "./Field";

interface LongFieldProps {
	readonly label: string;
	readonly hint: string;
	/** How much room is left, in words. */
	readonly left: string;
	readonly value: string;
	readonly fault?: string | null | undefined;
	readonly onInput: (typed: string) => void;
}

/** A few sentences; line breaks become blanks, as the log takes none. */
export function LongField({ label, hint, left, value, fault, onInput }: LongFieldProps) {
	return (
		<Field label={label} hint={hint} left={left} fault={fault}>
			{(input) => (
				<textarea
					{...input}
					class="input"
					rows={4}
					value={value}
					onInput={(event) => onInput(oneLine(event.currentTarget.value))}
				/>
			)}
		</Field>
	);
}
