import type { VolumeUnit } from "../../../domain/units";
import type { Told } from "../../../domain/why/trace";
import type { Why } from "../../../domain/why/why";
import { printRoute } from "../../route";
import { dateAndPlace, stopLines } from "../../whyWords";

interface StopCardProps {
	readonly why: Why;
	readonly unit: VolumeUnit;
	/** The tank as the account has it. */
	readonly now: Told;
}

/** The account as additions, stop by stop, the last first. */
export function StopCard({ why: { stops }, unit, now }: StopCardProps) {
	if (stops.length === 0) return null;
	return (
		<section class="card why" aria-label="Stop by stop">
			<h2>Stop by stop</h2>
			<p class="small">
				As it is believed now, the last first: later entries speak of earlier stops too, so this may differ from what
				the log said then. In brackets is where the truth lies nine times in ten.
			</p>
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
										<span class="sign">{k === 0 ? <span class="hidden">First </span> : "+"}</span>
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
