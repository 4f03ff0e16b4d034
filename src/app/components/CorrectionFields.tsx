import type { CorrectionFaults, CorrectionForm } from "../correctionForm";
import { entryScreenWords } from "../words/entry";
import { Choice } from "./Choice";
import { NumberField } from "./TextField";

interface CorrectionFieldsProps {
	readonly form: CorrectionForm;
	readonly faults: CorrectionFaults;
	readonly onChange: (form: CorrectionForm) => void;
}

/** What the tank held at a start. */
export function CorrectionFields({ form, faults, onChange }: CorrectionFieldsProps) {
	const words = entryScreenWords().form;
	return (
		<>
			<Choice
				label={words.wasInTank}
				options={[
					{ value: "limits", label: words.limits },
					{ value: "measured", label: words.measuredWay },
				]}
				value={form.vouched}
				onChange={(vouched) => onChange({ ...form, vouched })}
			/>
			{form.vouched === "limits" ? (
				<>
					<NumberField
						label={words.low}
						value={form.low}
						fault={faults.low}
						onInput={(low) => onChange({ ...form, low })}
					/>
					<NumberField
						label={words.high}
						value={form.high}
						fault={faults.high}
						onInput={(high) => onChange({ ...form, high })}
					/>
				</>
			) : (
				<>
					<NumberField
						label={words.measured}
						value={form.measured}
						fault={faults.measured}
						onInput={(measured) => onChange({ ...form, measured })}
					/>
					<NumberField
						label={words.sd}
						hint={words.sdHint}
						value={form.sd}
						fault={faults.sd}
						onInput={(sd) => onChange({ ...form, sd })}
					/>
				</>
			)}
		</>
	);
}
