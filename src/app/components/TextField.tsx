import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";
import { oneLine } from "../oneLine";

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

/** A labelled line to type in, its hint before it and its fault after it. */
export function TextField({ label, value, onInput, hint, fault, decimal, beside }: TextFieldProps) {
	const id = useId();
	const described = [hint ? `${id}-hint` : "", fault ? `${id}-fault` : ""].filter(Boolean).join(" ");
	const input = (
		<input
			id={id}
			class={decimal ? "input number" : "input"}
			type="text"
			inputMode={decimal ? "decimal" : "text"}
			autocomplete="off"
			maxLength={decimal ? 12 : 60}
			value={value}
			aria-invalid={fault ? true : undefined}
			aria-describedby={described || undefined}
			onInput={(event) => onInput(oneLine(event.currentTarget.value))}
		/>
	);
	return (
		<div class="field">
			<label for={id}>{label}</label>
			{hint && (
				<p class="small soft" id={`${id}-hint`}>
					{hint}
				</p>
			)}
			{beside ? (
				<div class="withunit">
					{input}
					{beside}
				</div>
			) : (
				input
			)}
			{fault && (
				<p class="fault" id={`${id}-fault`}>
					{fault}
				</p>
			)}
		</div>
	);
}

/** A number with comma or point; `parseNumber` reads it. */
export function NumberField(props: Omit<TextFieldProps, "decimal">) {
	return <TextField {...props} decimal />;
}
