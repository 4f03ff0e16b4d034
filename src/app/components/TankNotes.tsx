import type { VolumeUnit } from "../../domain/units";
import type { TankNow } from "../../keeper/view";
import { percentRange, volume, volumeRange } from "../format";
import { cautionsWords } from "../words/cautions";
import { tankNotesWords } from "../words/tankNotes";
import { Cautions } from "./Cautions";

interface TankNotesProps {
	readonly now: TankNow;
	readonly unit: VolumeUnit;
}

/** Folded away under the Tank screen: what its numbers and its picture mean, and the cautions. */
export function TankNotes({ now: { estimate, level }, unit }: TankNotesProps) {
	const words = tankNotesWords();
	return (
		<>
			<details class="card">
				<summary>{words.lawfulTitle}</summary>
				<p>{words.lawful(percentRange(estimate.lawfulLow, estimate.lawfulHigh))}</p>
				<p>{words.level(volume(level.median, unit), volumeRange(level.low, level.high, unit))}</p>
			</details>
			<details class="card">
				<summary>{words.dotsTitle}</summary>
				<p>{words.dots}</p>
			</details>
			<details class="card">
				<summary>{cautionsWords().title}</summary>
				<Cautions />
			</details>
		</>
	);
}
