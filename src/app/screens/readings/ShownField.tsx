import { Emphasised } from "../../components/Emphasised";
import { TextField } from "../../components/TextField";
import { exactPercent } from "../../format";
import { readShown, type Scale, type ShownAs, signedPercent } from "../../shownByte";
import { figuresWords } from "../../words/figures";

interface ShownFieldProps {
	readonly label: string;
	readonly typed: string;
	readonly as: ShownAs;
	readonly scale: Scale;
	readonly fault: string | undefined;
	readonly onInput: (typed: string) => void;
	readonly hint?: string;
	/** Numbers with a sign, such as trims. */
	readonly signed?: boolean;
}

/** One figure off a scan tool, and how it was understood. */
export function ShownField({ label, typed, as, scale, fault, onInput, hint, signed = false }: ShownFieldProps) {
	const read = readShown(typed, as, scale);
	const told = signed ? signedPercent : exactPercent;
	const words = figuresWords();
	// Phones' number pads have no minus and no letters.
	const needsLetters = signed || as === "byte";
	return (
		<div class="stack shown">
			<TextField label={label} value={typed} hint={hint} fault={fault} decimal={!needsLetters} onInput={onInput} />
			{read.ok && read.value.understood !== null && (
				<p class="small" aria-live="polite">
					<Emphasised text={words.understood(read.value.understood, told(read.value.value))} />
				</p>
			)}
			{read.ok && read.value.inHex !== null && (
				<button type="button" class="button wide" onClick={() => read.value.inHex && onInput(read.value.inHex.typed)}>
					{words.isHexadecimal(told(read.value.inHex.value))}
				</button>
			)}
		</div>
	);
}
