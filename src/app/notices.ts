/** Whether something is amiss with the log itself; how it is told loads only then. */
import type { State } from "./state";

/** Phones that travel, and entries for later today, are no fault of the clock. */
const toleratedMs = 36 * 3_600_000;

export function isClockBehind({ at }: { readonly at: string }, now: number): boolean {
	return Date.parse(at) - now > toleratedMs;
}

export function isAmiss({ damage, account, events }: State, now: number): boolean {
	const newest = events?.at(-1);
	return damage !== null || (account?.unreadable ?? 0) > 0 || (newest !== undefined && isClockBehind(newest, now));
}
