import type { VolumeUnit } from "../../domain/units";
import { productKey } from "../fillChoices";
import { changeOffer, type PlanFaults, type PlanForm } from "../planForm";
import { productName } from "../text";
import { stopWords } from "../words/stop";
import { NumberField } from "./TextField";

interface PriceFieldsProps {
	readonly form: PlanForm;
	readonly unit: VolumeUnit;
	readonly faults: PlanFaults;
	readonly currency: string | undefined;
	readonly onChange: (form: PlanForm) => void;
}

/** What each product on sale costs. */
export function PriceFields({ form, unit, faults, currency, onChange }: PriceFieldsProps) {
	return (
		<>
			{form.offers
				.filter(({ on }) => on)
				.map(({ product, price }) => (
					<NumberField
						key={productKey(product)}
						label={labelOf(productName(product), unit, currency)}
						value={price}
						fault={faults.prices?.[productKey(product)]}
						onInput={(typed) => onChange(changeOffer(form, product, { price: typed }))}
					/>
				))}
		</>
	);
}

function labelOf(product: string, unit: VolumeUnit, currency: string | undefined): string {
	const { forProduct, forProductIn } = stopWords();
	return currency === undefined ? forProduct(product, unit) : forProductIn(product, unit, currency);
}
