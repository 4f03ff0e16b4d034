import type { VolumeUnit } from "../../domain/units";
import type { Tank } from "../../domain/vehicle";
import { volume } from "../format";
import { type TankForm, unknownTank, withUnit } from "../tankForm";
import { Choice, type Option } from "./Choice";
import { NumberField } from "./TextField";

interface TankFieldsProps<Form extends TankForm> {
	readonly form: Form;
	readonly fault?: string | undefined;
	/** The tank as it is stored; null for a new car. */
	readonly stored: Tank | null;
	readonly onChange: (form: Form) => void;
}

const units: readonly Option<VolumeUnit>[] = [
	{ value: "L", label: "Litres" },
	{ value: "gal", label: "US gallons" },
	{ value: "imp gal", label: "Imperial gallons" },
];

/** The tank's capacity and the unit of all volumes. */
export function TankFields<Form extends TankForm>({ form, fault, stored, onChange }: TankFieldsProps<Form>) {
	return (
		<>
			<Choice
				label="You count fuel in"
				options={units}
				value={form.unit}
				onChange={(unit) => onChange({ ...form, ...withUnit(form, unit, stored) })}
			/>
			<NumberField
				label={`Tank capacity, ${form.unit}`}
				hint="The owner’s manual has it. How far a fill moves the blend hangs on what the tank held before."
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
				I don’t know the capacity
			</button>
			{form.capacityUnknown && (
				<p class="small">
					Then {volume(unknownTank.capacityL, form.unit)} are assumed, and the account leans less on the gauge and on
					the nozzle’s click until you enter the capacity.
				</p>
			)}
		</>
	);
}
