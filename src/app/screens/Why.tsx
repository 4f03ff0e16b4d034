import { useState } from "preact/hooks";
import type { Estimate } from "../../domain/estimator/estimate";
import type { WhyAnswer } from "../../keeper/why";
import { useAppState } from "../app";
import { TankAdvice } from "../components/MeasureAdvice";
import { percent, percentRange } from "../format";
import { unitOf } from "../model";
import { useAnswer } from "../useAnswer";
import { reasonWords, remedyWords } from "../whyWords";
import { whyWords } from "../words/why";
import { DoubtCard } from "./why/DoubtCard";
import { EvidenceCard } from "./why/EvidenceCard";
import { OriginCard } from "./why/OriginCard";
import { StopCard } from "./why/StopCard";
import "./Why.css";

/** Why the range is as wide as it is, where the fuel comes from, and what would help. */
export function WhyScreen() {
	const { model, state } = useAppState();
	const words = whyWords();
	const { car, account, now } = state;
	const carId = car?.id ?? "";
	const key = car && account ? JSON.stringify([car, account.count]) : null;
	const { answer, failed } = useAnswer(key, async () => ({ key, why: await model.why(carId) }));
	if (failed) return <p class="fault">{words.failed}</p>;
	if (!account || !answer) {
		return (
			<p class="soft" role="status">
				{words.reckoning}
			</p>
		);
	}
	const { why } = answer;
	if (!why || !now) {
		return (
			<div class="card">
				<h2>{words.nothingTitle}</h2>
				<p>{words.nothing}</p>
				<a class="button main" href="#/fill">
					{words.record}
				</a>
			</div>
		);
	}
	// An entry that came in meanwhile makes the numbers of another account.
	return <Told why={why} estimate={now.estimate} asked={answer.key ?? ""} carId={carId} />;
}

interface ToldProps {
	readonly why: WhyAnswer;
	readonly estimate: Estimate;
	/** The question that this answers. */
	readonly asked: string;
	readonly carId: string;
}

function Told({ why, estimate, asked, carId }: ToldProps) {
	const { state } = useAppState();
	const unit = unitOf(state);
	const words = whyWords();
	const [first] = why.sources;
	return (
		<>
			<section class="card" aria-label={words.why}>
				<h2>{words.title(percent(estimate.median), percentRange(estimate.low, estimate.high))}</h2>
				<p>{reasonWords(why)}</p>
			</section>
			<DoubtCard why={why} />
			<section class="card" aria-label={words.helpMost}>
				<h2>{words.helpMost}</h2>
				{first && <p>{remedyWords(first.source)}</p>}
				<a class="button wide" href="#/measure">
					{words.measure}
				</a>
				<MeasureFold />
			</section>
			<OriginCard why={why} unit={unit} content={estimate.median} />
			<StopCard why={why} unit={unit} now={estimate} />
			<EvidenceCard carId={carId} from={why.from} asked={asked} />
		</>
	);
}

/** The measurements of the tank by their worth, reckoned once they are asked for. */
function MeasureFold() {
	const [open, setOpen] = useState(false);
	return (
		<details onToggle={(event) => setOpen(event.currentTarget.open)}>
			<summary>{whyWords().measureNow}</summary>
			{open && <TankAdvice />}
		</details>
	);
}
