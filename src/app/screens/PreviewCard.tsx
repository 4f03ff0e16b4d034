import type { VolumeUnit } from "../../domain/units";
import { verdictOf, warningsFor } from "../../domain/warnings";
import { sumWords } from "../amountWords";
import { DotPlot } from "../components/DotPlot";
import { inTwenty, percent, percentRange } from "../format";
import { verdictWords, warningWords } from "../text";
import { type PreviewSource, usePreviewed } from "../usePreview";
import { useSteadyHeight } from "../useSteadyHeight";
import { fillWords } from "../words/fill";

interface PreviewCardProps {
	readonly source: PreviewSource;
	readonly unit: VolumeUnit;
}

/** The dots as they would stand after what is typed. */
export function PreviewCard({ source, unit }: PreviewCardProps) {
	const preview = usePreviewed(source);
	const card = useSteadyHeight<HTMLElement>(preview);
	const words = fillWords();
	if (!preview) return <p class="preview soft">{words.reckoning}</p>;
	const { estimate, before, calibration, surprise } = preview;
	const { fills } = preview.about;
	const poured = fills.length > 0;
	const amounts = sumWords(
		fills.map(({ litres }) => litres),
		unit,
	);
	const about = percent(estimate.median);
	const verdict = verdictOf(estimate, calibration);
	const odd = warningsFor(estimate, calibration, surprise).find(({ code }) => code.startsWith("impossible"));
	const outside = (estimate.above ?? 0) + (estimate.below ?? 0);
	return (
		<section class="preview stack" ref={card} aria-label={words.previewTitle}>
			<DotPlot
				dots={estimate.dots}
				window={calibration?.window ?? null}
				calibratedFor={calibration?.calibratedFor ?? null}
				before={poured ? before.dots : undefined}
				compact
			/>
			<p class="line" aria-live="polite">
				{poured ? words.after(amounts, about) : words.before(about)}{" "}
				<span class="nowrap">{percentRange(estimate.low, estimate.high)}</span>.{" "}
				{calibration && words.previewVerdict(verdictWords(verdict).line, inTwenty(Math.max(0, 1 - outside)))}
			</p>
			{odd && <p class="fault">{words.odd(warningWords(odd, "").title, warningWords(odd, "").now.join(" "))}</p>}
		</section>
	);
}
