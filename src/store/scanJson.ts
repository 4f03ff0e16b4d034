/**
 * Reads JSON without building it, to say where it is wrong in a person's terms: engines tell the fault differently and
 * some name no place. Also refuses what JSON allows and a log must not hold, see below.
 */
import { deepest, longestText, mostFields, mostValues } from "./limits";
import { shownText } from "./logError";

/** A place, counted in characters from 0, and what is wrong there. */
export interface Fault {
	readonly at: number;
	readonly fault: ScanFault;
	/** The text is JSON as far as it was read, but not such as we take. */
	readonly refused?: true;
}

export type ScanFault =
	| { readonly code: Plain }
	| { readonly code: "expected"; readonly expected: Expected; readonly got: string }
	/** Two fields of one name. */
	| { readonly code: "twice"; readonly name: string }
	/** A comma with nothing behind it. */
	| { readonly code: "lastComma"; readonly before: Closing };

type Plain =
	| "moreAfterEnd"
	| "cutShort"
	| "openText"
	| "badEscape"
	| "manyValues"
	| "deep"
	| "hugeNumber"
	| "protoName"
	| "manyFields"
	| "halfCharacter"
	| "longText";

type Closing = "}" | "]";
export type Expected = "value" | "name" | "colon" | `comma or ${Closing}`;

interface Scan {
	readonly text: string;
	/** How many values have begun. */
	values: number;
}

/** Finds the first fault; null means that JSON.parse succeeds and keeps every field. */
export function scanJson(text: string): Fault | null {
	try {
		const end = skipSpace(text, scanValue({ text, values: 0 }, skipSpace(text, 0), 0));
		if (end < text.length) fail(end, { code: "moreAfterEnd" });
		return null;
	} catch (thrown) {
		if (thrown instanceof ScanError) return thrown.fault;
		throw thrown;
	}
}

class ScanError extends Error {
	constructor(readonly fault: Fault) {
		super(fault.fault.code);
	}
}

function fail(at: number, fault: ScanFault): never {
	throw new ScanError({ at, fault });
}

function refuse(at: number, fault: ScanFault): never {
	throw new ScanError({ at, fault, refused: true });
}

/** Each scan… takes the place where its part begins and returns the place after it. */
function scanValue(scan: Scan, at: number, depth: number): number {
	const { text } = scan;
	const first = text[at];
	if (++scan.values > mostValues) refuse(at, { code: "manyValues" });
	if (first === "{" || first === "[") {
		if (depth === deepest) refuse(at, { code: "deep" });
		return first === "{" ? scanObject(scan, at, depth + 1) : scanArray(scan, at, depth + 1);
	}
	if (first === '"') return scanString(text, at);
	scalar.lastIndex = at;
	if (!scalar.test(text)) return unexpected(text, at, "value");
	const end = scalar.lastIndex;
	if (Math.abs(Number(text.slice(at, end))) === Infinity) refuse(at, { code: "hugeNumber" });
	return end;
}

const scalar = /(?:true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?)(?![\w.+-])/y;

function scanObject(scan: Scan, start: number, depth: number): number {
	const { text } = scan;
	let at = skipSpace(text, start + 1);
	if (text[at] === "}") return at + 1;
	const names = new Set<string>();
	for (;;) {
		if (text[at] !== '"') unexpected(text, at, "name");
		const end = scanString(text, at);
		const name = textBetween(text, at, end);
		if (name === "__proto__") refuse(at, { code: "protoName" });
		if (names.has(name)) refuse(at, { code: "twice", name: shownText(name) });
		names.add(name);
		if (names.size > mostFields) refuse(at, { code: "manyFields" });
		at = skipSpace(text, end);
		if (text[at] !== ":") unexpected(text, at, "colon");
		at = skipSpace(text, scanValue(scan, skipSpace(text, at + 1), depth));
		if (text[at] === "}") return at + 1;
		at = scanComma(text, at, "}");
	}
}

function scanArray(scan: Scan, start: number, depth: number): number {
	const { text } = scan;
	let at = skipSpace(text, start + 1);
	if (text[at] === "]") return at + 1;
	for (;;) {
		at = skipSpace(text, scanValue(scan, at, depth));
		if (text[at] === "]") return at + 1;
		at = scanComma(text, at, "]");
	}
}

function scanComma(text: string, at: number, closing: Closing): number {
	if (text[at] !== ",") unexpected(text, at, `comma or ${closing}`);
	const next = skipSpace(text, at + 1);
	if (text[next] === closing) fail(at, { code: "lastComma", before: closing });
	return next;
}

function scanString(text: string, start: number): number {
	let mayHoldHalves = false;
	for (let at = start + 1; at < text.length; at++) {
		const code = text.charCodeAt(at);
		if (code === 0x22) {
			if (mayHoldHalves && /\p{Surrogate}/u.test(textBetween(text, start, at + 1)))
				refuse(start, { code: "halfCharacter" });
			return at + 1;
		}
		if (at - start > longestText) refuse(start, { code: "longText" });
		if (code < 0x20) fail(at, { code: "openText" });
		if (code === 0x5c) {
			escapes.lastIndex = at;
			if (!escapes.test(text)) fail(at, { code: "badEscape" });
			at = escapes.lastIndex - 1;
		}
		mayHoldHalves ||= code === 0x5c || (code >= 0xd800 && code < 0xe000);
	}
	return fail(text.length, { code: "cutShort" });
}

/** What a text in quotes says; `end` is the place after its closing quote. */
function textBetween(text: string, start: number, end: number): string {
	const raw = text.slice(start + 1, end - 1);
	return raw.includes("\\") ? (JSON.parse(text.slice(start, end)) as string) : raw;
}

const escapes = /\\(?:["\\/bfnrt]|u[\da-fA-F]{4})/y;

function unexpected(text: string, at: number, expected: Expected): never {
	if (at >= text.length) return fail(at, { code: "cutShort" });
	return fail(at, { code: "expected", expected, got: shownText(String.fromCodePoint(text.codePointAt(at) ?? 0)) });
}

function skipSpace(text: string, start: number): number {
	let at = start;
	while (isSpace(text.charCodeAt(at))) at++;
	return at;
}

function isSpace(code: number): boolean {
	return code === 0x20 || code === 0x0a || code === 0x0d || code === 0x09;
}
