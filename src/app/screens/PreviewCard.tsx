import type { VolumeUnit } from "../../domain/units";
import { verdictOf, warningsFor } from "../../domain/warnings";
import { DotPlot } from "../components/DotPlot";
import { exactVolume, inTwenty, percent, percentRange } from "../format";
import { verdictWords, warningWords } from "../text";
import { type PreviewSource, usePreviewed } from "../usePreview";

interface PreviewCardProps {
	readonly source: PreviewSource;
	readonly unit: VolumeUnit;
}

/** The dots as they would stand after what is typed. */
export function PreviewCard({ source, unit }: PreviewCardProps) {
	const preview = usePreviewed(source);
	if (!preview) return <p class="soft">Reckoning…</p>;
	const { estimate, before, calibration, surprise } = preview;
	const { fills } = preview.about;
	const poured = fills.length > 0;
	const amounts = fills.map(({ litres }) => exactVolume(litres, unit)).join(" + ");
	const verdict = verdictOf(estimate, calibration);
	const odd = warningsFor(estimate, calibration, surprise).find(({ code }) => code.startsWith("impossible"));
	const outside = (estimate.above ?? 0) + (estimate.below ?? 0);
	return (
		<section class="preview stack" aria-label="What this leads to">
			<DotPlot
				dots={estimate.dots}
				window={calibration?.window ?? null}
				calibratedFor={calibration?.calibratedFor ?? null}
				before={poured ? before.dots : undefined}
				compact
			/>
			<p class="line" aria-live="polite">
				{poured ? `After ${amounts}` : "Before this stop"} about {percent(estimate.median)}, 9 in 10:{" "}
				<span class="nowrap">{percentRange(estimate.low, estimate.high)}</span>.{" "}
				{calibration && `${verdictWords[verdict].line}, inside: ${inTwenty(Math.max(0, 1 - outside))}.`}
			</p>
			{odd && (
				<p class="fault">
					{warningWords(odd, "").title}: {warningWords(odd, "").now.join(" ")}
				</p>
			)}
		</section>
	);
}
