import type { EthanolFound } from "../../../domain/datalog/ethanolReading";
import { Choice } from "../../components/Choice";
import type { EthanolSource } from "../../dataLogReadings";
import { exactPercent } from "../../format";
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
	return (
		<section class="card" aria-label="The car’s own report">
			<h2>The car’s own report</h2>
			<p class="lead">
				<strong class="nowrap">{exactPercent(value)}</strong> ethanol
			</p>
			{Math.abs(value - atFirst) > moved && (
				<p>It began at {exactPercent(atFirst)}; what it came to in the end is taken.</p>
			)}
			<p>
				The standard (SAE J1979, PID 52) fixes how it is coded, not how true it is. A figure that never changes from
				fill to fill is not measured: leave it out.
			</p>
			<Choice label="Where does the car know it from?" options={sources} value={source} onChange={onSource} />
			{source === "inferred" && (
				<p class="small">If it rests on the trims, it says again what they say: save one of the two, not both.</p>
			)}
		</section>
	);
}
