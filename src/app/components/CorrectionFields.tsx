import type { CorrectionFaults, CorrectionForm } from "../correctionForm";
import { Choice, type Option } from "./Choice";
import { NumberField } from "./TextField";

interface CorrectionFieldsProps {
	readonly form: CorrectionForm;
	readonly faults: CorrectionFaults;
	readonly onChange: (form: CorrectionForm) => void;
}

const ways: readonly Option<CorrectionForm["vouched"]>[] = [
	{ value: "limits", label: "Between two limits" },
	{ value: "measured", label: "Measured" },
];

/** What the tank held at a start. */
export function CorrectionFields({ form, faults, onChange }: CorrectionFieldsProps) {
	return (
		<>
			<Choice
				label="What was in the tank?"
				options={ways}
				value={form.vouched}
				onChange={(vouched) => onChange({ ...form, vouched })}
			/>
			{form.vouched === "limits" ? (
				<>
					<NumberField
						label="At least, % ethanol"
						value={form.low}
						fault={faults.low}
						onInput={(low) => onChange({ ...form, low })}
					/>
					<NumberField
						label="At most, % ethanol"
						value={form.high}
						fault={faults.high}
						onInput={(high) => onChange({ ...form, high })}
					/>
				</>
			) : (
				<>
					<NumberField
						label="Measured, % ethanol"
						value={form.measured}
						fault={faults.measured}
						onInput={(measured) => onChange({ ...form, measured })}
					/>
					<NumberField
						label="Give or take, points"
						hint="The truth is within this two times in three."
						value={form.sd}
						fault={faults.sd}
						onInput={(sd) => onChange({ ...form, sd })}
					/>
				</>
			)}
		</>
	);
}
