/** Log files that accidents and malice make of sound ones: every file is drawn by fast-check, so a failing one shrinks. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { formatLog } from "../../src/store/backup";
import { aLog } from "./logs";

export interface HostileFile {
	/** What was done to it, in order. */
	readonly done: string;
	readonly bytes: Uint8Array<ArrayBuffer>;
	/** What fast-check prints of it. */
	readonly [fc.toStringMethod]: () => string;
}

/** Four whole numbers from which a mutator takes all its chance. */
export type Picks = readonly number[];
type Json = Record<string, unknown>;

const folder = join(import.meta.dirname, "../../tests/fixtures");
export const soundTexts: readonly string[] = [
	...readdirSync(folder).map((name) => readFileSync(join(folder, name), "utf8")),
	formatLog(aLog()),
];

export const pick = <T>(from: readonly T[], by: number): T => from[by % from.length];
/** Seldom the last one, which is large and takes its time. */
const size = (from: readonly number[], by: number): number =>
	by % 25 === 0 ? from[from.length - 1] : from[by % (from.length - 1)];
const utf8 = (text: string) => new TextEncoder().encode(text);
const textOf = (bytes: Uint8Array) => new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes);

export const onBytes: Record<string, (bytes: Uint8Array, picks: Picks) => Uint8Array> = {
	"a flipped bit": (bytes, [at, bit]) =>
		bytes.map((byte, i) => (i === at % bytes.length ? byte ^ (1 << (bit % 8)) : byte)),
	"cut short": (bytes, [at]) => bytes.slice(0, at % bytes.length),
	"a piece lost": (bytes, [at, size]) =>
		joined(bytes.slice(0, at % bytes.length), bytes.slice((at % bytes.length) + (size % 200))),
	"a piece twice": (bytes, [at, size]) => {
		const from = at % bytes.length;
		return joined(bytes.slice(0, from + (size % 400)), bytes.slice(from));
	},
	"bytes of chance": (bytes, [at, ...rest]) =>
		joined(bytes.slice(0, at % bytes.length), Uint8Array.from(rest), bytes.slice(at % bytes.length)),
	"a byte order mark": (bytes) => joined(Uint8Array.of(0xef, 0xbb, 0xbf), bytes),
	"UTF-16": (bytes, [mark]) => Uint8Array.from(Buffer.from((mark % 2 ? "\ufeff" : "") + textOf(bytes), "utf16le")),
	"a file twice": (bytes) => joined(bytes, bytes),
	"no file": () => new Uint8Array(),
};

const numbers =
	"1e400 -1e400 -0 0 NaN Infinity null 1e308 5e-324 1e-300 0x10 01 +1 .5 1. 1_000 12,5 -1 99999999999999999999 3e9".split(
		" ",
	);

/** Names that objects have by birth, and some that hide what they are. */
const names = [
	"__proto__",
	"\\u005f_proto__",
	"constructor",
	"prototype",
	"toString",
	"hasOwnProperty",
	"length",
	"",
	"then",
	"toJSON",
];

const onText: Record<string, (text: string, picks: Picks) => string> = {
	"a number of another kind": (text, [at, number]) =>
		swapped(text, /-?\d[\d.]*(?=[,\s\]])/g, at, () => pick(numbers, number)),
	"a value of megabytes": (text, [at, length]) =>
		swapped(text, /"[^"\n]*"(?=[,\n])/g, at, () => `"${"x".repeat(size([201, 1e4, 1e5, 13e6], length))}"`),
	"a number of megabytes": (text, [at, length]) =>
		swapped(text, /\d+(?=[,\n])/g, at, () => "1".repeat(size([400, 1e5, 5e6], length))),
	"a field twice": (text, [at, value]) =>
		swapped(text, /"\w+": /g, at, (found) => `${found}${pick(["1", "null", '"x"', "{}"], value)}, ${found}`),
	"a field from birth": (text, [at, name, value]) =>
		swapped(
			text,
			/"\w+": /g,
			at,
			(found) => `"${pick(names, name)}": ${pick(['{"polluted": true}', "1", "null"], value)}, ${found}`,
		),
	"a field renamed": (text, [at, name]) => swapped(text, /"\w+"(?=: )/g, at, () => `"${pick(names, name)}"`),
	"deep nesting": (text, [at, depth, kind]) => {
		const levels = size([20, 33, 1000, 200_000], depth);
		const [open, close] = pick(
			[
				["[", "]"],
				['{"a":', "}"],
			] as const,
			kind,
		);
		return swapped(text, /\d+(?=[,\n])/g, at, () => `${open.repeat(levels)}1${close.repeat(levels)}`);
	},
	"wide lists": (text, [at, length, kind]) =>
		swapped(
			text,
			/\d+(?=[,\n])/g,
			at,
			() => `[${pick(["1,", "{},", "[],", '"",'], kind).repeat(size([30, 1e3, 2e6], length))}1]`,
		),
	"wide braces": (text, [at, length]) =>
		swapped(
			text,
			/\d+(?=[,\n])/g,
			at,
			() => `{${Array.from({ length: size([30, 999, 2000, 3e5], length) }, (_, i) => `"${i}":1`).join()}}`,
		),
	"blanks and blank lines": (text, [length, kind]) =>
		pick(["\n", " ", "\t\r\n"], kind).repeat(size([10, 1e4, 4e6], length)) + text,
	"something behind the end": (text, [what]) => text + pick(["}", "\u0000", " \n\n", "// by me", "{}"], what),
};

/** Texts that are allowed or not, and that no screen, file name or terminal may obey. */
export const hostileTexts: readonly string[] = [
	"<img src=x onerror=alert(1)>",
	"</title><script>alert(1)</script>",
	"javascript:alert(1)",
	"' onclick=alert(1) x='",
	"\u202egnp.exe\u202c",
	"\u2066\u2067\u2068\u2069\u200f\u200e\u061c",
	"line one\nline two\r\nline three\u2028\u2029",
	"\u0000\u0007\u001b[31m\u009b31m",
	`Z${"\u0351\u036b\u0343".repeat(60)}`,
	"\u200b\u200d\ufeff\u00ad",
	"../../../etc/passwd",
	"CON.txt:stream|<>?*",
	"=cmd|' /C calc'!A0",
	"W".repeat(200),
	"x".repeat(10_000),
	"\ud83d",
	"__proto__",
	"constructor",
	"a/b#c?d%2e%zz&e",
	"𝕎".repeat(100),
	" ",
];

const values: readonly unknown[] = [
	null,
	true,
	-1,
	0,
	1e9,
	1e308,
	5e-324,
	0.5,
	"",
	[],
	{},
	[[]],
	[0, 1],
	{ length: 1e9 },
	"1e400",
];
const times = [
	"2026-02-30T12:00:00Z",
	"0000-01-01T00:00:00Z",
	"9999-12-31T23:59:59Z",
	"+275760-09-13T00:00:00Z",
	"1970-01-01T00:00:00+14:00",
	"2200-12-31T23:59:59.999999999-23:59",
	"2026-06-01T24:00:00Z",
	"2026-06-01",
	"now",
	"2026-06-01T17:30:00+02:00\n",
	"٢٠٢٦-06-01T17:30:00Z",
];

interface Leaf {
	readonly holder: Json;
	readonly name: string;
}

const onTree: Record<string, (file: Json, picks: Picks) => void> = {
	"a field gone": (file, [at]) => withLeaf(file, at, ({ holder, name }) => delete holder[name]),
	"any value": (file, [at, value]) => withLeaf(file, at, ({ holder, name }) => (holder[name] = pick(values, value))),
	"a hostile text": (file, [at, text]) =>
		withLeaf(file, at, ({ holder, name }) => (holder[name] = pick(hostileTexts, text)), "string"),
	"another time": (file, [at, time]) =>
		withLeaf(file, at, ({ holder, name }) => (holder[name] = pick(times, time)), "at"),
	"another unit": (file, [at, factor]) =>
		withLeaf(
			file,
			at,
			({ holder, name }) =>
				(holder[name] = Number(holder[name]) * pick([3.785411784, 100, 0.264172, 1e-3, -1], factor)),
			"number",
		),
	"an event twice": (file, [at, times]) => {
		const events = eventsOf(file);
		if (events.length > 0) events.push(...Array(size([1, 10, 25_000], times)).fill(pick(events, at)));
	},
	"events in another order": (file) => void eventsOf(file).reverse(),
	"one id for two": (file, [from, to]) => {
		const events = eventsOf(file);
		if (events.length > 0) pick(events, to).id = pick(events, from).id;
	},
	"a claim of billions": (file, [what]) => {
		file.events = pick<unknown>([1e9, { length: 1e9 }, "1000000000", null], what);
	},
	"another version": (file, [version]) => {
		file.version = pick<unknown>([2, 0, "1", 1.5, 1e9, null], version);
	},
};

function eventsOf(file: Json): Json[] {
	const { events } = file;
	return Array.isArray(events) && events.every((event) => typeof event === "object" && event !== null) ? events : [];
}

type Step = (bytes: Uint8Array, picks: Picks) => Uint8Array;

/** By name; one that needs text or a tree leaves a file alone that is none any more. */
const steps: readonly (readonly [name: string, step: Step])[] = [
	...Object.entries(onBytes).map(
		([name, step]) => [name, (bytes, picks) => (bytes.length === 0 ? bytes : step(bytes, picks))] as [string, Step],
	),
	...Object.entries(onText).map(
		([name, step]) => [name, (bytes, picks) => utf8(step(textOf(bytes), picks))] as [string, Step],
	),
	...Object.entries(onTree).map(
		([name, step]) => [name, (bytes, picks) => onParsed(bytes, picks, step)] as [string, Step],
	),
];

export const hostileFiles: fc.Arbitrary<HostileFile> = fc
	.record({
		sound: fc.constantFrom(...soundTexts),
		steps: fc.array(fc.tuple(fc.constantFrom(...steps), fc.array(fc.nat(), { minLength: 4, maxLength: 4 })), {
			minLength: 1,
			maxLength: 3,
		}),
	})
	.map(({ sound, steps }) => {
		const done = steps.map(([[name], picks]) => `${name} (${picks})`).join(", then ");
		const bytes = steps.reduce((before, [[, step], picks]) => step(before, picks), utf8(sound) as Uint8Array);
		return { done, bytes: Uint8Array.from(bytes), [fc.toStringMethod]: () => done };
	});

function onParsed(bytes: Uint8Array, picks: Picks, change: (file: Json, picks: Picks) => void): Uint8Array {
	// What was blown up before stays as it is.
	if (bytes.length > 100_000) return bytes;
	let file: unknown;
	try {
		file = JSON.parse(textOf(bytes));
	} catch {
		return bytes;
	}
	if (typeof file !== "object" || file === null) return bytes;
	change(file as Json, picks);
	return utf8(JSON.stringify(file, null, 2));
}

/** Does something to one of the values that are no list and no object, or that are of a kind. */
function withLeaf(file: Json, at: number, change: (leaf: Leaf) => void, kind?: "string" | "number" | "at"): void {
	const leaves: Leaf[] = [];
	const visit = (holder: Json) => {
		for (const [name, value] of Object.entries(holder)) {
			const fits = kind === undefined || (kind === "at" ? name === "at" : typeof value === kind);
			if (fits) leaves.push({ holder, name });
			if (typeof value === "object" && value !== null) visit(value as Json);
		}
	};
	visit(file);
	if (leaves.length > 0) change(pick(leaves, at));
}

/** One of the places that match, with something else in it. */
function swapped(text: string, where: RegExp, at: number, put: (found: string) => string): string {
	const found = [...text.slice(0, 20_000).matchAll(where)];
	if (found.length === 0) return text;
	const { index, 0: match } = pick(found, at);
	return text.slice(0, index) + put(match) + text.slice(index + match.length);
}

function joined(...parts: Uint8Array[]): Uint8Array {
	return Uint8Array.from(Buffer.concat(parts));
}
