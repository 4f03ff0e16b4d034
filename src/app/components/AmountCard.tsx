import type { ComponentChildren } from "preact";
import type { VolumeUnit } from "../../domain/units";
import type { DraftPour } from "../fillDraft";
import type { PreviewSource } from "../usePreview";
import { fillWords } from "../words/fill";
import { AmountBar } from "./AmountBar";
import { AmountOutlook } from "./AmountOutlook";
import { Keypad } from "./Keypad";

interface AmountCardProps {
	readonly pour: DraftPour;
	readonly label: string;
	/** L; 0 while nothing usable is typed. */
	readonly amount: number;
	/** End of the scale, L. */
	readonly most: number;
	readonly unit: VolumeUnit;
	/** Null: the ruler would mislead, for more is to come. */
	readonly source: PreviewSource | null;
	readonly refused: boolean;
	/** Said under the keys while the amount is typed. */
	readonly fault: string | null;
	readonly onChange: (part: Partial<DraftPour>) => void;
	readonly children?: ComponentChildren;
}

/** How much was pumped: typed, slid, and whether the nozzle clicked. */
export function AmountCard(props: AmountCardProps) {
	const { pour, label, amount, most, unit, source, refused, fault, onChange, children } = props;
	const words = fillWords();
	return (
		<div class="card">
			<div class="amount">
				<label for="amount">{words.inUnit(label, unit)}</label>
				<input
					id="amount"
					class="number"
					inputMode="none"
					autocomplete="off"
					placeholder="0"
					value={pour.typed}
					aria-invalid={refused || fault !== null}
					aria-describedby={refused ? "amount-fault" : fault === null ? undefined : "amount-limit"}
					onInput={(event) => onChange({ typed: event.currentTarget.value })}
				/>
			</div>
			{source && (
				<AmountBar source={source} amount={amount} most={most} unit={unit} onSlide={(typed) => onChange({ typed })} />
			)}
			<Keypad value={pour.typed} label={words.keysFor} onChange={(typed) => onChange({ typed })} />
			{fault !== null && (
				<p class="fault" id="amount-limit" role="alert">
					{fault}
				</p>
			)}
			{source && <AmountOutlook source={source} unit={unit} />}
			<button
				type="button"
				class="button wide"
				aria-pressed={pour.toClick}
				onClick={() => onChange({ toClick: !pour.toClick })}
			>
				{pour.toClick ? `✓ ${words.clicked}` : words.askClicked}
			</button>
			{children}
		</div>
	);
}
