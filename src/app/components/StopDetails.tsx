import type { VolumeUnit } from "../../domain/units";
import type { DraftPour, FillDraft } from "../fillDraft";
import { distanceUnit } from "../format";
import { detailsFault, readPrice } from "../stopDetails";
import { productName } from "../text";
import { fillWords } from "../words/fill";
import { stopWords } from "../words/stop";
import { Fold } from "./Fold";
import { OdometerField } from "./OdometerField";
import { NumberField } from "./TextField";

interface StopDetailsProps {
	readonly draft: FillDraft;
	readonly unit: VolumeUnit;
	readonly currency: string | undefined;
	/** The odometer before it in the log. */
	readonly last: { readonly km: number; readonly at: string } | null;
	readonly now: number;
	readonly onChange: (draft: FillDraft) => void;
}

/** What need not be noted at a stop, but tells of consumption and cost. */
export function StopDetails({ draft, unit, currency, last, now, onChange }: StopDetailsProps) {
	const { pours, odometer } = draft;
	const noted = [
		odometer === "" ? "" : `${odometer}\u00a0${distanceUnit(unit)}`,
		...pours.map(({ price }) => (price === "" ? "" : fillWords().priceNoted(price, unit))),
	].filter(Boolean);
	const { price, priceIn, ofProduct } = stopWords();
	const priceLabel = ({ product }: DraftPour) => {
		const label = currency === undefined ? price(unit) : priceIn(unit, currency);
		return pours.length > 1 ? ofProduct(label, productName(product)) : label;
	};
	return (
		<Fold
			class="card"
			summary={noted.length === 0 ? fillWords().details : noted.join(", ")}
			wrong={detailsFault(draft, unit)}
		>
			<OdometerField
				typed={odometer}
				last={last}
				unit={unit}
				onInput={(typed) => onChange({ ...draft, odometer: typed, notedAt: now })}
			/>
			{pours.map((pour) => {
				const read = readPrice(pour.price, unit);
				return (
					<NumberField
						key={pour.id}
						label={priceLabel(pour)}
						value={pour.price}
						fault={read.ok ? null : read.error}
						onInput={(price) =>
							onChange({ ...draft, pours: pours.map((other) => (other.id === pour.id ? { ...pour, price } : other)) })
						}
					/>
				);
			})}
		</Fold>
	);
}
