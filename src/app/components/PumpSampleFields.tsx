import type { LogEvent, Product } from "../../domain/event";
import { placesIn, productsIn } from "../fillChoices";
import { figuresWords } from "../words/figures";
import { PlacePicker } from "./PlacePicker";
import { ProductPicker } from "./ProductPicker";

interface PumpSampleFieldsProps {
	readonly events: readonly LogEvent[];
	readonly place: string | null;
	readonly product: Product;
	/** What is wrong with the place. */
	readonly fault: string | undefined;
	readonly onChange: (part: { readonly place: string | null } | { readonly product: Product }) => void;
}

/** Which pump a sample was taken from. */
export function PumpSampleFields({ events, place, product, fault, onChange }: PumpSampleFieldsProps) {
	const { takenWhere, whichFuel } = figuresWords();
	return (
		<>
			<h3>{takenWhere}</h3>
			<PlacePicker places={placesIn(events)} chosen={place} onChoose={(place) => onChange({ place })} />
			{fault && (
				<p class="fault" role="alert" tabIndex={-1}>
					{fault}
				</p>
			)}
			<ProductPicker
				label={whichFuel}
				recent={productsIn(events)}
				chosen={product}
				onChoose={(product) => onChange({ product })}
			/>
		</>
	);
}
