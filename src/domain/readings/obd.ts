/** What a scan tool shows of service 01 of SAE J1979 (ISO 15031-5): scaling by the standard, which says nothing of accuracy. */
import { type Fraction, fraction } from "../quantity";
import { err, ok, type Result } from "../result";

/** Ethanol in the fuel as the engine computer reports it. */
export const ethanolPid = "52";

/** Ethanol content of PID 52: A·100/255 %. */
export function ethanolOfByte(byte: number): Fraction {
	return fraction(byte / 255);
}

/** Fuel trim of PIDs 06 to 09, as a fraction: (A − 128)·100/128 %, so −1 to 127/128. */
export function trimOfByte(byte: number): number {
	return (byte - 128) / 128;
}

export interface ByteRead {
	/** 0 to 255. */
	readonly byte: number;
	/** A whole response has its byte in it, in hexadecimal. */
	readonly as: "hexadecimal" | "decimal" | "response";
	/** What it would be, were it hexadecimal after all; null where that is the same, or cannot be. */
	readonly inHex: number | null;
}

export type ByteFault = "empty" | "notAByte" | "tooLarge" | "otherPid";

/**
 * One byte as a tool shows it: hexadecimal if marked so (0x4D, $4D, 4Dh) or if it has a letter, else decimal. Of a whole
 * response, such as 7E8 03 41 52 4D, the byte after 41 and one of the `pids` (two hexadecimal digits each).
 */
export function readByte(typed: string, pids: readonly string[]): Result<ByteRead, ByteFault> {
	const text = typed.trim().toUpperCase();
	if (text === "") return err("empty");
	const packed = text.replace(/[\s>]/g, "");
	if (/^[0-9A-F]{6,}$/.test(packed)) return ofResponse(packed, pids);
	const marked =
		/^(?:0X|\$)([0-9A-F]+)$/.exec(text) ?? /^([0-9A-F]+)H$/.exec(text) ?? /^(\d*[A-F][0-9A-F]*)$/.exec(text);
	if (marked) return ofDigits(marked[1], "hexadecimal");
	return /^\d+$/.test(text) ? ofDigits(text, "decimal") : err("notAByte");
}

function ofDigits(digits: string, as: "hexadecimal" | "decimal"): Result<ByteRead, ByteFault> {
	const hex = Number.parseInt(digits, 16);
	const byte = as === "hexadecimal" ? hex : Number(digits);
	if (byte > 255) return err("tooLarge");
	return ok({ byte, as, inHex: hex <= 255 && hex !== byte ? hex : null });
}

/** A response is 41, the PID and its data; a header of the bus may stand before it. */
function ofResponse(packed: string, pids: readonly string[]): Result<ByteRead, ByteFault> {
	const found = new RegExp(`^(?:[0-9A-F]{3,10})?41(?:${pids.join("|")})([0-9A-F]{2})`).exec(packed);
	return found ? ok({ byte: Number.parseInt(found[1], 16), as: "response", inHex: null }) : err("otherPid");
}
