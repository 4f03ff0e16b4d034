import { countingEvents, isTankEvent, type TankEvent } from "../../domain/event";
import type { Contradiction, TankNow } from "../../keeper/view";
import { useAppState } from "../app";
import { CheckedCard } from "../components/CheckedCard";
import { CorrectEntry } from "../components/CorrectEntry";
import { CorrectReading } from "../components/CorrectReading";
import { DoubtEntries } from "../components/DoubtEntries";
import { DoubtExplanations } from "../components/DoubtExplanations";
import { isCorrectable } from "../correctionForm";
import { correctedWords, disagreements, measureAgainWords, treatments } from "../doubtWords";
import { percent, percentRange } from "../format";
import { later } from "../later";
import { unitOf } from "../model";
import { missedId } from "../remedies";
import { signalWord } from "../text";
import { useContradiction } from "../useContradiction";
import { useTakingBack } from "../useTakingBack";
import { doubtWords } from "../words/doubt";
import "../components/WarningCard.css";
import "./Doubt.css";
import "./Entry.css";

const FillScreen = later(async () => (await import("./Fill")).FillScreen);

interface DoubtScreenProps {
	/** The entry being put right, or before which a stop is entered (`missedId`); null, or one that counts no more: none. */
	readonly id: string | null;
}

/** What is wrong among the last entries, what may be behind it, and the ways to settle it. */
export function DoubtScreen({ id }: DoubtScreenProps) {
	const { account } = useAppState().state;
	const counting = id !== null && account ? countingEvents(account.events).filter(isTankEvent) : [];
	const entry = counting.find((event) => event.id === id);
	if (entry) return <PutRight entry={entry} />;
	const before = counting.find((event) => missedId(event.id) === id);
	return before ? <FillScreen correcting={null} missedBefore={before.id} then={here} /> : <Weighed />;
}

function PutRight({ entry }: { readonly entry: TankEvent }) {
	const { change } = useTakingBack();
	function back(): void {
		location.replace(here);
	}
	async function replace(corrected: TankEvent): Promise<boolean> {
		const began = location.hash;
		const done = await change([], [entry.id], correctedWords(entry), [corrected]);
		if (done && location.hash === began) back();
		return done;
	}
	if (entry.kind === "fill") return <FillScreen correcting={entry.id} then={here} />;
	if (isCorrectable(entry)) return <CorrectEntry event={entry} onClose={back} onReplace={replace} />;
	return <CorrectReading event={entry} onClose={back} onReplace={replace} />;
}

const here = "#/doubt";

function Weighed() {
	const { state } = useAppState();
	const words = doubtWords();
	const { contradiction, failed } = useContradiction();
	if (failed) return <p class="fault">{words.failed}</p>;
	return (
		<>
			<a class="button back" href="#/tank">
				{words.toTank}
			</a>
			{contradiction === undefined ? (
				<p class="soft" role="status">
					{words.weighing}
				</p>
			) : contradiction ? (
				<Told contradiction={contradiction} />
			) : (
				<Settled now={state.now} />
			)}
		</>
	);
}

function Settled({ now }: { readonly now: TankNow | null }) {
	const { goTogether, nothingContradicts } = doubtWords();
	return (
		<div class="card" role="status">
			<h2>{goTogether}</h2>
			<p>
				{nothingContradicts(
					now && {
						content: percent(now.estimate.median),
						range: percentRange(now.estimate.low, now.estimate.high),
					},
				)}
			</p>
		</div>
	);
}

function Told({ contradiction }: { readonly contradiction: Contradiction }) {
	const { state } = useAppState();
	const unit = unitOf(state);
	const words = doubtWords();
	return (
		<>
			<section class="warning" aria-label={words.title}>
				<p class="signal">{signalWord()}</p>
				<h2>{words.title}</h2>
				{[...disagreements(contradiction, unit), ...treatments(contradiction)].map((sentence) => (
					<p key={sentence}>{sentence}</p>
				))}
				<p>
					<strong>{words.untilSettled}</strong>
				</p>
			</section>
			<DoubtEntries contradiction={contradiction} unit={unit} />
			<DoubtExplanations contradiction={contradiction} unit={unit} />
			<section class="card" aria-label={words.again}>
				<h2>{words.again}</h2>
				<p>{measureAgainWords(contradiction)}</p>
				<a class="button wide" href="#/measure">
					{words.enter}
				</a>
			</section>
			<CheckedCard contradiction={contradiction} />
			<p class="small soft">{words.leftAlone}</p>
		</>
	);
}
