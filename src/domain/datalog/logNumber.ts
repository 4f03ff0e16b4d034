/** Numbers as loggers write them. */
import { largestNumber, longestNumber } from "./constants";

export type DecimalMark = "." | ",";

const number = /^([+-]?)(\d[\d., '’]*|[.,]\d+)(e[+-]?\d+)?\s*([^\d\s][^\d]*)?$/i;
/** White space that separates thousands: no-break spaces and the narrow ones. */
const wideSpaces = /[\u00a0\u2007\u2009\u202f]/g;

/**
 * The number that a field holds, NaN where it holds none. The other mark, spaces and apostrophes may separate thousands; a
 * unit may follow. What could mean two things is no number.
 */
export function readLogNumber(text: string, mark: DecimalMark): number {
	if (mark === "." && isPlain(text)) {
		const quick = Number(text);
		if (Math.abs(quick) <= largestNumber) return quick;
	}
	if (text.length > longestNumber) return Number.NaN;
	const found = number.exec(
		text
			.replace(wideSpaces, " ")
			.replace(/[\u2212\u2013]/, "-")
			.trim(),
	);
	if (!found) return Number.NaN;
	const [, sign, digits, exponent = ""] = found;
	const plain = withoutGroups(digits.trim(), mark);
	const value = plain === null ? Number.NaN : Number(`${sign}${plain}${exponent}`);
	return Math.abs(value) <= largestNumber ? value : Number.NaN;
}

/** Whether Number() reads it as a person would: no empty text, no hexadecimal. */
function isPlain(text: string): boolean {
	const first = text.charCodeAt(0);
	return ((first >= 48 && first <= 57) || (first >= 43 && first <= 46)) && !(text.charCodeAt(1) > 69);
}

/** Digits with a point for the decimals and without separators of thousands; null where they are not in groups of three. */
function withoutGroups(digits: string, mark: DecimalMark): string | null {
	const parts = digits.split(mark);
	if (parts.length > 2) return null;
	const [whole, decimals = ""] = parts;
	if (!/^\d*$/.test(decimals)) return null;
	const separator = /[^\d]/.exec(whole)?.[0];
	if (separator === undefined) return parts.length === 1 ? whole : `${whole}.${decimals}`;
	const [head, ...groups] = whole.split(separator);
	if (!/^[1-9]\d{0,2}$/.test(head) || !groups.every((group) => /^\d{3}$/.test(group))) return null;
	return `${head}${groups.join("")}.${decimals}`;
}

/** The mark before decimals, told from fields of a file: one comma, not before a group of three, gives the comma away. */
export function decimalMarkOf(fields: Iterable<string>): DecimalMark {
	let comma = 0;
	let point = 0;
	for (const field of fields) {
		if (/^\s*[+-]?\d*,(\d{1,2}|\d{4,})\s*$/.test(field) || /^\s*[+-]?0?,\d+\s*$/.test(field)) comma++;
		// With grouped thousands as with plain decimals, what comes last is the mark.
		else if (/\d,\d{3}\.\d/.test(field) || /^\s*[+-]?\d*\.\d+\s*$/.test(field)) point++;
		else if (/\d\.\d{3},\d/.test(field)) comma++;
	}
	return comma > point ? "," : ".";
}

/** Whether a field holds a number by either mark, or a time of day. */
export function looksNumeric(field: string): boolean {
	const text = field.trim();
	if (text === "" || text.length > 40) return false;
	return /^[+\u2212-]?([.,]?\d)[\d.,]*(e[+-]?\d+)?$/i.test(text) || looksLikeClock(text);
}

/** Whether a field holds a time of day, a stopwatch, or a date with a time. */
export function looksLikeClock(field: string): boolean {
	return /^(\d{1,4}[-./]\d{1,2}[-./]\d{1,4}[T ]+)?\d{1,3}:\d{2}(:\d{2})?([.,:]\d+)?( ?[ap]m)?(Z|[+-]\d\d:?\d\d)?$/i.test(
		field.trim(),
	);
}
