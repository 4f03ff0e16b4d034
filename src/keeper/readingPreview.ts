/** What a reading or a look at the gauge would do to the account. Loaded when it is first asked for. */
import { absorb, type Surprise } from "../domain/estimator/absorb";
import type { Belief } from "../domain/estimator/belief";
import { type Estimate, estimateOf, type LevelEstimate, levelOf } from "../domain/estimator/estimate";
import { type PumpView, pumpView } from "../domain/estimator/pumpView";
import { baselineOf } from "../domain/estimator/trim";
import type { LevelEvent, ReadingEvent } from "../domain/event";
import { instant } from "../domain/quantity";
import type { Calibration, Tank } from "../domain/vehicle";
import type { previewsOf } from "./previews";

type Baseline = NonNullable<ReturnType<typeof baselineOf>>;
type Spread = Pick<PumpView, "median" | "low" | "high">;

/** Before it and after it. */
export interface ReadingPreview {
	readonly before: Estimate;
	readonly after: Estimate;
	readonly levelBefore: LevelEstimate;
	readonly levelAfter: LevelEstimate;
	/** What the pump that was sampled gives; null for a reading of the tank. */
	readonly pump: { readonly before: Spread; readonly after: Spread } | null;
	/** What the car is known to trim on its own fuel after a trim that teaches it, shares of the fuel demand; null before any. */
	readonly baseline: { readonly before: Baseline | null; readonly after: Baseline } | null;
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
		baseline: learned(belief, after, event),
		calibration,
		surprise,
	};
}

function learned(belief: Belief, after: Belief, event: ReadingEvent | LevelEvent): ReadingPreview["baseline"] {
	if (event.kind !== "reading" || event.of !== "trim") return null;
	const known = baselineOf(after, event.calibratedFor);
	return known && { before: baselineOf(belief, event.calibratedFor), after: known };
}

function spreadAt(belief: Belief, { product, place, at }: Extract<ReadingEvent, { of: "pump" }>): Spread {
	const { median, low, high } = pumpView(belief, product, place, instant(at));
	return { median, low, high };
}
