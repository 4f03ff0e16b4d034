import type { VolumeUnit } from "../../domain/units";
import type { Contradiction } from "../../keeper/view";
import { disagreements, likeliest } from "../doubtWords";
import { signalWord } from "../text";
import { doubtWords } from "../words/doubt";
import "./WarningCard.css";

interface ContradictionCardProps {
	readonly contradiction: Contradiction;
	readonly unit: VolumeUnit;
}

/** On the Tank screen: what disagrees, what is likeliest behind it, and the way to settle it. */
export function ContradictionCard({ contradiction, unit }: ContradictionCardProps) {
	const { title, untilSettled, settle } = doubtWords();
	const told = disagreements(contradiction, unit);
	return (
		<section class="warning" aria-label={title}>
			<p class="signal">{signalWord()}</p>
			<h2>{title}</h2>
			{told.map((sentence) => (
				<p key={sentence}>{sentence}</p>
			))}
			<p>{likeliest(contradiction, unit)}</p>
			<p>
				<strong>{untilSettled}</strong>
			</p>
			<a class="button main" href="#/doubt">
				{settle}
			</a>
		</section>
	);
}
