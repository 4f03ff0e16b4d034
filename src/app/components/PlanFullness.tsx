import type { Fullness } from "../../domain/plan/request";
import type { VolumeUnit } from "../../domain/units";
import type { PlanFaults, PlanForm } from "../planForm";
import { planScreenWords } from "../words/plan";
import { Choice } from "./Choice";
import { PriceFields } from "./PriceFields";
import { NumberField } from "./TextField";

interface PlanFullnessProps {
	readonly form: PlanForm;
	readonly unit: VolumeUnit;
	readonly faults: PlanFaults;
	readonly currency: string | undefined;
	readonly onChange: (form: PlanForm) => void;
}

const ways: readonly Fullness["kind"][] = ["click", "litres", "money"];

/** How full, and what it takes to know that. */
export function PlanFullness({ form, unit, faults, currency, onChange }: PlanFullnessProps) {
	const words = planScreenWords();
	return (
		<section class="stack" aria-label={words.howFull}>
			<Choice
				label={words.howFullQuestion}
				options={ways.map((value) => ({ value, label: words.fullness[value] }))}
				value={form.full}
				onChange={(full) => onChange({ ...form, full })}
			/>
			{form.full === "litres" && (
				<NumberField
					label={words.inAll(unit)}
					value={form.amount}
					fault={form.amount === "" ? null : faults.amount}
					onInput={(amount) => onChange({ ...form, amount })}
				/>
			)}
			{form.full === "money" && (
				<>
					<NumberField
						label={words.forHowMuch(currency)}
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
