import type { LevelEvent, ReadingEvent } from "../../../domain/event";
import type { VolumeUnit } from "../../../domain/units";
import { verdictOf } from "../../../domain/warnings";
import type { ReadingPreview } from "../../../keeper/readingPreview";
import { Change } from "../../components/Change";
import { DotPlot } from "../../components/DotPlot";
import { Facts } from "../../components/Facts";
import { exactPercent, percent, percentRange, volumeRange } from "../../format";
import { signedPercent } from "../../shownByte";
import { verdictWords, warningWords } from "../../text";
import { type Answered, useReadingPreview } from "./useReadingPreview";
import "../../components/entryMarks.css";

interface ReadingPreviewCardProps {
	readonly carId: string;
	/** Null while what is typed says nothing yet. */
	readonly event: ReadingEvent | LevelEvent | null;
	readonly unit: VolumeUnit;
}

/** What the typed measurement would do to the estimate, and whether it fits the account. */
export function ReadingPreviewCard({ carId, event, unit }: ReadingPreviewCardProps) {
	const answered = useReadingPreview(carId, event);
	return (
		<section class="card" aria-label="What it would do">
			<h2>What it would do</h2>
			{event === null ? (
				<p class="soft">Once the figures above are complete, you see here what they would change.</p>
			) : answered === null ? (
				<p class="soft">Reckoning…</p>
			) : (
				<Told event={event} answered={answered} unit={unit} />
			)}
		</section>
	);
}

interface ToldProps {
	readonly event: ReadingEvent | LevelEvent;
	readonly answered: Answered;
	readonly unit: VolumeUnit;
}

function Told({ event, answered: { preview, stale }, unit }: ToldProps) {
	const { before, after, calibration } = preview;
	return (
		<div class="stack" aria-busy={stale}>
			<DotPlot
				dots={after.dots}
				window={calibration?.window ?? null}
				calibratedFor={calibration?.calibratedFor ?? null}
				before={before.dots}
			/>
			<p class="small soft">Short strokes on the axis: the dots as they stand now.</p>
			<Facts facts={changesIn(event, preview, unit)} />
			<Fit preview={preview} />
		</div>
	);
}

function changesIn(event: ReadingEvent | LevelEvent, preview: ReadingPreview, unit: VolumeUnit) {
	const { before, after, levelBefore, levelAfter, pump, baseline, calibration } = preview;
	const change = (term: string, from: string, to: string) => ({ term, is: <Change from={from} to={to} /> });
	return [
		change("Most likely", percent(before.median), percent(after.median)),
		change("9 in 10", percentRange(before.low, before.high), percentRange(after.low, after.high)),
		...(calibration
			? [
					change(
						"Verdict",
						verdictWords[verdictOf(before, calibration)].line,
						verdictWords[verdictOf(after, calibration)].line,
					),
				]
			: []),
		...(event.kind === "level"
			? [
					change(
						"In the tank",
						volumeRange(levelBefore.low, levelBefore.high, unit),
						volumeRange(levelAfter.low, levelAfter.high, unit),
					),
				]
			: []),
		...(baseline
			? [
					change(
						"This car trims on its own fuel",
						baseline.before ? trimWords(baseline.before) : "not known",
						trimWords(baseline.after),
					),
				]
			: []),
		...(pump
			? [
					change(
						"This pump gives",
						percentRange(pump.before.low, pump.before.high),
						percentRange(pump.after.low, pump.after.high),
					),
				]
			: []),
	];
}

/** In whole tenths of a percent: more is never known. */
function trimWords({ mean, sd }: { readonly mean: number; readonly sd: number }): string {
	return `${signedPercent(Math.round(mean * 1000) / 1000)}, give or take ${exactPercent(Math.round(sd * 1000) / 1000)}`;
}

function Fit({ preview: { surprise } }: { readonly preview: ReadingPreview }) {
	if (surprise === null) return <p aria-live="polite">It fits the account.</p>;
	if (surprise.kind !== "disagrees") {
		const { title, sure, now } = warningWords({ code: surprise.kind }, "");
		return (
			<p class="fault" aria-live="polite">
				{title}. {sure} {now.join(" ")} Saved like this, it is left out of the account.
			</p>
		);
	}
	return (
		<p class="fault" aria-live="polite">
			It does not fit the account: such a reading had less than 1 chance in 100. Measure again. If it stands, look
			through the log for a fill that is missing or mistyped.
		</p>
	);
}
