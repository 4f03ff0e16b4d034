import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";
import "./Choice.css";

export interface Option<Value extends string> {
	readonly value: Value;
	readonly label: string;
	readonly more?: string | undefined;
}

interface ChoiceProps<Value extends string> {
	readonly label: string;
	/** Why it is asked. */
	readonly hint?: ComponentChildren;
	readonly options: readonly Option<Value>[];
	readonly value: Value | null;
	readonly onChange: (value: Value) => void;
}

/** One of a few, as radio buttons that a glove can hit. */
export function Choice<Value extends string>({ label, hint, options, value, onChange }: ChoiceProps<Value>) {
	const name = useId();
	return (
		<fieldset class="choice" aria-describedby={hint ? `${name}-hint` : undefined}>
			<legend class="label">{label}</legend>
			{hint && (
				<p class="small soft" id={`${name}-hint`}>
					{hint}
				</p>
			)}
			<div class="chips">
				{options.map((option) => (
					<label class="chip" key={option.value}>
						<input
							type="radio"
							name={name}
							value={option.value}
							checked={option.value === value}
							onChange={() => onChange(option.value)}
						/>
						<span class="face">
							<span class="mark" />
							<span>
								{option.label} {option.more && <span class="more small">{option.more}</span>}
							</span>
						</span>
					</label>
				))}
			</div>
		</fieldset>
	);
}
