import type { ComponentChildren } from "preact";
import { oneLine } from "../oneLine";
import { Field } from "./Field";

interface TextFieldProps {
	readonly label: string;
	readonly value: string;
	readonly onInput: (typed: string) => void;
	/** Why it is asked, or how it is meant. */
	readonly hint?: ComponentChildren;
	/** What is wrong and how to mend it. */
	readonly fault?: string | null | undefined;
	readonly decimal?: boolean;
	/** Stands in one row with it, such as the choice of its unit. */
	readonly beside?: ComponentChildren;
}

/** A line to type in. */
export function TextField({ label, value, onInput, hint, fault, decimal, beside }: TextFieldProps) {
	return (
		<Field label={label} hint={hint} fault={fault}>
			{(inField) => {
				const input = (
					<input
						{...inField}
						class={decimal ? "input number" : "input"}
						type="text"
						inputMode={decimal ? "decimal" : "text"}
						autocomplete="off"
						maxLength={decimal ? 12 : 60}
						value={value}
						onInput={(event) => onInput(oneLine(event.currentTarget.value))}
					/>
				);
				return beside ? (
					<div class="withunit">
						{input}
						{beside}
					</div>
				) : (
					input
				);
			}}
		</Field>
	);
}

/** A number with comma or point; `parseNumber` reads it. */
export function NumberField(props: Omit<TextFieldProps, "decimal">) {
	return <TextField {...props} decimal />;
}
