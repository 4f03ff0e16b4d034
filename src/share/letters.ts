/**
 * Text in fewer bits than a byte a letter: short codes for letters that English and German sentences about cars use often
 * (Huffman, 1952). The table is part of the format and never changes: another one would be another kind of text in `pack.ts`.
 */
import { MangledError, type Reader, type Writer } from "./bytes";

/** The end of a text, and the sign that 21 bits of a character follow that has no code of its own. */
const end = "\u0000";
const other = "\u0001";
const otherBits = 21;

/** Letters by the length of their codes. */
const table: readonly (readonly [bits: number, letters: string])[] = [
	[3, " "],
	[4, "aent"],
	[5, "dhilors"],
	[6, "\u0000,.12bcfgmuw"],
	[7, "0345Skpvy"],
	[8, "/6789:ABCDEFGIKLMPTWZzäü"],
	[9, "%()-;?HNORUVjxßéö"],
	[10, '\u0001!"*+JQXYq“'],
	[11, "=`ÄÖÜ’”„…"],
	[12, "#$'{}"],
	[13, "&<>@[\\]^_|~£°±²³µ·×àáâåæçèêíñóôøúœλ–—‘‚€№≈"],
];

interface Code {
	readonly bits: number;
	readonly value: number;
}

/** Canonical: codes of one length follow each other in the order of the table. */
function codes(): Map<string, Code> {
	const found = new Map<string, Code>();
	let value = 0;
	let before = 0;
	for (const [bits, letters] of table) {
		value <<= bits - before;
		before = bits;
		for (const letter of letters) found.set(letter, { bits, value: value++ });
	}
	return found;
}

const codeOf = codes();
const letterOf = new Map([...codeOf].map(([letter, { bits, value }]) => [keyOf(bits, value), letter]));

function keyOf(bits: number, value: number): number {
	return value * 16 + bits;
}

export function writeLetters(out: Writer, text: string): void {
	let pending = 0;
	let room = 8;
	const put = (value: number, bits: number) => {
		for (let bit = bits - 1; bit >= 0; bit--) {
			pending = (pending << 1) | ((value >>> bit) & 1);
			if (--room > 0) continue;
			out.byte(pending);
			[pending, room] = [0, 8];
		}
	};
	const putLetter = (letter: string) => {
		const code = codeOf.get(letter);
		if (code) put(code.value, code.bits);
		return code !== undefined;
	};
	for (const letter of text) {
		if (letter !== end && letter !== other && putLetter(letter)) continue;
		putLetter(other);
		put(letter.codePointAt(0) ?? 0, otherBits);
	}
	putLetter(end);
	if (room < 8) out.byte(pending << room);
}

/** Throws a MangledError where there is no such text, or more than `most` characters of it. */
export function readLetters(from: Reader, most: number): string {
	let byte = 0;
	let left = 0;
	const bit = () => {
		if (left === 0) [byte, left] = [from.byte(), 8];
		return (byte >>> --left) & 1;
	};
	const letter = () => {
		for (let [bits, value] = [1, bit()]; bits < 16; bits++, value = (value << 1) | bit()) {
			const found = letterOf.get(keyOf(bits, value));
			if (found !== undefined) return found;
		}
		throw new MangledError("no letter has this code");
	};
	const letters: string[] = [];
	for (;;) {
		const next = letter();
		if (next === end) return letters.join("");
		if (letters.length === most) throw new MangledError("a text is too long");
		letters.push(next === other ? character(bit) : next);
	}
}

function character(bit: () => number): string {
	let value = 0;
	for (let i = 0; i < otherBits; i++) value = (value << 1) | bit();
	if (value > 0x10ffff || (value >= 0xd800 && value < 0xe000)) throw new MangledError("this is no character");
	return String.fromCodePoint(value);
}
