import fc from "fast-check";
import { expect, test } from "vitest";
import { missedId, missedStop, saysTheSame, supposedStop, takenBack } from "../../src/app/remedies";
import { parseRoute, printRoute } from "../../src/app/route";
import type { FillEvent } from "../../src/domain/event";
import { litres } from "../../src/domain/quantity";
import { aFill, aLevel } from "../helpers/logs";

const product = { id: "flex-51-83", range: [0.51, 0.83] } as never;
const at = (ms: number) => new Date(ms).toISOString();
let ids = 0;
const newId = () => `new ${++ids}`;

test("missedStop() lies between the two entries, whatever is between them", () => {
	const instants = fc.integer({ min: 0, max: 4e12 });
	fc.assert(
		fc.property(instants, fc.integer({ min: 2_000, max: 1e11 }), (begin, span) => {
			const before = aLevel({ at: at(begin + span) });
			const { at: chosen } = missedStop(before, aLevel({ at: at(begin) }), product, "L", newId);
			const instant = Date.parse(chosen ?? "");
			// Written in whole seconds.
			expect(instant).toBeGreaterThan(begin - 1000);
			expect(instant).toBeLessThan(begin + span);
		}),
	);
});

test("missedStop() before the first entry is a day earlier", () => {
	const before = aLevel({ at: at(1e12) });
	const { at: chosen, pours } = missedStop(before, undefined, product, "L", newId);
	expect(1e12 - Date.parse(chosen ?? "")).toBeLessThan(86_400_000 + 60_000);
	expect(1e12 - Date.parse(chosen ?? "")).toBeGreaterThanOrEqual(86_400_000);
	expect(pours).toMatchObject([{ product, typed: "", toClick: false }]);
});

test("an address leads back to the entry before which a stop is missing", () => {
	const route = { screen: "doubt", id: missedId("a/b ü%") } as const;
	expect(parseRoute(printRoute(route))).toEqual(route);
});

const fills: FillEvent[] = [
	aFill({ id: "a", litres: 12.3456789, pricePerLitre: 1.5, gauge: 0.25 }),
	aFill({ id: "b", litres: 30, toClick: true }),
];

test("supposedStop() changes what the explanation says and nothing else", () => {
	const plain = supposedStop({ kind: "gauge", event: "a" }, fills, "L", newId);
	const slipped = supposedStop({ kind: "amount", event: "b", litres: litres(3) }, fills, "L", newId);
	expect(slipped.pours.map(({ typed }) => typed)).toEqual([plain.pours[0].typed, "3"]);
	const exchanged = supposedStop({ kind: "exchange", event: "b", other: "a" }, fills, "L", newId);
	expect(exchanged.pours.map(({ typed, price, toClick }) => [typed, price, toClick])).toEqual([
		["30", "1.5", false],
		["12.346", "", true],
	]);
	expect(saysTheSame(plain, supposedStop({ kind: "odometer", event: "a" }, fills, "L", newId))).toBe(true);
	expect(saysTheSame(plain, slipped)).toBe(false);
});

test("takenBack() replaces the whole stop, and keeps to the last digit what is not taken back", () => {
	const { voided, added } = takenBack({ kind: "takeBack", event: fills[0], part: "gauge" }, fills, newId);
	expect(voided).toEqual(["a", "b"]);
	const { gauge: _, ...first } = fills[0];
	expect(added).toEqual([
		{ ...first, id: expect.any(String), stop: expect.any(String) },
		{ ...fills[1], id: expect.any(String), stop: (added[0] as FillEvent).stop },
	]);
	expect(new Set([...added.map(({ id }) => id), "a", "b"]).size).toBe(4);
	expect((added[0] as FillEvent).stop).not.toBe(fills[0].stop);
});
