import type { EthanolFound } from "../../../domain/datalog/ethanolReading";
import { Choice } from "../../components/Choice";
import { Emphasised } from "../../components/Emphasised";
import type { EthanolSource } from "../../dataLogReadings";
import { exactPercent } from "../../format";
import { dataLogWords } from "../../words/dataLog";
import { reportedWords } from "../../words/reported";
import { sources } from "../readings/Reported";

interface EthanolCardProps {
	readonly ethanol: EthanolFound;
	readonly source: EthanolSource;
	readonly onSource: (source: EthanolSource) => void;
}

/** A report that moved by more than this has seen new fuel, or is guessing (common practice). */
const moved = 0.03;

/** The content that the car itself reports. */
export function EthanolCard({ ethanol: { value, atFirst }, source, onSource }: EthanolCardProps) {
	const words = dataLogWords();
	return (
		<section class="card" aria-label={words.ethanol}>
			<h2>{words.ethanol}</h2>
			<p class="lead">
				<Emphasised text={words.ethanolLead(exactPercent(value))} />
			</p>
			{Math.abs(value - atFirst) > moved && <p>{words.began(exactPercent(atFirst))}</p>}
			<p>{words.ethanolAbout}</p>
			<Choice label={reportedWords().from} options={sources()} value={source} onChange={onSource} />
			{source === "inferred" && <p class="small">{words.restsOnTrims}</p>}
		</section>
	);
}
