/** Made-up accounts for the screens that tell of them: what the estimator says is not the point there. */

import type { Surprise } from "../../src/domain/estimator/absorb";
import { compareEvents, countingEvents, isTankEvent, type LogEvent } from "../../src/domain/event";
import type { Car } from "../../src/domain/vehicle";
import type { AccountView, Figures, LogLine } from "../../src/keeper/view";
import { aCar, aFill } from "../helpers/logs";

/** A content with its range a few points to either side. */
export function figures(median: number, fields: Partial<Record<keyof Figures, number | null>> = {}): Figures {
	const [low, high] = [Math.max(0, median - 0.04), Math.min(1, median + 0.04)];
	return { median, low, high, below: 0, above: 0, lawfulLow: 0, lawfulHigh: 0.85, ...fields } as never;
}

/** The account that says `figuresAfter` of every event that counts. */
export function anAccount(
	events: readonly LogEvent[],
	figuresAfter: (event: LogEvent, i: number) => Figures = () => figures(0.3),
	{ car = aCar(), surprises = {} }: { car?: Car; surprises?: Record<string, Surprise> } = {},
): AccountView {
	const ordered = [...events].sort(compareEvents);
	const lines = countingEvents(ordered).flatMap((event, i): LogLine[] =>
		isTankEvent(event)
			? [
					{
						event,
						figures: figuresAfter(event, i),
						surprise: surprises[event.id] ?? null,
						odd: event.id in surprises,
					},
				]
			: [],
	);
	return { car, count: events.length, now: null, lines, events: ordered, unreadable: 0 };
}

/** So many stops, a few days apart up to an instant; every seventh with a reading of the tank after it. */
export function manyFills(count: number, until: number, days = 3): LogEvent[] {
	return Array.from({ length: count }, (_, i) => {
		const at = new Date(until - (count - i) * days * 86_400_000).toISOString();
		if (i % 7 === 6) return { id: `r${i}`, at, kind: "reading", of: "tank", value: 0.3, sd: 0.02 } as never;
		return aFill({ id: `f${i}`, stop: `s${i}`, at });
	});
}
