import { useId, useState } from "preact/hooks";

interface PasteFieldProps {
	readonly label: string;
	readonly hint?: string;
	readonly button: string;
	/** Said where there is nothing in a text. */
	readonly nothing?: string;
	/** Whether there is something in it; otherwise the text stays to be mended. */
	readonly onText: (text: string) => boolean | undefined;
}

/** Text that was copied elsewhere. */
export function PasteField({ label, hint, button, nothing, onText }: PasteFieldProps) {
	const [text, setText] = useState("");
	const [fault, setFault] = useState(false);
	const id = useId();
	return (
		<form
			class="stack"
			onSubmit={(event) => {
				event.preventDefault();
				if (text.trim() === "") return;
				const found = onText(text);
				setFault(found === false);
				if (found) setText("");
			}}
		>
			<div class="field">
				<label for={id}>{label}</label>
				{hint && (
					<p class="small soft" id={`${id}-hint`}>
						{hint}
					</p>
				)}
				<textarea
					id={id}
					class="input"
					rows={2}
					value={text}
					aria-describedby={hint && `${id}-hint`}
					onInput={(event) => setText(event.currentTarget.value)}
				/>
			</div>
			{fault && nothing && (
				<p class="fault" role="alert">
					{nothing}
				</p>
			)}
			<button type="submit" class="button wide">
				{button}
			</button>
		</form>
	);
}
