import type { FillEvent, TankEvent } from "../../domain/event";
import type { VolumeUnit } from "../../domain/units";
import type { Contradiction } from "../../keeper/view";
import { capitalized } from "../capitalized";
import { markWords } from "../doubtWords";
import { eventSentence } from "../eventWords";
import { dateTime } from "../format";
import { printRoute } from "../route";
import { doubtWords } from "../words/doubt";
import "./entryMarks.css";

interface DoubtEntriesProps {
	readonly contradiction: Contradiction;
	readonly unit: VolumeUnit;
}

/** What was gone through, in order, with what is odd about it. */
export function DoubtEntries({ contradiction: { entries, surprises }, unit }: DoubtEntriesProps) {
	const { inQuestion } = doubtWords();
	return (
		<section class="card doubt" aria-label={inQuestion}>
			<h2>{inQuestion}</h2>
			<ul>
				{grouped(entries).map((events) => {
					const [event] = events;
					const odd = surprises.filter((surprise) => events.some(({ id }) => id === surprise.event.id));
					const fills = events.filter((other): other is FillEvent => other.kind === "fill");
					return (
						<li key={event.id}>
							<a href={printRoute({ screen: "entry", id: event.id })}>
								<span class="small soft">{dateTime(event.at)}</span>
								<span>{eventSentence(event, fills, unit)}</span>
								{odd.map(({ event, surprise }) => (
									<strong class="surprise" key={event.id}>
										{capitalized(markWords(surprise))}
									</strong>
								))}
							</a>
						</li>
					);
				})}
			</ul>
		</section>
	);
}

/** The fills of one stop are told together. */
function grouped(entries: readonly TankEvent[]): [TankEvent, ...TankEvent[]][] {
	const groups: [TankEvent, ...TankEvent[]][] = [];
	for (const event of entries) {
		const last = groups.at(-1);
		const stop = last?.[0].kind === "fill" ? last[0].stop : null;
		if (last && event.kind === "fill" && event.stop === stop) last.push(event);
		else groups.push([event]);
	}
	return groups;
}
