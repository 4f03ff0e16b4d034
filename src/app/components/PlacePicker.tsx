import { useState } from "preact/hooks";
import { oneLine } from "../oneLine";
import { stopWords } from "../words/stop";

interface PlacePickerProps {
	readonly places: readonly string[];
	readonly chosen: string | null;
	readonly onChoose: (place: string | null) => void;
}

/** Where one stands; a place that is named is remembered, and what its pumps gave with it. */
export function PlacePicker({ places, chosen, onChoose }: PlacePickerProps) {
	const [typed, setTyped] = useState("");
	const shown = chosen !== null && !places.includes(chosen) ? [chosen, ...places] : places;
	const name = typed.trim();
	const words = stopWords();
	function take(): void {
		onChoose(name);
		setTyped("");
	}
	return (
		<div class="stack">
			<fieldset class="row" aria-label={words.places}>
				{shown.slice(0, 12).map((place) => (
					<button
						type="button"
						class="button"
						key={place}
						aria-pressed={place === chosen}
						onClick={() => onChoose(place)}
					>
						{place}
					</button>
				))}
				<button type="button" class="button" aria-pressed={chosen === null} onClick={() => onChoose(null)}>
					{words.notNamed}
				</button>
			</fieldset>
			<div class="field">
				<label for="new-place">{words.newPlace}</label>
				<div class="row">
					<input
						id="new-place"
						class="input grow"
						maxLength={60}
						value={typed}
						onInput={(event) => setTyped(oneLine(event.currentTarget.value))}
						// Leaving the field, or Enter, is as good as the button: nothing typed may get lost.
						onChange={() => name !== "" && take()}
					/>
					<button type="button" class="button" disabled={name === ""} onClick={take}>
						{words.useIt}
					</button>
				</div>
			</div>
		</div>
	);
}
