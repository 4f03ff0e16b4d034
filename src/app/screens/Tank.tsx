import type { ComponentType } from "preact";
import { useEffect, useState } from "preact/hooks";
import { lineDistanceKm, lineVolumeL, mixingMinutes } from "../../domain/delay";
import { type Verdict, verdictOf, warningsFor } from "../../domain/warnings";
import type { TankNow } from "../../keeper/view";
import { useAppState } from "../app";
import { DotPlot } from "../components/DotPlot";
import { WarningCard } from "../components/WarningCard";
import type { Doubted } from "../doubted";
import { eventWords } from "../eventWords";
import { ago, distanceRange, inTwenty, percent, percentRange, volume, volumeRange } from "../format";
import { later } from "../later";
import { mendWords } from "../mendWords";
import { unitOf } from "../model";
import { cautions, freshWords, verdictWords } from "../text";
import "./Tank.css";

/** "May I use the boost?" */
export function TankScreen() {
	const { state, now } = useAppState();
	const unit = unitOf(state);
	const doubted = useDoubted();
	if (!state.now) {
		if (!state.account) return <p class="soft late">Reading the log…</p>;
		return (
			<div class="card">
				<h2>Nothing is known of this tank yet</h2>
				<p>Record a fill, and the account begins. Until then any content is possible.</p>
				<a class="button main" href="#/fill">
					Record a fill
				</a>
			</div>
		);
	}
	const { estimate, level, calibration, last, surprise, mend } = state.now;
	const verdict = verdictOf(estimate, calibration);
	const fresh = last.kind === "fill" && now() - Date.parse(last.at) < freshMs;
	// What is said of the contradiction says it of the last entry, too.
	const warnings = warningsFor(estimate, calibration, doubted ? null : surprise);
	const mending = mendWords(mend, unit);
	return (
		<>
			<section class="stack" aria-label="Verdict">
				<VerdictLine verdict={verdict} fresh={fresh} doubted={doubted} now={state.now} />
				<DotPlot
					dots={estimate.dots}
					window={calibration?.window ?? null}
					calibratedFor={calibration?.calibratedFor ?? null}
				/>
				<dl class="figures">
					<div>
						<dt>Most likely about</dt>
						<dd class="number">{percent(estimate.median)}</dd>
					</div>
					<div>
						<dt>9 in 10</dt>
						<dd class="number">{percentRange(estimate.low, estimate.high)}</dd>
					</div>
				</dl>
			</section>
			{doubted && <doubted.Card contradiction={doubted.contradiction} unit={unit} />}
			{warnings.map((warning, i) => (
				<WarningCard
					key={warning.code}
					warning={warning}
					calibrationName={calibration?.name ?? ""}
					mend={i === 0 && "severity" in warning ? mending : null}
					settle={!("severity" in warning)}
				/>
			))}
			{calibration ? (
				<a class="button main" href="#/plan">
					What to pump
				</a>
			) : (
				<a class="button wide" href="#/calibration">
					Enter the calibration
				</a>
			)}
			<a class="button wide" href="#/why">
				Why this number
			</a>
			<section class="card">
				<h2>Last change</h2>
				<p>
					{ago(last.at, now())}: {eventWords(last, state.now.lastStop, unit)}
					{changeWords(state.now)}
				</p>
				{last.kind === "fill" && <Reaching unit={unit} />}
				<a class="button wide" href="#/measure">
					Enter a measurement
				</a>
			</section>
			{state.backup?.due && <BackupReminder alone={!doubted && warnings.length === 0} />}
			{state.working !== null && (
				<p class="soft late" role="status">
					Reckoning the log anew: {Math.floor(state.working * 100)} % done. What you see is from before.
				</p>
			)}
			<Unfolding summary="What would settle it?" what={TankAdvice} />
			<Unfolding summary="How far it goes" what={RunningFacts} />
			<details class="card">
				<summary>What the labels allow</summary>
				<p>
					{percentRange(estimate.lawfulLow, estimate.lawfulHigh)}, if every pump kept to its label and every look at the
					gauge was within three standard deviations. Readings of the content do not count here. Some pumps do not keep
					to their label.
				</p>
				<p>
					In the tank: about {volume(level.median, unit)}, 9 in 10: {volumeRange(level.low, level.high, unit)}.
				</p>
			</details>
			<details class="card">
				<summary>How to read the dots</summary>
				<p>
					Each dot is one of twenty equally likely ethanol contents of the tank. Round dots lie inside the calibration’s
					window, which the bracket marks. A triangle pointing up has too much ethanol, one pointing down too little. So
					many dots, so many chances in twenty. “9 in 10” is the range that holds the truth nine times in ten, “most
					likely about” its middle: as often below as above.
				</p>
			</details>
			<details class="card">
				<summary>Cautions</summary>
				<ul class="cautions">
					{cautions.map((caution) => (
						<li key={caution}>{caution}</li>
					))}
				</ul>
			</details>
		</>
	);
}

/** The last entries' contradiction, once there is one and what shows it: asked where one of them is odd. */
function useDoubted() {
	const { model, state } = useAppState();
	const { account, now } = state;
	// The screen is drawn anew for another car, and after its settings were open.
	const count = now?.odd ? account?.count : 0;
	const [found, setFound] = useState<Doubted | null>(null);
	useEffect(() => {
		// What fails leaves the plain warning.
		if (count) import("../doubted").then(({ doubtedIn }) => doubtedIn(model, count)).then(setFound, () => {});
	}, [count]);
	return found?.count === count ? found : null;
}

const BackupReminder = later(async () => (await import("../components/BackupReminder")).BackupReminder);
const TankAdvice = later(async () => (await import("../components/MeasureAdvice")).TankAdvice);
const RunningFacts = later(async () => (await import("../components/RunningFacts")).RunningFacts);

interface UnfoldingProps {
	readonly summary: string;
	/** Loaded and reckoned once it is opened. */
	readonly what: ComponentType;
}

function Unfolding({ summary, what: What }: UnfoldingProps) {
	const [open, setOpen] = useState(false);
	return (
		<details class="card" onToggle={(event) => setOpen(event.currentTarget.open)}>
			<summary>{summary}</summary>
			{open && <What />}
		</details>
	);
}

/** So long after a fill the old blend may still be in the lines: drivers do not tell when they have driven. */
const freshMs = 3_600_000;

interface VerdictLineProps {
	readonly verdict: Verdict;
	readonly fresh: boolean;
	/** The last entries contradict each other. */
	readonly doubted: Doubted | null;
	readonly now: TankNow;
}

function VerdictLine({ verdict, fresh, doubted, now }: VerdictLineProps) {
	const { above, below } = now.estimate;
	const reserved = doubted?.words ?? (fresh ? freshWords : null);
	const words = (verdict === "yes" && reserved) || verdictWords[verdict];
	return (
		<div class={`verdict ${words === doubted?.words ? "unsure" : verdict}`}>
			<h2>{words.line}</h2>
			<p>
				{words.more}
				{above !== null && below !== null && (
					<>
						{" "}
						<strong>Inside: {inTwenty(Math.max(0, 1 - above - below))}</strong>, too much: {inTwenty(above)}, too
						little: {inTwenty(below)}.
					</>
				)}
			</p>
		</div>
	);
}

function changeWords({ medianBefore, estimate }: TankNow): string {
	if (medianBefore === null) return ".";
	const from = percent(medianBefore);
	const to = percent(estimate.median);
	return from === to ? `. It stays about ${to}.` : `. About ${from} became about ${to}.`;
}

/** When a fill is felt: common practice, no measured number is public. */
function Reaching({ unit }: { readonly unit: Parameters<typeof volume>[1] }) {
	return (
		<p>
			The engine gets the new blend after the old fuel in the lines is burned, {volumeRange(...lineVolumeL, unit)} or
			some {distanceRange(...lineDistanceKm, unit)}, and the tank has mixed, {mixingMinutes[0]} to {mixingMinutes[1]}{" "}
			minutes of driving (common practice). Keep out of boost until then.
		</p>
	);
}
