import type { FillDraft } from "../fillDraft";
import { dateTime } from "../format";
import { stopWords } from "../words/stop";
import { GaugeField, gaugeWords } from "./GaugeField";
import { PlacePicker } from "./PlacePicker";
import { WhenField } from "./WhenField";

interface ArrivalFieldsProps {
	readonly draft: FillDraft;
	readonly places: readonly string[];
	readonly now: number;
	readonly onChange: (draft: FillDraft) => void;
}

/** Where and when the stop is, and what the gauge shows; folded away, for mostly it is filled in right. */
export function ArrivalFields({ draft, places, now, onChange }: ArrivalFieldsProps) {
	const { place, at, gauge } = draft;
	const words = stopWords();
	const named = place ?? words.placeNotNamed;
	return (
		<>
			<details class="card">
				<summary>{at === null ? named : words.placeAndTime(named, dateTime(at))}</summary>
				<div class="stack">
					<PlacePicker places={places} chosen={place} onChoose={(chosen) => onChange({ ...draft, place: chosen })} />
					<WhenField value={at} now={now} onChange={(chosen) => onChange({ ...draft, at: chosen })} />
				</div>
			</details>
			<details class="card">
				<summary>{gauge === null ? words.gaugeNotLooked : words.gaugeBefore(gaugeWords(gauge))}</summary>
				<GaugeField
					label={words.gauge}
					hint={words.gaugeHint}
					value={gauge}
					onChange={(looked) => onChange({ ...draft, gauge: looked, notedAt: now })}
				/>
			</details>
		</>
	);
}
