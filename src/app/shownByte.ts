/** What a scan tool shows, in percent or as the raw byte, and how it was understood. */
import { type ByteFault, type ByteRead, readByte } from "../domain/readings/obd";
import { err, ok, type Result } from "../domain/result";
import { exactPercent } from "./format";
import { parseNumber } from "./parseNumber";
import { typedNumber } from "./typedNumber";
import { figuresWords } from "./words/figures";

export type ShownAs = "percent" | "byte";

/** A quantity of SAE J1979 that fits a byte. */
export interface Scale {
	/** Ids of the quantity, two hexadecimal digits each. */
	readonly pids: readonly string[];
	readonly ofByte: (byte: number) => number;
	/** Limits, fractions. */
	readonly least: number;
	readonly most: number;
	/** As a person would type it. */
	readonly example: { readonly percent: string; readonly byte: string };
}

export interface Shown {
	/** Fraction. */
	readonly value: number;
	/** How it was read; null where there is no doubt. */
	readonly understood: string | null;
	/** The same digits marked as hexadecimal, where they may have been meant so, and what they say then. */
	readonly inHex: { readonly typed: string; readonly value: number } | null;
}

/** The value, or what is wrong and how to mend it. */
export function readShown(typed: string, as: ShownAs, scale: Scale): Result<Shown, string> {
	return as === "percent" ? readAsPercent(typed, scale) : readAsByte(typed, scale);
}

/** A percentage with its sign: +3.1 %. */
export function signedPercent(fraction: number): string {
	const words = exactPercent(Math.abs(fraction));
	return Math.abs(fraction) < 0.0005 ? words : `${fraction < 0 ? "−" : "+"}${words}`;
}

function readAsPercent(typed: string, { least, most, example }: Scale): Result<Shown, string> {
	const words = figuresWords();
	const text = typed.replace(/[%\s]/g, "");
	const digits = text.replace(/^[+\-−–]/, "");
	const number = parseNumber(digits, 0, Infinity);
	if (!number.ok)
		return err(
			number.error === "empty"
				? words.percentEmpty(typedNumber(example.percent))
				: words.notAPercentage(typedNumber(example.percent)),
		);
	const value = (/^[-−–]/.test(text) ? -number.value : number.value) / 100;
	if (value < least || value > most) return err(words.outside(signedPercent(least), signedPercent(most)));
	return ok({ value, understood: null, inHex: null });
}

function readAsByte(typed: string, { pids, ofByte, example }: Scale): Result<Shown, string> {
	const read = readByte(typed, pids);
	if (!read.ok) return err(byteFaults(read.error, pids, example.byte));
	const { byte, inHex } = read.value;
	return ok({
		value: ofByte(byte),
		understood: byteWords(read.value, typed),
		inHex: inHex === null ? null : { typed: `0x${typed.trim()}`, value: ofByte(inHex) },
	});
}

function byteWords({ byte, as }: ByteRead, typed: string): string {
	const words = figuresWords();
	const hex = byte.toString(16).toUpperCase().padStart(2, "0");
	switch (as) {
		case "response":
			return words.ofResponse(hex, byte);
		case "hexadecimal":
			return words.hexadecimal(hex, byte);
		case "decimal":
			return words.decimal(Number(typed));
	}
}

function byteFaults(fault: ByteFault, pids: readonly string[], example: string): string {
	const words = figuresWords();
	switch (fault) {
		case "empty":
			return words.byteEmpty(example);
		case "notAByte":
			return words.notAByte(example);
		case "tooLarge":
			return words.byteTooLarge(example);
		case "otherPid":
			return words.otherPid(pids);
	}
}
