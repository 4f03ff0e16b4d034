import { NumberField } from "../../components/TextField";

interface SdFieldProps {
	readonly value: string;
	readonly fault: string | undefined;
	readonly onInput: (typed: string) => void;
	/** Where the prefilled number comes from. */
	readonly why: string;
	readonly label?: string;
}

/** The standard uncertainty of a measurement. */
export function SdField({ value, fault, onInput, why, label = "Give or take, points" }: SdFieldProps) {
	return (
		<NumberField
			label={label}
			hint={`The truth is within this two times in three. ${why}`}
			value={value}
			fault={fault}
			onInput={onInput}
		/>
	);
}
