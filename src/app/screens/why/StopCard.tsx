import type { VolumeUnit } from "../../../domain/units";
import type { Told } from "../../../domain/why/trace";
import type { Why } from "../../../domain/why/why";
import { printRoute } from "../../route";
import { dateAndPlace, stopLines } from "../../whyWords";
import { whyWords } from "../../words/why";

interface StopCardProps {
	readonly why: Why;
	readonly unit: VolumeUnit;
	/** The tank as the account has it. */
	readonly now: Told;
}

/** The account as additions, stop by stop, the last first. */
export function StopCard({ why: { stops }, unit, now }: StopCardProps) {
	if (stops.length === 0) return null;
	const words = whyWords();
	return (
		<section class="card why" aria-label={words.stops}>
			<h2>{words.stops}</h2>
			<p class="small">{words.stopsHow}</p>
			<ol class="sums">
				{[...stops].reverse().map((stop, i) => {
					const { parts, result } = stopLines(stop, unit, i === 0 ? now : null);
					const [first] = stop.fills;
					return (
						<li key={first.event.id}>
							<a class="line" href={printRoute({ screen: "entry", id: first.event.id })}>
								{dateAndPlace(first.event)}
							</a>
							<ul>
								{parts.map((part, k) => (
									<li key={`${k} ${part}`}>
										<span class="sign">{k === 0 ? <span class="hidden">{words.first} </span> : "+"}</span>
										<span>{part}</span>
									</li>
								))}
								<li class="sum">
									<span class="sign">=</span>
									<strong>{result}</strong>
								</li>
							</ul>
						</li>
					);
				})}
			</ol>
		</section>
	);
}
