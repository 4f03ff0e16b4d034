import { toLitres, type VolumeUnit } from "../../domain/units";
import type { DraftPour } from "../fillDraft";
import { exactVolume } from "../format";
import { productName } from "../text";
import { fillWords } from "../words/fill";

interface PouredListProps {
	/** All but the one that is being typed. */
	readonly pours: readonly DraftPour[];
	readonly unit: VolumeUnit;
	/** Those of a plan can be gone back to. */
	readonly planned: readonly string[];
	readonly onTakeOut: (pour: DraftPour) => void;
	readonly onBack: (pour: DraftPour) => void;
}

/** What went in at this stop before the product at hand. */
export function PouredList({ pours, unit, planned, onTakeOut, onBack }: PouredListProps) {
	const words = fillWords();
	return (
		<>
			{pours.map((pour, i) => (
				<div class="card row between" key={pour.id}>
					<p>
						{words.pour(
							i + 1,
							exactVolume(toLitres(Number(pour.typed.replace(",", ".")) || 0, unit), unit),
							productName(pour.product),
						)}
					</p>
					{planned.includes(pour.id) ? (
						<button type="button" class="button" onClick={() => onBack(pour)}>
							{words.change}
						</button>
					) : (
						<button type="button" class="button" onClick={() => onTakeOut(pour)}>
							{words.takeOut}
						</button>
					)}
				</div>
			))}
		</>
	);
}
