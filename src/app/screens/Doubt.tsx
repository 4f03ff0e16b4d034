import { countingEvents, isTankEvent, type TankEvent } from "../../domain/event";
import type { Contradiction, TankNow } from "../../keeper/view";
import { useAppState } from "../app";
import { CorrectEntry } from "../components/CorrectEntry";
import { CorrectReading } from "../components/CorrectReading";
import { DoubtEntries } from "../components/DoubtEntries";
import { DoubtExplanations } from "../components/DoubtExplanations";
import { isCorrectable } from "../correctionForm";
import { correctedWords, disagreements, measureAgainWords, treatments, untilSettled } from "../doubtWords";
import { percent, percentRange } from "../format";
import { later } from "../later";
import { unitOf } from "../model";
import { missedId } from "../remedies";
import { signalWord } from "../text";
import { useContradiction } from "../useContradiction";
import { useTakingBack } from "../useTakingBack";
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
	const { contradiction, failed } = useContradiction();
	if (failed) return <p class="fault">The entries could not be weighed. Reload the app and try again.</p>;
	return (
		<>
			<a class="button back" href="#/tank">
				Back to the tank
			</a>
			{contradiction === undefined ? (
				<p class="soft" role="status">
					Weighing what may have gone wrong…
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
	return (
		<div class="card" role="status">
			<h2>The last entries go together</h2>
			<p>
				Nothing among them contradicts the rest.
				{now && (
					<>
						{" "}
						The tank holds about {percent(now.estimate.median)}, 9 in 10:{" "}
						{percentRange(now.estimate.low, now.estimate.high)}.
					</>
				)}
			</p>
		</div>
	);
}

function Told({ contradiction }: { readonly contradiction: Contradiction }) {
	const { state } = useAppState();
	const unit = unitOf(state);
	return (
		<>
			<section class="warning" aria-label={title}>
				<p class="signal">{signalWord}</p>
				<h2>{title}</h2>
				{[...disagreements(contradiction, unit), ...treatments(contradiction)].map((sentence) => (
					<p key={sentence}>{sentence}</p>
				))}
				<p>
					<strong>{untilSettled}</strong>
				</p>
			</section>
			<DoubtEntries contradiction={contradiction} unit={unit} />
			<DoubtExplanations contradiction={contradiction} unit={unit} />
			<section class="card" aria-label="Measure again">
				<h2>Measure again</h2>
				<p>{measureAgainWords(contradiction)}</p>
				<a class="button wide" href="#/measure">
					Enter a measurement
				</a>
			</section>
			<p class="small soft">
				If you leave it as it is, it is called out until two or three more stops are in the log. What you change here
				stays in the log as void, and can be brought back.
			</p>
		</>
	);
}

const title = "The last entries contradict each other";
