/** Replay on a sample of one's own size: the same steps as the core's replay, in a fraction of the time. */
import { absorb, initialBelief, type Surprise } from "../../src/domain/estimator/absorb";
import type { Belief } from "../../src/domain/estimator/belief";
import { type Estimate, estimateOf } from "../../src/domain/estimator/estimate";
import { countingEvents, isTankEvent, type LogEvent, type TankEvent } from "../../src/domain/event";
import type { Car } from "../../src/domain/vehicle";

export interface QuickEntry {
	readonly event: TankEvent;
	readonly before: Belief;
	readonly belief: Belief;
	readonly estimate: Estimate;
	readonly surprise: Surprise | null;
}

/** `size` is a power of two. The window is that of the car's first calibration throughout. */
export function* quickReplay(car: Car, events: readonly LogEvent[], size: number): Generator<QuickEntry> {
	let before = initialBelief(car.id, car.tank, size);
	for (const event of countingEvents(events)) {
		if (!isTankEvent(event)) continue;
		const { belief, surprise } = absorb(before, event, car.tank, size);
		yield { event, before, belief, estimate: estimateOf(belief, car.calibrations[0]?.window ?? null), surprise };
		before = belief;
	}
}
