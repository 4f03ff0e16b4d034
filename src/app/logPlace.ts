/** Where in the log one was, kept while an entry is looked at, so that coming back leads there and not to the top. */
import type { Span } from "./historyView";

export interface LogPlace {
	readonly car: string;
	readonly span: Span;
	readonly rows: number;
	readonly withVoid: boolean;
	/** The entry that was opened. */
	readonly entry: string | null;
}

const key = "heeltap-log-place";

export function keepPlace(place: LogPlace): void {
	try {
		sessionStorage.setItem(key, JSON.stringify(place));
	} catch {
		// Without session storage one comes back to the top.
	}
}

/** The place kept last, once, if it is in this car's log. */
export function takePlace(car: string): LogPlace | null {
	try {
		const place = JSON.parse(sessionStorage.getItem(key) ?? "null") as LogPlace | null;
		sessionStorage.removeItem(key);
		return place?.car === car ? place : null;
	} catch {
		return null;
	}
}
