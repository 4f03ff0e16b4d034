import type { VolumeUnit } from "../../domain/units";
import type { Tank } from "../../domain/vehicle";
import { volume } from "../format";
import { type TankForm, unknownTank, withUnit } from "../tankForm";
import { tankFormWords } from "../words/tankForm";
import { Choice } from "./Choice";
import { NumberField } from "./TextField";

interface TankFieldsProps<Form extends TankForm> {
	readonly form: Form;
	readonly fault?: string | undefined;
	/** The tank as it is stored; null for a new car. */
	readonly stored: Tank | null;
	readonly onChange: (form: Form) => void;
}

const units: readonly VolumeUnit[] = ["L", "gal", "imp gal"];

/** The tank's capacity and the unit of all volumes. */
export function TankFields<Form extends TankForm>({ form, fault, stored, onChange }: TankFieldsProps<Form>) {
	const words = tankFormWords();
	return (
		<>
			<Choice
				label={words.countIn}
				options={units.map((value) => ({ value, label: words.units[value] }))}
				value={form.unit}
				onChange={(unit) => onChange({ ...form, ...withUnit(form, unit, stored) })}
			/>
			<NumberField
				label={words.capacity(form.unit)}
				hint={words.hint}
				value={form.capacity}
				fault={fault}
				onInput={(capacity) => onChange({ ...form, capacity, capacityUnknown: false })}
			/>
			<button
				type="button"
				class="button wide"
				aria-pressed={form.capacityUnknown}
				onClick={() => onChange({ ...form, capacity: "", capacityUnknown: !form.capacityUnknown })}
			>
				{words.unknown}
			</button>
			{form.capacityUnknown && <p class="small">{words.assumed(volume(unknownTank.capacityL, form.unit))}</p>}
		</>
	);
}
