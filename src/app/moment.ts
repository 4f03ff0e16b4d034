/** The time of what is entered now. */
import type { LogEvent } from "../domain/event";

/** Entries of one stop are a second apart, so the last ones lie ahead of the clock; another phone's clock may be ahead, too. */
const aheadMs = 10_000;

/** `now`, or just after the last entry: what is entered comes after what was, and never between two fills of the same stop. */
export function momentAfter(events: readonly LogEvent[], now: number): number {
	const last = events.findLast(({ at }) => Date.parse(at) <= now + aheadMs);
	return last ? Math.max(now, Date.parse(last.at) + 1000) : now;
}
