/**
 * Any value that JSON can hold, as few bytes and back, with nothing lost: known words, ids, times and numbers with few digits
 * in short forms. What each first byte means is part of the format; the numbers below never change.
 */
import { MangledError, type Reader, reader, type Writer, writer } from "./bytes";
import { readLetters, writeLetters } from "./letters";
import { readTime, timeIn, writeTime } from "./time";
import { vocabulary } from "./vocabulary";

const smallInt = 0x00;
const word = 0x40;
const words = 0x70;
const object = 0xb0;
const list = 0xc0;
const none = 0xd0;
const no = 0xd1;
const yes = 0xd2;
const double = 0xd3;
const uuid = 0xd4;
const time = 0xd5;
const text = 0xd7;
const plainText = 0xd8;
const again = 0xd9;
const longObject = 0xda;
const longList = 0xdb;
/** Plus the number of decimal places. */
const positive = 0xe0;
const negative = 0xf0;
const mostPlaces = 9;

/** Deeper or longer than any card or log. */
const deepest = 12;
const longestText = 10_000;

const wordAt = new Map(vocabulary.map((known, i) => [known, i]));
const uuidPattern = /^[\da-f]{8}-[\da-f]{4}-[\da-f]{4}-[\da-f]{4}-[\da-f]{12}$/;

/** Texts longer than this are written once and referred to. */
const worthReferring = 2;

export function packed(value: unknown): Uint8Array {
	const out = writer();
	write(out, value, new Map());
	return Uint8Array.from(out.bytes);
}

/** Throws a MangledError where the bytes are not what `packed` makes. */
export function unpacked(bytes: Uint8Array): unknown {
	const from = reader(bytes);
	const value = read(from, [], 0);
	if (from.left > 0) throw new MangledError("there is more behind the end");
	return value;
}

function write(out: Writer, value: unknown, seen: Map<string, number>): Writer {
	if (typeof value === "string") return writeText(out, value, seen);
	if (typeof value === "number") return writeNumber(out, value);
	if (typeof value === "boolean") return out.byte(value ? yes : no);
	if (value === null) return out.byte(none);
	if (Array.isArray(value)) {
		writeLength(out, value.length, list, longList);
		for (const item of value) write(out, item, seen);
		return out;
	}
	if (typeof value !== "object") throw new TypeError(`JSON holds no ${typeof value}`);
	const fields = Object.entries(value).filter(([, inner]) => inner !== undefined);
	writeLength(out, fields.length, object, longObject);
	for (const [name, inner] of fields) {
		writeText(out, name, seen);
		write(out, inner, seen);
	}
	return out;
}

function writeLength(out: Writer, length: number, short: number, long: number): Writer {
	if (length < 16) return out.byte(short + length);
	return out.byte(long).count(length);
}

function writeText(out: Writer, value: string, seen: Map<string, number>): Writer {
	const known = wordAt.get(value);
	if (known !== undefined) return out.byte(word + known);
	const before = seen.get(value);
	if (before !== undefined) return out.byte(again).count(before);
	if (value.length > worthReferring) seen.set(value, seen.size);
	if (uuidPattern.test(value)) {
		const digits = value.replaceAll("-", "");
		return out
			.byte(uuid)
			.all(Array.from({ length: 16 }, (_, i) => Number.parseInt(digits.slice(2 * i, 2 * i + 2), 16)));
	}
	const when = timeIn(value);
	if (when) return writeTime(out.byte(time), when);
	const short = writer();
	writeLetters(short, value);
	const plain = new TextEncoder().encode(value);
	if (short.bytes.length <= plain.length + 1) return out.byte(text).all(short.bytes);
	return out.byte(plainText).count(plain.length).all(plain);
}

function writeNumber(out: Writer, value: number): Writer {
	if (Number.isInteger(value) && value >= 0 && value < 64 && !Object.is(value, -0)) return out.byte(smallInt + value);
	const size = Math.abs(value);
	for (let places = 0; places <= mostPlaces; places++) {
		const digits = Math.round(size * 10 ** places);
		if (digits > 2 ** 42) break;
		if (Number(`${digits}e-${places}`) !== size || Object.is(value, -0)) continue;
		return out.byte((value < 0 ? negative : positive) + places).count(digits);
	}
	const bytes = new Uint8Array(8);
	new DataView(bytes.buffer).setFloat64(0, value);
	return out.byte(double).all(bytes);
}

function read(from: Reader, seen: string[], depth: number): unknown {
	if (depth > deepest) throw new MangledError("it is too deep");
	const first = from.byte();
	if (first < word) return first - smallInt;
	if (first >= object && first < list) return readObject(from, first - object, seen, depth);
	if (first >= list && first < none) return readList(from, first - list, seen, depth);
	if (first >= negative && first <= negative + mostPlaces) return -decimal(from, first - negative);
	if (first >= positive && first <= positive + mostPlaces) return decimal(from, first - positive);
	switch (first) {
		case none:
			return null;
		case no:
			return false;
		case yes:
			return true;
		case double:
			return finite(new DataView(Uint8Array.from(from.take(8)).buffer).getFloat64(0));
		case longObject:
			return readObject(from, from.count(), seen, depth);
		case longList:
			return readList(from, from.count(), seen, depth);
		default:
			return readText(from, first, seen);
	}
}

function readObject(from: Reader, length: number, seen: string[], depth: number): unknown {
	// A field takes at least two bytes: what claims more is not believed, and costs nothing.
	if (length * 2 > from.left) throw new MangledError("more fields than bytes");
	const found: Record<string, unknown> = {};
	for (let i = 0; i < length; i++) {
		const name = readText(from, from.byte(), seen);
		if (name === "__proto__" || Object.hasOwn(found, name)) throw new MangledError("a field can't be");
		found[name] = read(from, seen, depth + 1);
	}
	return found;
}

function readList(from: Reader, length: number, seen: string[], depth: number): unknown[] {
	if (length > from.left) throw new MangledError("more items than bytes");
	return Array.from({ length }, () => read(from, seen, depth + 1));
}

function readText(from: Reader, first: number, seen: string[]): string {
	if (first >= word && first < word + words) {
		const known = vocabulary[first - word];
		if (known === undefined) throw new MangledError("a word of a newer version");
		return known;
	}
	if (first === again) {
		const before = seen[from.count()];
		if (before === undefined) throw new MangledError("a text that was not there before");
		return before;
	}
	const value = freshText(from, first);
	if (value.length > worthReferring) seen.push(value);
	return value;
}

function freshText(from: Reader, first: number): string {
	switch (first) {
		case uuid: {
			const digits = Array.from(from.take(16), (byte) => byte.toString(16).padStart(2, "0")).join("");
			return digits.replace(/^(.{8})(.{4})(.{4})(.{4})/, "$1-$2-$3-$4-");
		}
		case time:
			return readTime(from);
		case text:
			return readLetters(from, longestText);
		case plainText:
			return plainTextOf(from.take(from.count()));
		default:
			throw new MangledError("a byte means nothing here");
	}
}

function plainTextOf(bytes: Uint8Array): string {
	try {
		return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
	} catch {
		throw new MangledError("a text is not UTF-8");
	}
}

function decimal(from: Reader, places: number): number {
	return Number(`${from.count()}e-${places}`);
}

function finite(value: number): number {
	if (!Number.isFinite(value)) throw new MangledError("this is no number");
	return value;
}
