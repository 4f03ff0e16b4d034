import { useAppState } from "../../app";
import { printRoute } from "../../route";
import { useAnswer } from "../../useAnswer";
import { effectWords, evidenceWords, silentWords, tellingEvidence } from "../../whyWords";
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
	if (failed) return <p class="fault">What the readings do could not be reckoned. Reload the app and try again.</p>;
	if (!found) {
		return (
			<p class="soft" role="status">
				Running the account again without each reading…
			</p>
		);
	}
	const { telling, silent } = tellingEvidence(found);
	const widest = Math.max(found.width, ...telling.map(({ without }) => without));
	return (
		<section class="card why" aria-label="What already helps">
			<h2>What already helps</h2>
			{found.worths.length === 0 ? (
				<p>
					No reading, no gauge, no click and no odometer is in this part of the account. Each of them would make the
					range narrower.
				</p>
			) : (
				<p class="small">
					Each was left out in turn and the account run again without it. A full bar is the doubt without it, the dark
					part what it takes off.
				</p>
			)}
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
			{found.untried > 0 && (
				<p class="small">
					{found.untried === 1 ? "One older entry was" : `${found.untried} older entries were`} not tried.
				</p>
			)}
		</section>
	);
}
