import { worthSaying } from "../../domain/plan/worth";
import { litres } from "../../domain/quantity";
import type { PlanAsk } from "../../keeper/view";
import { isoWithOffset, useAppState } from "../app";
import { measureSentences, measureSummary } from "../measureWords";
import { pointsWide } from "../placeWords";
import { useAnswer } from "../useAnswer";
import { measuresWords } from "../words/measures";
import "./MeasureAdvice.css";
import { useMoment } from "../moment";

interface MeasureAdviceProps {
	/** The stop it is about; without offers, the tank as it stands. */
	readonly ask: PlanAsk;
	/** Chance of ending inside as the plan itself says it, where there is one: two figures for the same would confuse. */
	readonly inside?: number;
}

/** What could be measured and what it is worth, the best first, each with how much of the doubt would go. */
export function MeasureAdvice({ ask, inside }: MeasureAdviceProps) {
	const { model, state } = useAppState();
	const words = measuresWords();
	const { car, account } = state;
	// The minute alone makes no new question.
	const key =
		car && account ? JSON.stringify([car, account.count, { ...ask, visit: { ...ask.visit, at: null } }]) : null;
	const { answer, failed } = useAnswer(key, () => model.measures(car?.id ?? "", ask));
	if (failed) return <p class="fault">{words.failed}</p>;
	if (!answer) {
		return (
			<p class="soft" role="status">
				{words.reckoning}
			</p>
		);
	}
	const measures = inside === undefined ? answer : { ...answer, inside };
	const worths = worthSaying(measures);
	if (worths.length === 0) return <p>{measureSummary(measures)}</p>;
	return (
		<div class="advice">
			<p class="small">{words.bar(measures.filling, pointsWide(measures.width))}</p>
			<ol>
				{measureSentences(measures).map((sentence, i) => (
					<li key={sentence}>
						<span>{sentence}</span>
						<svg viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
							<rect class="doubt" width={100} height={10} />
							<rect class="gone" width={100 * Math.min(1, Math.max(0, worths[i].narrowing))} height={10} />
						</svg>
					</li>
				))}
			</ol>
		</div>
	);
}

/** The same of the tank as it stands. */
export function TankAdvice() {
	const opened = useMoment(useAppState().state.events);
	const stop = "tank as it stands";
	return (
		<MeasureAdvice
			ask={{
				visit: { stop, at: isoWithOffset(opened) },
				poured: [],
				instead: [],
				offers: [],
				fullness: { kind: "click" },
				targetCalibration: null,
				handling: { step: litres(0.1), minimum: litres(0) },
				ids: [stop],
			}}
		/>
	);
}
