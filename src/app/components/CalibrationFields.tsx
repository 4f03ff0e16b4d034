import { useId } from "preact/hooks";
import { type CalibrationFaults, type CalibrationForm, usualName, withMadeFor } from "../calibrationForm";
import { calibrationWords } from "../words/calibration";
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
	const words = calibrationWords();
	return (
		<>
			<NumberField
				label={words.madeFor}
				hint={words.madeForHint}
				value={form.madeFor}
				fault={faults.madeFor}
				onInput={(typed) => onChange(withMadeFor(form, typed))}
			/>
			<fieldset class="field" aria-describedby={hint}>
				<legend class="label">{words.window}</legend>
				<div class="pair">
					<NumberField
						label={words.from}
						value={form.from}
						fault={faults.from}
						onInput={(from) => onChange({ ...form, from, assumed: false })}
					/>
					<NumberField
						label={words.to}
						value={form.to}
						fault={faults.to}
						onInput={(to) => onChange({ ...form, to, assumed: false })}
					/>
				</div>
				<p class="small soft" id={hint}>
					{form.assumed && form.from !== "" ? <strong>{words.assumed}</strong> : words.windowHint}
				</p>
			</fieldset>
			<TextField
				label={words.name}
				hint={words.nameHint(usualName(form.madeFor))}
				value={form.name}
				onInput={(name) => onChange({ ...form, name })}
			/>
		</>
	);
}
