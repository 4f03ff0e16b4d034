import { useState } from "preact/hooks";
import type { LogEvent } from "../../domain/event";
import { productKey } from "../fillChoices";
import { changeOffer, type PlanForm, withOffer } from "../planForm";
import { productName, productRange } from "../text";
import { planScreenWords } from "../words/plan";
import { Check } from "./Check";
import { AllProducts } from "./ProductPicker";

interface OffersFieldProps {
	readonly form: PlanForm;
	readonly events: readonly LogEvent[];
	readonly onChange: (form: PlanForm) => void;
}

/** What can be had here: the plan chooses among it. */
export function OffersField({ form, events, onChange }: OffersFieldProps) {
	const [other, setOther] = useState(false);
	const words = planScreenWords();
	return (
		<fieldset class="offers stack">
			<legend class="label">{words.onSale}</legend>
			<div class="chips">
				{form.offers.map(({ product, on }) => (
					<Check
						key={productKey(product)}
						label={productName(product)}
						more={productRange(product)}
						checked={on}
						onChange={(checked) => onChange(changeOffer(form, product, { on: checked }))}
					/>
				))}
				<button type="button" class="button" aria-expanded={other} onClick={() => setOther(!other)}>
					{words.another}
				</button>
			</div>
			{other && (
				<AllProducts
					onChoose={(product) => {
						setOther(false);
						onChange(withOffer(form, product, events));
					}}
				/>
			)}
		</fieldset>
	);
}
