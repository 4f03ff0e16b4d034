import { useId } from "preact/hooks";
import { type CalibrationFaults, type CalibrationForm, usualName, withMadeFor } from "../calibrationForm";
import "./CalibrationFields.css";
import { NumberField, TextField } from "./TextField";

interface CalibrationFieldsProps {
	readonly form: CalibrationForm;
	readonly faults: CalibrationFaults;
	readonly onChange: (form: CalibrationForm) => void;
}

/** What a calibration is made for, the window it tolerates, and its name. */
export function CalibrationFields({ form, faults, onChange }: CalibrationFieldsProps) {
	const hint = useId();
	return (
		<>
			<NumberField
				label="Made for, % ethanol"
				hint="The blend your tuner had in mind."
				value={form.madeFor}
				fault={faults.madeFor}
				onInput={(typed) => onChange(withMadeFor(form, typed))}
			/>
			<fieldset class="field" aria-describedby={hint}>
				<legend class="label">The window it tolerates</legend>
				<div class="pair">
					<NumberField
						label="From, %"
						value={form.from}
						fault={faults.from}
						onInput={(from) => onChange({ ...form, from, assumed: false })}
					/>
					<NumberField
						label="To, %"
						value={form.to}
						fault={faults.to}
						onInput={(to) => onChange({ ...form, to, assumed: false })}
					/>
				</div>
				<p class="small soft" id={hint}>
					{form.assumed && form.from !== "" ? (
						<strong>Four points either way are our assumption; ask your tuner.</strong>
					) : (
						"Below it the engine may knock, above it runs lean under boost."
					)}
				</p>
			</fieldset>
			<TextField
				label="Name of the calibration"
				hint={`May stay empty: then it is called “${usualName(form.madeFor)}”.`}
				value={form.name}
				onInput={(name) => onChange({ ...form, name })}
			/>
		</>
	);
}
