/**
 * A body that is too long for one code, in several: each says which body it belongs to, its place and their number, so that
 * they can be taken in any order, twice, and on another day.
 */
import { err, ok, type Result } from "../domain/result";
import { checksum, fourBytes, reader, writer } from "./bytes";
import { base64url, bytesIn, readable, type Unreadable, unframed } from "./frame";
import { linkTo } from "./link";

/** Bytes of a body in one QR code: with a link around them a code of version 14, which a phone reads off another. */
export const codeBytes = 300;
/** Bytes in one link: messengers and browsers take longer ones, people don't. */
export const linkBytes = 2_000;
/** Nobody scans more codes than that: a file does it. */
export const mostCodes = 60;
/** A reader believes in no more. */
const mostParts = 1_000;

/** What was taken so far of one body. Plain data: it is kept on the disk between two codes. */
export interface Collected {
	readonly sum: number;
	readonly count: number;
	/** Pieces by their place, as base64url. */
	readonly pieces: Readonly<Record<string, string>>;
}

export function linksOf(app: string, body: Uint8Array, size: number): string[] {
	const sum = fourBytes(checksum(body));
	const count = Math.max(1, Math.ceil(body.length / size));
	return Array.from({ length: count }, (_, i) => {
		// Of equal lengths, so that no code is denser than it must be.
		const [from, to] = [i, i + 1].map((end) => Math.floor((end * body.length) / count));
		const piece = writer().all(sum).count(i).count(count).all(body.subarray(from, to));
		return linkTo(app, "take", Uint8Array.from(piece.bytes));
	});
}

/** With one more piece; one of another body begins anew. */
export function withPiece(before: Collected | null, payload: string): Result<Collected, Unreadable> {
	return readable(() => {
		const body = unframed("take", payload);
		if (!body.ok) return body;
		const from = reader(body.value);
		const sum = from.take(4).reduce((value, byte) => value * 256 + byte, 0);
		const [place, count] = [from.count(), from.count()];
		if (place >= count || count > mostParts) return err("mangled");
		const same = before?.sum === sum && before.count === count;
		const piece = base64url(from.take(from.left));
		return ok({ sum, count, pieces: { ...(same ? before.pieces : {}), [place]: piece } });
	});
}

/** Places that are still missing, from 0. */
export function missingIn({ count, pieces }: Collected): number[] {
	return Array.from({ length: count }, (_, i) => i).filter((i) => !Object.hasOwn(pieces, i));
}

/** The whole body, once nothing is missing. */
export function wholeOf({ sum, count, pieces }: Collected): Result<Uint8Array, Unreadable> {
	const bytes = Array.from({ length: count }, (_, i) => [...(bytesIn(pieces[i] ?? "") ?? [])]).flat();
	const body = Uint8Array.from(bytes);
	return checksum(body) === sum ? ok(body) : err("mangled");
}

/** What was on the disk, if it is that. */
export function readCollected(raw: unknown): Collected | null {
	const { sum, count, pieces } = (raw ?? {}) as Partial<Collected>;
	const sound = typeof sum === "number" && typeof count === "number" && count <= mostParts;
	return sound && typeof pieces === "object" && pieces !== null ? { sum, count, pieces } : null;
}
