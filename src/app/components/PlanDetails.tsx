import type { VolumeUnit } from "../../domain/units";
import type { Calibration } from "../../domain/vehicle";
import { exactPercentRange } from "../format";
import type { PlanFaults, PlanForm } from "../planForm";
import { Choice } from "./Choice";
import { Fold } from "./Fold";
import { PriceFields } from "./PriceFields";
import { NumberField } from "./TextField";

interface PlanDetailsProps {
	readonly form: PlanForm;
	readonly unit: VolumeUnit;
	readonly faults: PlanFaults;
	readonly calibrations: readonly Calibration[];
	readonly flashed: Calibration | null;
	readonly currency: string | undefined;
	readonly onChange: (form: PlanForm) => void;
}

/** What mostly stays as it is: the calibration to pump for, how fine the amounts are, and prices. */
export function PlanDetails({ form, unit, faults, calibrations, flashed, currency, onChange }: PlanDetailsProps) {
	const wrong = faults.step ?? faults.minimum ?? (form.full === "money" ? undefined : faults.prices);
	return (
		<Fold class="card" summary="Details" wrong={wrong !== undefined}>
			{calibrations.length > 1 && (
				<Choice
					label="Pump for"
					hint="If another calibration is going to be flashed after this stop, plan for that one."
					options={calibrations.map(({ id, name, window }) => ({
						value: id,
						label: name,
						more: `${exactPercentRange(window[0], window[1])}${id === flashed?.id ? ", flashed now" : ""}`,
					}))}
					value={form.target ?? flashed?.id ?? null}
					onChange={(target) => onChange({ ...form, target: target === flashed?.id ? null : target })}
				/>
			)}
			<NumberField
				label={`Amounts in steps of, ${unit}`}
				hint="What your hand can hit at the nozzle."
				value={form.step}
				fault={faults.step}
				onInput={(step) => onChange({ ...form, step })}
			/>
			<NumberField
				label={`Least that the dispenser sells, ${unit}`}
				hint="It stands on the dispenser where there is such a limit. Empty: none."
				value={form.minimum}
				fault={faults.minimum}
				onInput={(minimum) => onChange({ ...form, minimum })}
			/>
			{form.full !== "money" && (
				<PriceFields form={form} unit={unit} faults={faults} currency={currency} onChange={onChange} />
			)}
		</Fold>
	);
}
