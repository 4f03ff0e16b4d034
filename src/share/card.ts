/** A calibration card: what a tuner says of a calibration, small enough for a QR code that scans at arm's length. */
import * as z from "zod/mini";
import { err, ok, type Result } from "../domain/result";
import type { Calibration } from "../domain/vehicle";
import { digestOf } from "../store/head";
import { aDay, calibrationFields } from "../store/wire";
import { readable, type Unreadable, unframed } from "./frame";
import { packed, unpacked } from "./pack";

/** As on a calibration, and the last day on which it may be taken. */
export interface Card extends Omit<Calibration, "id"> {
	/** `2026-12-31` */
	readonly validUntil?: string;
}

/** Without fields that we don't know: a later version of the app says so by the version of its code. */
const cardSchema: z.ZodMiniType<Card, unknown> = z.object({ ...calibrationFields, validUntil: z.exactOptional(aDay) });

/** Bytes of a packed card: with the address of the app its link then has at most 500 characters. */
export const mostCardBytes = 324;
/** Characters that the form lets a person type. */
export const longestCardName = 60;
export const longestNotes = 200;
export const longestWayBack = 140;

/** Null where it is larger than a card may be. */
export function packedCard(card: Card): Uint8Array | null {
	const body = packed(card);
	return body.length <= mostCardBytes ? body : null;
}

/** How many bytes too large. */
export function excessOf(card: Card): number {
	return Math.max(0, packed(card).length - mostCardBytes);
}

export function readCard(payload: string): Result<Card, Unreadable> {
	return readable(() => {
		const body = unframed("card", payload);
		if (!body.ok) return body;
		const card = cardSchema.safeParse(unpacked(body.value));
		return card.success ? ok(card.data) : err("mangled");
	});
}

/** Whether it may still be taken on a day, `2026-06-01`. */
export function isExpired({ validUntil }: Card, today: string): boolean {
	return validUntil !== undefined && validUntil < today;
}

/** What it says as a calibration. Its id comes of its contents: the same card on two phones is the same calibration. */
export function calibrationOf(card: Card): Calibration {
	const { validUntil: _, ...fields } = card;
	return { id: `card-${digestOf(card).toString(36)}`, ...fields };
}
