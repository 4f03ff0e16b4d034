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
import { readingsWords } from "../../words/readings";
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
	const words = readingsWords();
	return (
		<section class="card" aria-label={words.wouldDo}>
			<h2>{words.wouldDo}</h2>
			{event === null ? (
				<p class="soft">{words.incomplete}</p>
			) : answered === null ? (
				<p class="soft">{words.reckoning}</p>
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
			<p class="small soft">{readingsWords().strokes}</p>
			<Facts facts={changesIn(event, preview, unit)} />
			<Fit preview={preview} />
		</div>
	);
}

function changesIn(event: ReadingEvent | LevelEvent, preview: ReadingPreview, unit: VolumeUnit) {
	const words = readingsWords();
	const { before, after, levelBefore, levelAfter, pump, baseline, calibration } = preview;
	const change = (term: string, from: string, to: string) => ({ term, is: <Change from={from} to={to} /> });
	return [
		change(words.mostLikely, percent(before.median), percent(after.median)),
		change(words.nineInTen, percentRange(before.low, before.high), percentRange(after.low, after.high)),
		...(calibration
			? [
					change(
						words.verdict,
						verdictWords(verdictOf(before, calibration)).line,
						verdictWords(verdictOf(after, calibration)).line,
					),
				]
			: []),
		...(event.kind === "level"
			? [
					change(
						words.inTank,
						volumeRange(levelBefore.low, levelBefore.high, unit),
						volumeRange(levelAfter.low, levelAfter.high, unit),
					),
				]
			: []),
		...(baseline
			? [
					change(
						words.carTrims,
						baseline.before ? trimWords(baseline.before) : words.notKnown,
						trimWords(baseline.after),
					),
				]
			: []),
		...(pump
			? [
					change(
						words.pumpGives,
						percentRange(pump.before.low, pump.before.high),
						percentRange(pump.after.low, pump.after.high),
					),
				]
			: []),
	];
}

/** In whole tenths of a percent: more is never known. */
function trimWords({ mean, sd }: { readonly mean: number; readonly sd: number }): string {
	const [value, giveOrTake] = [mean, sd].map((share) => Math.round(share * 1000) / 1000);
	return readingsWords().giveOrTake(signedPercent(value), exactPercent(giveOrTake));
}

function Fit({ preview: { surprise } }: { readonly preview: ReadingPreview }) {
	const words = readingsWords();
	if (surprise === null) return <p aria-live="polite">{words.fits}</p>;
	if (surprise.kind !== "disagrees") {
		const { title, sure, now } = warningWords({ code: surprise.kind }, "");
		return (
			<p class="fault" aria-live="polite">
				{words.leftOut(title, sure, now)}
			</p>
		);
	}
	return (
		<p class="fault" aria-live="polite">
			{words.disagrees}
		</p>
	);
}
