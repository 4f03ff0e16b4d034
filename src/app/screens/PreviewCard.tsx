import type { VolumeUnit } from "../../domain/units";
import { verdictOf, warningsFor } from "../../domain/warnings";
import type { Preview } from "../../keeper/view";
import { DotPlot } from "../components/DotPlot";
import { inTwenty, percent, percentRange } from "../format";
import { mendWords } from "../mendWords";
import { verdictWords, warningWords } from "../text";

interface PreviewCardProps {
	readonly preview: Preview | null;
	readonly unit: VolumeUnit;
	/** Whether any amount is in it yet. */
	readonly poured: boolean;
}

/** The dots as they would stand after what is typed. */
export function PreviewCard({ preview, unit, poured }: PreviewCardProps) {
	if (!preview) return <p class="soft">Reckoning…</p>;
	const { estimate, before, calibration, surprise } = preview;
	const verdict = verdictOf(estimate, calibration);
	const odd = warningsFor(estimate, calibration, surprise).find(({ code }) => code === "impossibleLevel");
	const outside = (estimate.above ?? 0) + (estimate.below ?? 0);
	const mend = poured ? mendWords(preview.mend, unit) : null;
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
				{poured ? "After this" : "Before this stop"} about {percent(estimate.median)}, 9 in 10:{" "}
				<span class="nowrap">{percentRange(estimate.low, estimate.high)}</span>.{" "}
				{calibration && `${verdictWords[verdict].line}, inside: ${inTwenty(Math.max(0, 1 - outside))}.`}
			</p>
			{mend && verdict !== "yes" && <p class="small">{mend}</p>}
			{odd && (
				<p class="fault">
					{warningWords(odd, "").title}: {warningWords(odd, "").now.join(" ")}
				</p>
			)}
		</section>
	);
}
