/** The chain in a log: each event names the one that its device wrote before it, so that a hole shows. */
import type { LogEvent } from "../domain/event";

/** The events as this device writes them now, one after the other; the first comes after `last`. */
export function chained(events: readonly LogEvent[], last: string | undefined): LogEvent[] {
	return events.map((event, i) => {
		const before = i === 0 ? last : events[i - 1].id;
		const { after: _, ...unlinked } = event;
		return (before === undefined ? unlinked : { ...unlinked, after: before }) as LogEvent;
	});
}

/** What an event says, without its place in the chain: two devices may have written the same fact. */
export function unlinked(event: unknown): unknown {
	if (typeof event !== "object" || event === null || !("after" in event)) return event;
	const { after: _, ...rest } = event;
	return rest;
}

/** Ids that events name as written before them and that are not there. */
export function holesIn(events: Iterable<unknown>, ids: { has(id: string): boolean }): string[] {
	const holes = new Set<string>();
	for (const event of events) {
		const after = (event as { readonly after?: unknown } | null)?.after;
		if (typeof after === "string" && !ids.has(after)) holes.add(after);
	}
	return [...holes];
}
