import { type Budgets, bestAmount, insideStretch, leanStretch, type Outlook } from "../../domain/estimator/stretch";
import type { VolumeUnit } from "../../domain/units";
import { budgetsOf } from "../../domain/warnings";
import { inTwenty, volume, volumeRange } from "../format";
import { type PreviewSource, usePreviewed } from "../usePreview";
import { useSteadyHeight } from "../useSteadyHeight";
import { fillWords } from "../words/fill";
import "./AmountOutlook.css";

interface AmountOutlookProps {
	readonly source: PreviewSource;
	readonly unit: VolumeUnit;
}

/** In words what the ruler over the slider shows. Under the keys, which then do not move with its length. */
export function AmountOutlook({ source, unit }: AmountOutlookProps) {
	const preview = usePreviewed(source);
	const said = useSteadyHeight<HTMLParagraphElement>(preview);
	return (
		<p class="outlook small" ref={said}>
			{preview?.outlook && outlookWords(preview.outlook, budgetsOf(preview.calibration), unit)}
		</p>
	);
}

/** Between which amounts the blend would be inside, or what comes nearest, and where the lean limit lies. */
export function outlookWords(outlook: Outlook, budgets: Budgets, unit: VolumeUnit): string {
	const words = fillWords();
	const within = insideStretch(outlook, budgets);
	const lean = leanStretch(outlook, budgets);
	const best = bestAmount(outlook, budgets);
	const inside = within
		? words.inside(volumeRange(within.from, within.to, unit))
		: words.noneInside(volume(best.amount, unit), inTwenty(best.inside));
	if (!lean) return inside;
	const last = (outlook.above.length - 1) * outlook.step;
	if (lean.from > 0) return `${inside} ${words.leanFrom(volume(lean.from, unit))}`;
	return `${inside} ${lean.to < last ? words.leanUntil(volume(lean.to, unit)) : words.leanAlways}`;
}
