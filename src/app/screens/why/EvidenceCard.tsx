import { useAppState } from "../../app";
import { printRoute } from "../../route";
import { useAnswer } from "../../useAnswer";
import { effectWords, evidenceWords, silentWords, tellingEvidence } from "../../whyWords";
import { whyWords } from "../../words/why";
import { GoneBar } from "./DoubtCard";

interface EvidenceCardProps {
	readonly carId: string;
	/** Where the traced part of the account begins. */
	readonly from: number;
	/** The question that the page answers: another one makes another card. */
	readonly asked: string;
}

/** Which readings, gauges, clicks and odometers already make the range narrower, each by the account without it. */
export function EvidenceCard({ carId, from, asked }: EvidenceCardProps) {
	const { model } = useAppState();
	const { answer: found, failed } = useAnswer(`${asked} ${from}`, () => model.whyEvidence(carId, from));
	const words = whyWords();
	if (failed) return <p class="fault">{words.evidenceFailed}</p>;
	if (!found) {
		return (
			<p class="soft" role="status">
				{words.evidenceReckoning}
			</p>
		);
	}
	const { telling, silent } = tellingEvidence(found);
	const widest = Math.max(found.width, ...telling.map(({ without }) => without));
	return (
		<section class="card why" aria-label={words.helps}>
			<h2>{words.helps}</h2>
			{found.worths.length === 0 ? <p>{words.noEvidence}</p> : <p class="small">{words.evidenceBar}</p>}
			<ol>
				{telling.map((worth) => (
					<li key={`${worth.evidence.kind} ${worth.evidence.event.id}`}>
						<a class="line" href={printRoute({ screen: "entry", id: worth.evidence.event.id })}>
							{evidenceWords(worth.evidence)}
						</a>
						<GoneBar all={worth.without / widest} gone={(worth.without - found.width) / widest} />
						<span class="small soft">{effectWords(worth, found.width)}</span>
					</li>
				))}
			</ol>
			{silent > 0 && <p class="small">{silentWords(silent, telling.length)}</p>}
			{found.untried > 0 && <p class="small">{words.untried(found.untried)}</p>}
		</section>
	);
}
