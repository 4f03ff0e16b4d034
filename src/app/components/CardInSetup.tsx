import type { Calibration } from "../../domain/vehicle";
import { exactPercent, exactPercentRange } from "../format";
import { cardWords } from "../words/card";

interface CardInSetupProps {
	readonly card: Calibration;
	readonly onWithout: () => void;
}

/** The calibration of a car that is being set up, where a card says it. */
export function CardInSetup({ card, onWithout }: CardInSetupProps) {
	const words = cardWords();
	return (
		<section class="card">
			<h2>{words.inSetup(card.name)}</h2>
			<p class="number">{words.inSetupMore(exactPercent(card.calibratedFor), exactPercentRange(...card.window))}</p>
			<button type="button" class="button wide" onClick={onWithout}>
				{words.withoutCard}
			</button>
		</section>
	);
}
