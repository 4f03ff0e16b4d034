import { useId } from "preact/hooks";
import { oneLine } from "../oneLine";

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
	const id = useId();
	return (
		<div class="field">
			<label for={id}>{label}</label>
			<p class="small soft" id={`${id}-hint`}>
				{hint}
			</p>
			<textarea
				id={id}
				class="input"
				rows={4}
				value={value}
				aria-invalid={fault ? true : undefined}
				aria-describedby={`${id}-hint ${id}-left${fault ? ` ${id}-fault` : ""}`}
				onInput={(event) => onInput(oneLine(event.currentTarget.value))}
			/>
			<p class="small soft number" id={`${id}-left`}>
				{left}
			</p>
			{fault && (
				<p class="fault" id={`${id}-fault`}>
					{fault}
				</p>
			)}
		</div>
	);
}
