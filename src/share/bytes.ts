/** Numbers in as few bytes as they need, written one after the other and read back. */

/** What can't be read as what it should be; caught by `frame.ts` and `pack.ts`' callers, never shown. */
export class MangledError extends Error {
	override readonly name = "MangledError";
}

export interface Writer {
	readonly bytes: number[];
	byte(value: number): Writer;
	/** A whole number from 0 to 2^53: seven bits a byte, the lowest first. */
	count(value: number): Writer;
	all(bytes: Iterable<number>): Writer;
}

export function writer(): Writer {
	const bytes: number[] = [];
	const out: Writer = {
		bytes,
		byte(value) {
			bytes.push(value);
			return out;
		},
		count(value) {
			let rest = value;
			for (; rest >= 0x80; rest = Math.floor(rest / 0x80)) bytes.push((rest % 0x80) | 0x80);
			return out.byte(rest);
		},
		all(more) {
			for (const byte of more) bytes.push(byte);
			return out;
		},
	};
	return out;
}

export interface Reader {
	readonly left: number;
	/** Each throws a MangledError at the end of the bytes. */
	byte(): number;
	count(): number;
	take(length: number): Uint8Array;
}

export function reader(bytes: Uint8Array): Reader {
	let at = 0;
	function take(length: number): Uint8Array {
		if (length > bytes.length - at) throw new MangledError("the bytes end too early");
		at += length;
		return bytes.subarray(at - length, at);
	}
	return {
		get left() {
			return bytes.length - at;
		},
		byte: () => take(1)[0],
		count() {
			let value = 0;
			for (let scale = 1; ; scale *= 0x80) {
				const byte = take(1)[0];
				value += (byte & 0x7f) * scale;
				if (value > Number.MAX_SAFE_INTEGER) throw new MangledError("a number is too large");
				if (byte < 0x80) return value;
			}
		},
		take,
	};
}

/** CRC-32 (ISO 3309), which notices every mangling of up to four bytes in a row. */
export function checksum(bytes: Uint8Array): number {
	let sum = ~0;
	for (const byte of bytes) {
		sum ^= byte;
		for (let bit = 0; bit < 8; bit++) sum = (sum >>> 1) ^ (sum & 1 ? 0xedb88320 : 0);
	}
	return ~sum >>> 0;
}

export function fourBytes(value: number): number[] {
	return [value >>> 24, (value >>> 16) & 0xff, (value >>> 8) & 0xff, value & 0xff];
}
