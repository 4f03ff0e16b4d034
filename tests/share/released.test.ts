/** Codes as released versions made them: on paper in a glove box they must be read for years. The file is never edited. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { readCard } from "../../src/share/card";
import { unframed } from "../../src/share/frame";
import { readHoldings } from "../../src/share/holdings";
import { foundIn } from "../../src/share/link";
import { unpacked } from "../../src/share/pack";
import { readPart } from "../../src/share/part";
import { type Collected, wholeOf, withPiece } from "../../src/share/sequence";

const { card, take, hand, words } = JSON.parse(readFileSync(join(import.meta.dirname, "codes-v1.json"), "utf8"));

test("a card of version 1 is read", () => {
	expect(readCard(card.payload)).toEqual({ ok: true, value: card.says });
});

test("entries of version 1 are read", () => {
	const collected = take.links.reduce((before: Collected | null, link: string) => {
		const after = withPiece(before, foundIn(link)[0].payload);
		return after.ok ? after.value : before;
	}, null);
	const body = wholeOf(collected);
	expect(body.ok && readPart(body.value)).toEqual({ ok: true, value: take.says });
});

test("what a phone has, in version 1, is read", () => {
	expect(readHoldings(hand.payload)).toEqual({ ok: true, value: hand.says });
});

test("every word of version 1 is read", () => {
	const body = unframed("card", words.payload);
	expect(body.ok && unpacked(body.value)).toEqual(words.says);
});
