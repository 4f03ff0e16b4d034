/** The time of what is entered now. */
import { useMemo } from "preact/hooks";
import type { LogEvent } from "../domain/event";
import { useAppState } from "./app";

/** Entries of one stop are a second apart, so the last ones lie ahead of the clock; another phone's clock may be ahead, too. */
const aheadMs = 10_000;

/**
 * `now`, or just after the last entry: what is entered comes after what was, and never between two fills of the same stop.
 * `events`: in order of time.
 */
export function momentAfter(events: readonly LogEvent[], now: number): number {
	// Only the last ones can lie ahead: a long log need not be read for it.
	const near = events.slice(events.findLastIndex(({ at }) => Date.parse(at) <= now - 1000) + 1);
	return near.reduce((moment, { at }) => {
		const time = Date.parse(at);
		return time <= moment + aheadMs ? Math.max(moment, time + 1000) : moment;
	}, now);
}

/** The moment that a screen asks about: when it was opened, and anew with whatever comes into the log. */
export function useMoment(events: readonly LogEvent[] | null): number {
	const { now } = useAppState();
	return useMemo(() => momentAfter(events ?? [], now()), [events?.length]);
}
