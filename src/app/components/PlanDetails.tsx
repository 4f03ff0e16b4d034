import type { VolumeUnit } from "../../domain/units";
import type { Calibration } from "../../domain/vehicle";
import { exactPercentRange } from "../format";
import type { PlanFaults, PlanForm } from "../planForm";
import { planScreenWords } from "../words/plan";
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
	const words = planScreenWords();
	const wrong = faults.step ?? faults.minimum ?? (form.full === "money" ? undefined : faults.prices);
	return (
		<Fold class="card" summary={words.details} wrong={wrong !== undefined}>
			{calibrations.length > 1 && (
				<Choice
					label={words.pumpFor}
					hint={words.pumpForHint}
					options={calibrations.map(({ id, name, window }) => ({
						value: id,
						label: name,
						more: id === flashed?.id ? words.flashedNow(exactPercentRange(...window)) : exactPercentRange(...window),
					}))}
					value={form.target ?? flashed?.id ?? null}
					onChange={(target) => onChange({ ...form, target: target === flashed?.id ? null : target })}
				/>
			)}
			<NumberField
				label={words.step(unit)}
				hint={words.stepHint}
				value={form.step}
				fault={faults.step}
				onInput={(step) => onChange({ ...form, step })}
			/>
			<NumberField
				label={words.minimum(unit)}
				hint={words.minimumHint}
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
