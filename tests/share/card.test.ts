import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
	type Card,
	calibrationOf,
	excessOf,
	isExpired,
	mostCardBytes,
	packedCard,
	readCard,
} from "../../src/share/card";
import { base64url, bytesIn, framed } from "../../src/share/frame";
import { foundIn, linkTo } from "../../src/share/link";
import { packed } from "../../src/share/pack";

const app = "https://heeltap.example/";
const small = { name: "Blend 30", calibratedFor: 0.3, window: [0.26, 0.34] } as unknown as Card;
const full = {
	...small,
	name: "Stufe 2, E30, Winterkennfeld mit kleinem Lader",
	leanBudget: 0.02,
	knockBudget: 0.1,
	leanestLambda: 0.86,
	validUntil: "2027-03-31",
	notes:
		"Unter 20 % nur mit mindestens 98 Oktan fahren. Ladedruck bis zur ersten Auswertung auf 1,2 bar begrenzt. Nicht mit Anhänger fahren. Zündkerzen 0,65 mm, nach 5000 km prüfen. Bei Störung anrufen.",
	wayBack:
		"Zündung an, beide Tempomattasten zehn Sekunden halten, Steckplatz 1 wählen, bis die Lampe blinkt. Danach mit E10 leerfahren.",
} as unknown as Card;

const payloadOf = (card: Card) => framed("card", packedCard(card) ?? new Uint8Array());

describe("a card", () => {
	test("comes back from its link as it was made", () => {
		for (const card of [small, full]) {
			const [found] = foundIn(`Look: ${linkTo(app, "card", packedCard(card) ?? new Uint8Array())}.`);
			expect(found.kind).toBe("card");
			expect(readCard(found.payload)).toEqual({ ok: true, value: card });
		}
	});
	test("takes at most 500 characters as a link, full or at its very limit", () => {
		expect(linkTo(app, "card", packedCard(full) ?? new Uint8Array()).length).toBeLessThanOrEqual(430);
		const long = "https://an-address-of-a-host-that-is-long.example/a/";
		expect(linkTo(long, "card", new Uint8Array(mostCardBytes)).length).toBeLessThanOrEqual(500);
	});
	test("that is too large is not made, and says by how much", () => {
		const huge = { ...full, notes: "Ж".repeat(200) };
		expect(packedCard(huge)).toBeNull();
		expect(excessOf(huge)).toBe(packed(huge).length - mostCardBytes);
		expect(excessOf(full)).toBe(0);
	});
	test("is the same calibration wherever it is kept, and another if it says anything else", () => {
		const again = readCard(payloadOf(full));
		expect(again.ok && calibrationOf(again.value)).toEqual(calibrationOf(full));
		expect(calibrationOf({ ...full, leanBudget: 0.05 as never }).id).not.toBe(calibrationOf(full).id);
		expect(calibrationOf(full)).not.toHaveProperty("validUntil");
	});
	test("may be taken up to its last day", () => {
		expect(isExpired(full, "2027-03-31")).toBe(false);
		expect(isExpired(full, "2027-04-01")).toBe(true);
		expect(isExpired(small, "2199-01-01")).toBe(false);
	});
	test("of a newer version is told from a damaged one", () => {
		const bytes = [...(bytesIn(payloadOf(small)) ?? [])];
		expect(readCard(resealed([bytes[0], 2, ...bytes.slice(2, -4)]))).toEqual({ ok: false, error: "newer" });
		expect(readCard(payloadOf(small).slice(0, -1))).toEqual({ ok: false, error: "mangled" });
		expect(readCard("")).toEqual({ ok: false, error: "mangled" });
		expect(readCard(framed("take", packed(small)))).toEqual({ ok: false, error: "mangled" });
	});
});

test("a text without anything of ours has nothing in it", () => {
	for (const text of ["", "https://heeltap.example/", "WIFI:S:net;;", "https://x.example/#/cards/AAAA", "#/card/"])
		expect(foundIn(text)).toEqual([]);
	expect(foundIn("#/card/AAAA and #/take/BBBB, #/hand/CCCC")).toHaveLength(3);
});

describe("hostile cards are read as what they say or refused, and nothing is thrown:", () => {
	const seeded = { seed: 6, numRuns: 3000 };
	test("a damaged one is always noticed", () => {
		const payload = payloadOf(full);
		fc.assert(
			fc.property(fc.nat(payload.length - 1), fc.constantFrom(..."Az09-_=+/%"), (at, put) => {
				const mangled = payload.slice(0, at) + put + payload.slice(at + 1);
				const read = readCard(mangled);
				if (mangled !== payload) expect(read).toEqual({ ok: false, error: "mangled" });
			}),
			seeded,
		);
	});
	test("bytes of chance under a right checksum", () => {
		fc.assert(
			fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
				const read = readCard(resealed([1, 1, ...bytes]));
				if (read.ok) expect(Object.keys(read.value)).toEqual(expect.arrayContaining(["name", "window"]));
			}),
			seeded,
		);
	});
	test("bodies with single bytes changed under a right checksum are cards within the limits or none", () => {
		const body = [...packed(full)];
		let taken = 0;
		fc.assert(
			fc.property(fc.nat(body.length - 1), fc.nat(255), (at, byte) => {
				const read = readCard(resealed([1, 1, ...body.map((old, i) => (i === at ? byte : old))]));
				if (!read.ok) return;
				taken++;
				expect(read.value.window[0]).toBeLessThan(read.value.window[1]);
				expect(read.value.name).toMatch(/^[^\p{Control}\u202a-\u202e]{1,200}$/u);
			}),
			seeded,
		);
		expect(taken).toBeGreaterThan(100);
		expect(taken).toBeLessThan(2900);
	});
	test.each([
		["a window upside down", { ...small, window: [0.34, 0.26] }],
		["a content of a hundred", { ...small, calibratedFor: 30 }],
		["no name", { calibratedFor: 0.3, window: [0.26, 0.34] }],
		["a name that turns the text", { ...small, name: "\u202egnp.exe" }],
		["a name that is an object", { ...small, name: { toString: "x" } }],
		["a budget of none", { ...small, leanBudget: 0 }],
		["a day that is none", { ...small, validUntil: "2026-02-30" }],
		["notes of a book", { ...small, notes: "x".repeat(201) }],
		["a list", [small]],
		["nothing", null],
	])("%s", (_name, card) => {
		expect(readCard(framed("card", packed(card)))).toEqual({ ok: false, error: "mangled" });
	});
	test("fields that nobody knows, and those from birth, are left out", () => {
		const odd = JSON.parse('{"constructor": {"prototype": 1}, "toString": 1, "price": 5}');
		expect(readCard(framed("card", packed({ ...small, ...odd })))).toEqual({ ok: true, value: small });
	});
});

/** With a checksum that fits: what an attacker makes. */
function resealed(head: readonly number[]): string {
	let sum = ~0;
	for (const byte of head) {
		sum ^= byte;
		for (let bit = 0; bit < 8; bit++) sum = (sum >>> 1) ^ (sum & 1 ? 0xedb88320 : 0);
	}
	const value = ~sum >>> 0;
	return base64url([...head, value >>> 24, (value >>> 16) & 255, (value >>> 8) & 255, value & 255]);
}
