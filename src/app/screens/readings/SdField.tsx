import { NumberField } from "../../components/TextField";
import { readingsWords } from "../../words/readings";

interface SdFieldProps {
	readonly value: string;
	readonly fault: string | undefined;
	readonly onInput: (typed: string) => void;
	/** Where the prefilled number comes from. */
	readonly why: string;
	readonly label?: string;
}

/** The standard uncertainty of a measurement. */
export function SdField({ value, fault, onInput, why, label }: SdFieldProps) {
	const { sd, sdMeans } = readingsWords();
	return <NumberField label={label ?? sd} hint={sdMeans(why)} value={value} fault={fault} onInput={onInput} />;
}
