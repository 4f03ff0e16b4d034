import type { Weighed } from "../../domain/doubt/explanation";
import type { VolumeUnit } from "../../domain/units";
import type { Contradiction } from "../../keeper/view";
import { explanationWords, nothingWords, remedyLabel, weightWords } from "../doubtWords";
import { remediesFor } from "../remedies";
import { useRemedy } from "../useRemedy";
import { doubtWords } from "../words/doubt";

interface DoubtExplanationsProps {
	readonly contradiction: Contradiction;
	readonly unit: VolumeUnit;
}

const told = 3;

/** What may be behind a contradiction, the likeliest first, each with what settles it. */
export function DoubtExplanations({ contradiction, unit }: DoubtExplanationsProps) {
	const { nothing, explanations } = contradiction.doubt;
	const words = doubtWords();
	const { busy, settle } = useRemedy(contradiction);
	const rest = explanations.slice(told);
	const weightOfRest = rest.reduce((sum, { weight }) => sum + weight, 0);
	return (
		<section class="card doubt" aria-label={words.behind}>
			<h2>{words.behind}</h2>
			{explanations.length === 0 && <p>{words.noSlip}</p>}
			<ol>
				{explanations.slice(0, told).map((weighed, i) => (
					<Explained
						key={JSON.stringify(weighed.explanation)}
						n={i}
						{...{ weighed, contradiction, unit, busy, settle }}
					/>
				))}
			</ol>
			{explanations.length > 0 && (
				<div class="stack">
					<h3>{nothingWords()}</h3>
					<Weight weight={nothing} />
				</div>
			)}
			{rest.length > 0 && <p>{words.others(rest.length, weightWords(weightOfRest))}</p>}
			<p class="small soft">{words.howLikely}</p>
		</section>
	);
}

interface ExplainedProps extends DoubtExplanationsProps {
	readonly weighed: Weighed;
	readonly n: number;
	readonly busy: boolean;
	readonly settle: ReturnType<typeof useRemedy>["settle"];
}

function Explained({ weighed: { explanation, weight }, n, contradiction, unit, busy, settle }: ExplainedProps) {
	const { entries } = contradiction;
	const id = `explanation-${n}`;
	return (
		<li class="stack">
			<h3 id={id}>{explanationWords(explanation, entries, unit)}</h3>
			<Weight weight={weight} />
			{remediesFor(explanation, entries).map((remedy, i) => (
				<button
					key={remedy.kind}
					type="button"
					class={i === 0 && weight > 0.5 ? "button main" : "button wide"}
					disabled={busy}
					aria-describedby={id}
					onClick={() => settle(remedy, explanation)}
				>
					{remedyLabel(remedy, explanation, unit)}
				</button>
			))}
		</li>
	);
}

/** How likely, in words and drawn. */
function Weight({ weight }: { readonly weight: number }) {
	return (
		<div class="weight">
			<svg viewBox="0 0 100 10" preserveAspectRatio="none" aria-hidden="true">
				<rect class="rail" width={100} height={10} />
				<rect class="share" width={100 * weight} height={10} />
			</svg>
			<strong class="number nowrap">{weightWords(weight)}</strong>
		</div>
	);
}
