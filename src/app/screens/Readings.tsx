import { later } from "../later";
import type { ReadingKind } from "../readingDraft";
import { readingsWords } from "../words/readings";
import "./Readings.css";

const screens = {
	analyser: later(async () => (await import("./readings/Analyser")).AnalyserScreen),
	tube: later(async () => (await import("./readings/WaterTube")).WaterTubeScreen),
	reported: later(async () => (await import("./readings/Reported")).ReportedScreen),
	trim: later(async () => (await import("./readings/Trim")).TrimScreen),
	gauge: later(async () => (await import("./readings/Gauge")).GaugeScreen),
} as const satisfies Record<ReadingKind, unknown>;

/** A measurement by one of the ways, or the list of them. */
export function ReadingsScreen({ kind }: { readonly kind: string | null }) {
	if (!isKind(kind)) return <Ways />;
	const Screen = screens[kind];
	return <Screen />;
}

function isKind(kind: string | null): kind is ReadingKind {
	return kind !== null && Object.hasOwn(screens, kind);
}

/** As they stand in the list. */
const kinds: readonly ReadingKind[] = ["analyser", "tube", "reported", "trim", "gauge"];

function Ways() {
	const { title, asked, ways, dataLog } = readingsWords();
	return (
		<section class="stack" aria-label={title}>
			<h2>{title}</h2>
			<p>{asked}</p>
			<ul class="ways">
				{kinds.map((kind) => (
					<li key={kind}>
						<a class="button" href={`#/measure/${kind}`}>
							<span>{ways[kind].name}</span>
							<span class="small">{ways[kind].worth}</span>
						</a>
					</li>
				))}
				<li>
					<a class="button" href="#/datalog">
						<span>{dataLog.name}</span>
						<span class="small">{dataLog.worth}</span>
					</a>
				</li>
			</ul>
		</section>
	);
}
