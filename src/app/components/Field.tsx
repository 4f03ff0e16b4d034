import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";

/** What an input takes over from its frame. */
export interface InField {
	readonly id: string;
	readonly "aria-invalid": true | undefined;
	readonly "aria-describedby": string | undefined;
}

interface FieldProps {
	readonly label: string;
	/** Why it is asked, or how it is meant. */
	readonly hint?: ComponentChildren;
	/** How much room is left, in words. */
	readonly left?: string;
	/** What is wrong and how to mend it. */
	readonly fault?: string | null | undefined;
	readonly children: (input: InField) => ComponentChildren;
}

/** A labelled input, its hint before it and its fault after it. */
export function Field({ label, hint, left, fault, children }: FieldProps) {
	const id = useId();
	const ids = { hint: `${id}-hint`, left: `${id}-left`, fault: `${id}-fault` };
	const described = [hint && ids.hint, left && ids.left, fault && ids.fault].filter(Boolean).join(" ");
	return (
		<div class="field">
			<label for={id}>{label}</label>
			{hint && (
				<p class="small soft" id={ids.hint}>
					{hint}
				</p>
			)}
			{children({ id, "aria-invalid": fault ? true : undefined, "aria-describedby": described || undefined })}
			{left && (
				<p class="small soft number" id={ids.left}>
					{left}
				</p>
			)}
			{fault && (
				<p class="fault" id={ids.fault}>
					{fault}
				</p>
			)}
		</div>
	);
}
