import { useState } from "preact/hooks";
import type { FuelSystem } from "../../../domain/engine/fuelSystem";
import { Fold } from "../../components/Fold";
import { Form } from "../../components/Form";
import { NumberField } from "../../components/TextField";
import {
	countEntered,
	type FieldName,
	type FuelSystemFaults,
	type FuelSystemForm,
	fieldNames,
	fields,
	isAsStored,
	isSpread,
	withFieldUnit,
} from "../../fuelSystemForm";
import { unitKinds, unitsOfKind } from "../../fuelSystemUnits";
import { fieldHint, fieldLabel, unitLabel } from "../../fuelSystemWords";
import type { Words } from "../../words/en/fuelSystem";
import { fuelSystemWords } from "../../words/fuelSystem";

interface FuelSystemFieldsProps {
	readonly form: FuelSystemForm;
	readonly stored: FuelSystem;
	/** As read; shown once saving was refused. */
	readonly faults: FuelSystemFaults;
	readonly onChange: (form: FuelSystemForm) => void;
	readonly onSave: () => Promise<boolean>;
}

const parts: readonly { readonly name: keyof Words["parts"]; readonly fields: readonly FieldName[] }[] = [
	{
		name: "injectors",
		fields: ["injectorFlowCcPerMin", "injectorRatedKPa", "injectorFullLoadKPa", "injectorCount", "dutyLimit"],
	},
	{ name: "pump", fields: ["pumpFlowLPerH"] },
	{ name: "engine", fields: ["powerKW", "consumptionGPerKWh"] },
	{ name: "lambda", fields: ["trimAuthority", "commandedLambda", "leanestLambda"] },
];

/** The card to fill in, as far as one can. */
export function FuelSystemFields({ form, stored, faults, onChange, onSave }: FuelSystemFieldsProps) {
	const words = fuelSystemWords();
	const entered = countEntered(form);
	const [open] = useState(entered === 0 || !isAsStored(form, stored));
	const [refused, setRefused] = useState(false);
	const wrong = Object.keys(faults).length > 0;
	const shown = refused ? faults : {};
	const field = (name: FieldName) => (
		<Field key={name} name={name} form={form} stored={stored} fault={shown[name]} onChange={onChange} />
	);
	function save(): Promise<boolean> | null {
		setRefused(wrong);
		return wrong ? null : onSave();
	}
	return (
		<details class="card" open={open}>
			<summary>
				<h2>{words.titleWith(entered, fieldNames.length)}</h2>
			</summary>
			<Form label={words.title} onSave={save}>
				<p class="small">{words.leaveEmpty}</p>
				{parts.map(({ name, fields }) => (
					<fieldset class="part" key={name}>
						<legend>{words.parts[name]}</legend>
						{fields.map(field)}
					</fieldset>
				))}
				<Fold summary={words.spreads} wrong={fieldNames.some((name) => isSpread(name) && shown[name] !== undefined)}>
					<fieldset class="part">
						<legend class="hidden">{words.spreads}</legend>
						<p class="small">{words.spreadsMeant}</p>
						{fieldNames.filter(isSpread).map(field)}
					</fieldset>
				</Fold>
				{refused && wrong && (
					<p class="fault" role="alert">
						{words.mend}
					</p>
				)}
				<button type="submit" class="button main">
					{words.save}
				</button>
			</Form>
		</details>
	);
}

interface FieldProps {
	readonly name: FieldName;
	readonly form: FuelSystemForm;
	readonly stored: FuelSystem;
	readonly fault: string | undefined;
	readonly onChange: (form: FuelSystemForm) => void;
}

/** A number and, where the trade has several, its unit. */
function Field({ name, form, stored, fault, onChange }: FieldProps) {
	const kind = unitKinds.find((kind) => kind === fields[name].unit);
	return (
		<NumberField
			label={fieldLabel(name, form.units)}
			hint={fieldHint(name, form.units)}
			value={form.values[name] ?? ""}
			fault={fault}
			onInput={(typed) => onChange({ ...form, values: { ...form.values, [name]: typed } })}
			beside={
				kind && (
					<select
						class="input"
						aria-label={unitLabel(name)}
						value={form.units[kind]}
						onChange={(event) => onChange(withFieldUnit(form, name, kind, event.currentTarget.value, stored))}
					>
						{unitsOfKind(kind).map((unit) => (
							<option key={unit} value={unit}>
								{unit}
							</option>
						))}
					</select>
				)
			}
		/>
	);
}
