/**
 * What every code carries around its contents: the kind, the version of the format, and a checksum; as text that links, QR
 * codes and files hold alike. Nothing is thrown: what can't be read is told by its reason.
 */
import { err, ok, type Result } from "../domain/result";
import { checksum, fourBytes, MangledError } from "./bytes";

/** By the name that it has in a link. */
export type Kind = "card" | "take" | "hand" | "live";

/** `foreign`: nothing of ours; `mangled`: ours, and damaged; `newer`: of a later version of the app. */
export type Unreadable = "foreign" | "mangled" | "newer";

const numberOf: Readonly<Record<Kind, number>> = { card: 1, take: 2, hand: 3, live: 4 };
const formatVersion = 1;
const sumLength = 4;

export function framed(kind: Kind, body: Uint8Array): string {
	const head = [numberOf[kind], formatVersion, ...body];
	return base64url([...head, ...fourBytes(checksum(Uint8Array.from(head)))]);
}

export function unframed(kind: Kind, text: string): Result<Uint8Array, Unreadable> {
	const bytes = bytesIn(text);
	if (!bytes || bytes.length < 2 + sumLength) return err("mangled");
	const end = bytes.length - sumLength;
	const sum = fourBytes(checksum(bytes.subarray(0, end)));
	if (sum.some((byte, i) => byte !== bytes[end + i])) return err("mangled");
	if (bytes[1] > formatVersion) return err("newer");
	return bytes[0] === numberOf[kind] && bytes[1] === formatVersion ? ok(bytes.subarray(2, end)) : err("mangled");
}

/** The reading of contents, with what it throws as a reason. */
export function readable<Value>(read: () => Result<Value, Unreadable>): Result<Value, Unreadable> {
	try {
		return read();
	} catch (error) {
		if (error instanceof MangledError) return err("mangled");
		throw error;
	}
}

/** RFC 4648, section 5, without padding. */
export function base64url(bytes: Iterable<number>): string {
	const binary = Array.from(bytes, (byte) => String.fromCharCode(byte)).join("");
	return btoa(binary).replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
}

/** Null where the text is none. */
export function bytesIn(text: string): Uint8Array | null {
	if (!/^[\w-]+$/.test(text) || text.length % 4 === 1) return null;
	const binary = atob(text.replaceAll("-", "+").replaceAll("_", "/"));
	return Uint8Array.from(binary, (character) => character.charCodeAt(0));
}
