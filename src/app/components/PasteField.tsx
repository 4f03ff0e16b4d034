import { useState } from "preact/hooks";
import { Field } from "./Field";

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
			<Field label={label} hint={hint}>
				{(input) => (
					<textarea
						{...input}
						class="input"
						rows={2}
						value={text}
						onInput={(event) => setText(event.currentTarget.value)}
					/>
				)}
			</Field>
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
