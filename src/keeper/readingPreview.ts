/** What a reading or a look at the gauge would do to the account. Loaded when it is first asked for. */
import { absorb, type Surprise } from "../domain/estimator/absorb";
import { type Estimate, estimateOf, type LevelEstimate, levelOf } from "../domain/estimator/estimate";
import { type PumpView, pumpView } from "../domain/estimator/pumpView";
import type { LevelEvent, ReadingEvent } from "../domain/event";
import { instant } from "../domain/quantity";
import type { Calibration, Tank } from "../domain/vehicle";
import type { previewsOf } from "./previews";

type Spread = Pick<PumpView, "median" | "low" | "high">;

/** Before it and after it. */
export interface ReadingPreview {
	readonly before: Estimate;
	readonly after: Estimate;
	readonly levelBefore: LevelEstimate;
	readonly levelAfter: LevelEstimate;
	/** What the pump that was sampled gives; null for a reading of the tank. */
	readonly pump: { readonly before: Spread; readonly after: Spread } | null;
	readonly calibration: Calibration | null;
	readonly surprise: Surprise | null;
}

/** Within a point of what saving shows: the account may be kept with more particles. */
export async function readingPreview(
	atPump: ReturnType<typeof previewsOf>["atPump"],
	tank: Tank,
	event: ReadingEvent | LevelEvent,
): Promise<ReadingPreview> {
	const { belief, calibration } = await atPump([], event.at, []);
	const { belief: after, surprise } = absorb(belief, event, tank, belief.weight.length);
	const window = calibration?.window ?? null;
	return {
		before: estimateOf(belief, window),
		after: estimateOf(after, window),
		levelBefore: levelOf(belief),
		levelAfter: levelOf(after),
		pump:
			event.kind === "reading" && event.of === "pump"
				? { before: spreadAt(belief, event), after: spreadAt(after, event) }
				: null,
		calibration,
		surprise,
	};
}

function spreadAt(
	belief: Parameters<typeof pumpView>[0],
	{ product, place, at }: Extract<ReadingEvent, { of: "pump" }>,
): Spread {
	const { median, low, high } = pumpView(belief, product, place, instant(at));
	return { median, low, high };
}
