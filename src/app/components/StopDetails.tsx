import type { VolumeUnit } from "../../domain/units";
import type { DraftPour, FillDraft } from "../fillDraft";
import { distanceUnit } from "../format";
import { detailsFault, readPrice } from "../stopDetails";
import { productName } from "../text";
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
		...pours.map(({ price }) => (price === "" ? "" : `${price} per\u00a0${unit}`)),
	].filter(Boolean);
	const priceLabel = ({ product }: DraftPour) =>
		`Price per ${unit}${currency === undefined ? "" : `, ${currency}`}${pours.length > 1 ? `, of “${productName(product)}”` : ""}`;
	return (
		<Fold
			class="card"
			summary={noted.length === 0 ? "Odometer and price" : noted.join(", ")}
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
