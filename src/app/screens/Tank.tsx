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
import { ago, distanceRange, inTwenty, percent, percentRange, type volume, volumeRange } from "../format";
import { later } from "../later";
import { mendWords } from "../mendWords";
import { unitOf } from "../model";
import { verdictWords } from "../text";
import { blendWords } from "../words/blend";
import { tankWords } from "../words/tank";
import "./Tank.css";

/** "May I use the boost?" */
export function TankScreen() {
	const { state, now } = useAppState();
	const unit = unitOf(state);
	const doubted = useDoubted();
	const words = tankWords();
	if (!state.now) {
		if (!state.account) return <p class="soft late">{words.reading}</p>;
		return (
			<div class="card">
				<h2>{words.nothingTitle}</h2>
				<p>{words.nothing}</p>
				<a class="button main" href="#/fill">
					{words.record}
				</a>
			</div>
		);
	}
	const { estimate, calibration, last, surprise, mend } = state.now;
	const verdict = verdictOf(estimate, calibration);
	const fresh = last.kind === "fill" && now() - Date.parse(last.at) < freshMs;
	// What is said of the contradiction says it of the last entry, too.
	const warnings = warningsFor(estimate, calibration, doubted ? null : surprise);
	const mending = mendWords(mend, unit);
	return (
		<>
			<section class="stack" aria-label={words.verdict}>
				<VerdictLine verdict={verdict} fresh={fresh} doubted={doubted} now={state.now} />
				<DotPlot
					dots={estimate.dots}
					window={calibration?.window ?? null}
					calibratedFor={calibration?.calibratedFor ?? null}
				/>
				<dl class="figures">
					<div>
						<dt>{words.median}</dt>
						<dd class="number">{percent(estimate.median)}</dd>
					</div>
					<div>
						<dt>{words.nineInTen}</dt>
						<dd class="number">{percentRange(estimate.low, estimate.high)}</dd>
					</div>
				</dl>
			</section>
			{state.fleet?.over.some((carId) => carId !== state.car?.id) && <OtherCars />}
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
					{words.plan}
				</a>
			) : (
				<a class="button wide" href="#/calibration">
					{words.enterCalibration}
				</a>
			)}
			<a class="button wide" href="#/why">
				{words.why}
			</a>
			<section class="card">
				<h2>{words.lastChange}</h2>
				<p>
					{words.changed(ago(last.at, now()), eventWords(last, state.now.lastStop, unit))} {changeWords(state.now)}
				</p>
				{last.kind === "fill" && <Reaching unit={unit} />}
				<a class="button wide" href="#/measure">
					{words.measure}
				</a>
			</section>
			{state.backup?.due && <BackupReminder alone={!doubted && warnings.length === 0} />}
			{state.working !== null && (
				<p class="soft late" role="status">
					{words.reckoning(Math.floor(state.working * 100))}
				</p>
			)}
			<Unfolding summary={words.settle} what={TankAdvice} />
			<Unfolding summary={words.running} what={RunningFacts} />
			<TankNotes now={state.now} unit={unit} />
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
const TankNotes = later(async () => (await import("../components/TankNotes")).TankNotes);
const OtherCars = later(async () => (await import("../components/OtherCars")).OtherCars);
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
	const { inside, outside } = tankWords();
	const reserved = doubted?.words ?? (fresh ? blendWords().verdicts.fresh : null);
	const words = (verdict === "yes" && reserved) || verdictWords(verdict);
	return (
		<div class={`verdict ${words === doubted?.words ? "unsure" : verdict}`} aria-live="polite">
			<h2>{words.line}</h2>
			<p>
				{words.more}
				{above !== null && below !== null && (
					<>
						{" "}
						<strong>{inside(inTwenty(Math.max(0, 1 - above - below)))}</strong>
						{outside(inTwenty(above), inTwenty(below))}
					</>
				)}
			</p>
		</div>
	);
}

function changeWords({ medianBefore, estimate }: TankNow): string {
	if (medianBefore === null) return "";
	const words = tankWords();
	const from = percent(medianBefore);
	const to = percent(estimate.median);
	return from === to ? words.stays(to) : words.became(from, to);
}

/** When a fill is felt: common practice, no measured number is public. */
function Reaching({ unit }: { readonly unit: Parameters<typeof volume>[1] }) {
	const volumes = volumeRange(...lineVolumeL, unit);
	const distances = distanceRange(...lineDistanceKm, unit);
	return <p>{tankWords().reaching(volumes, distances, mixingMinutes[0], mixingMinutes[1])}</p>;
}
