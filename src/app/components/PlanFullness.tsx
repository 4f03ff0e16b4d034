import type { Fullness } from "../../domain/plan/request";
import type { VolumeUnit } from "../../domain/units";
import type { PlanFaults, PlanForm } from "../planForm";
import { Choice, type Option } from "./Choice";
import { PriceFields } from "./PriceFields";
import { NumberField } from "./TextField";

interface PlanFullnessProps {
	readonly form: PlanForm;
	readonly unit: VolumeUnit;
	readonly faults: PlanFaults;
	readonly currency: string | undefined;
	readonly onChange: (form: PlanForm) => void;
}

const ways: readonly Option<Fullness["kind"]>[] = [
	{ value: "click", label: "To the click" },
	{ value: "litres", label: "An amount" },
	{ value: "money", label: "For a sum of money" },
];

/** How full, and what it takes to know that. */
export function PlanFullness({ form, unit, faults, currency, onChange }: PlanFullnessProps) {
	return (
		<section class="stack" aria-label="How full">
			<Choice label="How full?" options={ways} value={form.full} onChange={(full) => onChange({ ...form, full })} />
			{form.full === "litres" && (
				<NumberField
					label={`In all, ${unit}`}
					value={form.amount}
					fault={form.amount === "" ? null : faults.amount}
					onInput={(amount) => onChange({ ...form, amount })}
				/>
			)}
			{form.full === "money" && (
				<>
					<NumberField
						label={currency === undefined ? "For how much" : `For how much, ${currency}`}
						value={form.money}
						fault={form.money === "" ? null : faults.money}
						onInput={(money) => onChange({ ...form, money })}
					/>
					<PriceFields form={form} unit={unit} faults={faults} currency={currency} onChange={onChange} />
				</>
			)}
		</section>
	);
}
