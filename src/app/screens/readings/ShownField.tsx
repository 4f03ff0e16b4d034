import { TextField } from "../../components/TextField";
import { exactPercent } from "../../format";
import { readShown, type Scale, type ShownAs, signedPercent } from "../../shownByte";

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
	const words = signed ? signedPercent : exactPercent;
	// Phones' number pads have no minus and no letters.
	const needsLetters = signed || as === "byte";
	return (
		<div class="stack shown">
			<TextField label={label} value={typed} hint={hint} fault={fault} decimal={!needsLetters} onInput={onInput} />
			{read.ok && read.value.understood !== null && (
				<p class="small" aria-live="polite">
					Understood: {read.value.understood}, which is <strong class="nowrap">{words(read.value.value)}</strong>.
				</p>
			)}
			{read.ok && read.value.inHex !== null && (
				<button type="button" class="button wide" onClick={() => read.value.inHex && onInput(read.value.inHex.typed)}>
					It is hexadecimal: {words(read.value.inHex.value)}
				</button>
			)}
		</div>
	);
}
