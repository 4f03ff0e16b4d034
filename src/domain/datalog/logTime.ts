/** Times as loggers write them, in seconds. */
import type { DecimalMark } from "./logNumber";
import { readLogNumber } from "./logNumber";
import type { Unit } from "./role";

/** Seconds above this are counted from 1970: no recording lasts thirty years. */
export const firstEpochSecond = 1e9;

const secondsPer: Partial<Record<Unit, number>> = { s: 1, ms: 1e-3, min: 60 };

/** Reads a field of the time column as seconds from some beginning; NaN where it holds no time. */
export function readLogTime(text: string, unit: Unit, mark: DecimalMark): number {
	const factor = secondsPer[unit];
	return factor === undefined ? readClock(text) : readLogNumber(text, mark) * factor;
}

const clock =
	/^(?:(\d{1,4})[-./](\d{1,2})[-./](\d{1,4})[T ]+)?(\d{1,3}):(\d{2})(?::(\d{2}))?(?:[.,:](\d+))?(?: ?([ap])m)?(Z|[+-]\d\d:?\d\d)?$/i;

/** A time of day, minutes and seconds, or a date with a time. With the year first it counts from 1970 UTC. */
export function readClock(text: string): number {
	const found = clock.exec(text.trim());
	if (!found) return Number.NaN;
	const [, a, b, c, first, middle, last, decimals, half, offset] = found;
	const part = decimals === undefined ? 0 : Number(`0.${decimals}`);
	// Two numbers are minutes and seconds, with a date or a half of the day hours and minutes.
	const isTimeOfDay = last !== undefined || a !== undefined || half !== undefined;
	const hours = isTimeOfDay ? (Number(first) % (half ? 12 : Infinity)) + (half?.toLowerCase() === "p" ? 12 : 0) : 0;
	const minutes = Number(isTimeOfDay ? middle : first);
	const seconds = Number(isTimeOfDay ? (last ?? 0) : middle) + part;
	const day = a === undefined ? 0 : dayOf(a, b, c);
	return day * 86_400 + hours * 3600 + minutes * 60 + seconds - offsetSeconds(offset);
}

/** Days since 1970. Whether day or month comes first matters only where a recording runs past midnight. */
function dayOf(a: string, b: string, c: string): number {
	if (a.length === 4) return Date.UTC(Number(a), Number(b) - 1, Number(c)) / 86_400_000;
	return Number(a) + 31 * Number(b);
}

/** The instant, ms since 1970, that seconds from `readLogTime` stand for; null where they do not count from 1970. */
export function instantOf(seconds: number): number | null {
	return seconds > firstEpochSecond && seconds < 4 * firstEpochSecond ? seconds * 1000 : null;
}

function offsetSeconds(offset: string | undefined): number {
	if (offset === undefined || /z/i.test(offset)) return 0;
	const sign = offset.startsWith("-") ? -1 : 1;
	return sign * (Number(offset.slice(1, 3)) * 3600 + Number(offset.slice(-2)) * 60);
}
