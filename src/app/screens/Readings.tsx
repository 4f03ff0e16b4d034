import { later } from "../later";
import type { ReadingKind } from "../readingDraft";
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

const ways: readonly { readonly kind: ReadingKind; readonly name: string; readonly worth: string }[] = [
	{ kind: "analyser", name: "Ethanol analyser or sensor gauge", worth: "The tank, give or take 2.5 points." },
	{ kind: "tube", name: "Water test", worth: "The tank or a pump’s fuel, give or take 2 to 4 points." },
	{ kind: "reported", name: "The car’s own report", worth: "By a scan tool; give or take 3 to 8 points." },
	{ kind: "trim", name: "Fuel trims", worth: "By a scan tool; a check, give or take 8 points." },
	{ kind: "gauge", name: "A look at the gauge", worth: "How much is left; it sharpens the next fill." },
];

function Ways() {
	return (
		<section class="stack" aria-label="Enter a measurement">
			<h2>Enter a measurement</h2>
			<p>How did you measure? Before anything is saved you see what it would change.</p>
			<ul class="ways">
				{ways.map(({ kind, name, worth }) => (
					<li key={kind}>
						<a class="button" href={`#/measure/${kind}`}>
							<span>{name}</span>
							<span class="small">{worth}</span>
						</a>
					</li>
				))}
				<li>
					<a class="button" href="#/datalog">
						<span>A data log</span>
						<span class="small">Any logger’s CSV: the trims of a whole drive, and lambda under load.</span>
					</a>
				</li>
			</ul>
		</section>
	);
}
