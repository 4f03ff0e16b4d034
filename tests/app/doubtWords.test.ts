import { describe, expect, test } from "vitest";
import {
	correctedWords,
	disagreements,
	explanationWords,
	likeliest,
	markWords,
	measureAgainWords,
	nothingWords,
	remedyLabel,
	takenBackWords,
	treatments,
	weightWords,
} from "../../src/app/doubtWords";
import { date } from "../../src/app/format";
import { remediesFor } from "../../src/app/remedies";
import type { Explanation } from "../../src/domain/doubt/explanation";
import { suspectsIn } from "../../src/domain/doubt/suspects";
import type { TankEvent } from "../../src/domain/event";
import { litres } from "../../src/domain/quantity";
import { litresPer } from "../../src/domain/units";
import type { Contradiction } from "../../src/keeper/view";
import { aFill, aLevel, aPumpReading, aStart, aTankReading, aTrimReading } from "../helpers/logs";

const at = (day: number) => `2026-05-${String(day).padStart(2, "0")}T12:00:00+02:00`;
const flex = { id: "flex-51-83", range: [0.51, 0.83] } as never;
const e10 = { id: "gasoline-e10", range: [0.09, 0.1] } as never;
const entries: TankEvent[] = [
	aStart({ at: at(1), contents: { value: 0.3, sd: 0.025 } }),
	aFill({ id: "one", at: at(2), litres: 120, product: e10, gauge: 0.25, odometerKm: 84_210, toClick: true }),
	aFill({ id: "two", at: at(2), litres: 12, product: flex }),
	aTankReading({ id: "tank", at: at(12), value: 0.41 }),
	aTrimReading({ id: "trim", at: at(13), value: -0.031 }),
	aPumpReading({ id: "pump", at: at(14), product: flex, place: "Harbour" }),
	aLevel({ id: "level", at: at(15), gauge: 0.5, odometerKm: 84_400 }),
];
const [on2, on12, on13, on14, on15] = [2, 12, 13, 14, 15].map((day) => date(at(day)));
const words = (explanation: Explanation, unit: "L" | "gal" = "L") =>
	spaces(explanationWords(explanation, entries, unit));
const spaces = (text: string) => text.replaceAll("\u00a0", " ");

/** Every kind there is: without one of them this does not compile. */
const told: Readonly<Record<Explanation["kind"], readonly (readonly [explanation: Explanation, sentence: string])[]>> =
	{
		reading: [
			[{ kind: "reading", event: "tank" }, `The reading of 41 % on ${on12} is wrong.`],
			[{ kind: "reading", event: "trim" }, `The fuel trim of -3.1 % on ${on13} is wrong.`],
			[{ kind: "reading", event: "pump" }, `The test of “Flex fuel E85 (US)” at Harbour, 70 %, on ${on14} is wrong.`],
		],
		gauge: [
			[{ kind: "gauge", event: "one" }, `The gauge noted on ${on2}, 25 % of the tank, was misread or mistyped.`],
			[{ kind: "gauge", event: "level" }, `The gauge note of 50 % on ${on15} was misread or mistyped.`],
		],
		click: [
			[
				{ kind: "click", event: "one" },
				`The nozzle clicked too early on ${on2}, or the tank was not filled until it did.`,
			],
		],
		odometer: [
			[{ kind: "odometer", event: "one" }, `The odometer of ${on2}, 84210 km, is mistyped.`],
			[{ kind: "odometer", event: "level" }, `The odometer of ${on15}, 84400 km, is mistyped.`],
		],
		start: [[{ kind: "start", event: "start" }, "The tank did not hold at the start what was said, 30 % ± 2.5 %."]],
		amount: [
			[
				{ kind: "amount", event: "one", litres: litres(12) },
				`You poured 12 L of “Gasoline E10 (US)” on ${on2}, not 120 L: the decimal point slipped.`,
			],
			[
				{ kind: "amount", event: "two", litres: litres(120) },
				`You poured 120 L of “Flex fuel E85 (US)” on ${on2}, not 12 L: the decimal point slipped.`,
			],
			[
				{ kind: "amount", event: "two", litres: litres(12 * litresPer.gal) },
				`You poured 45.425 L of “Flex fuel E85 (US)” on ${on2}, not 12 L: gallons were taken for litres.`,
			],
			[
				{ kind: "amount", event: "two", litres: litres(12 / litresPer.gal) },
				`You poured 3.17 L of “Flex fuel E85 (US)” on ${on2}, not 12 L: litres were taken for gallons.`,
			],
		],
		product: [
			[
				{ kind: "product", event: "one", product: flex },
				`The 120 L of ${on2} were “Flex fuel E85 (US)”, not “Gasoline E10 (US)”.`,
			],
			[
				{ kind: "product", event: "two", product: { id: "flex-51-83", range: [0.7, 0.75] } as never },
				`The 12 L of ${on2} were “Flex fuel E85 (US)” (70 % to 75 %), not “Flex fuel E85 (US)” (51 % to 83 %).`,
			],
		],
		exchange: [
			[
				{ kind: "exchange", event: "one", other: "two" },
				`The amounts of “Gasoline E10 (US)” and “Flex fuel E85 (US)” on ${on2} were exchanged.`,
			],
		],
		pump: [
			[
				{ kind: "pump", event: "two" },
				`What the pump gave as “Flex fuel E85 (US)” on ${on2} was far outside its label, or it was another hose.`,
			],
		],
		missing: [
			[
				{ kind: "missing", event: "one", product: flex },
				`A fill of “Flex fuel E85 (US)” before the stop of ${on2} was never entered.`,
			],
			[
				{ kind: "missing", event: "level", product: e10 },
				`A fill of “Gasoline E10 (US)” before the gauge note of ${on15} was never entered.`,
			],
		],
	};

describe("explanationWords()", () => {
	for (const [kind, cases] of Object.entries(told))
		test(`says in the trade’s words what went wrong: ${kind}`, () => {
			for (const [explanation, sentence] of cases) expect(words(explanation)).toBe(sentence);
		});

	test("speaks of amounts and distances in the driver’s unit", () => {
		expect(words({ kind: "amount", event: "two", litres: litres(12 * litresPer.gal) }, "gal")).toBe(
			`You poured 12 gal of “Flex fuel E85 (US)” on ${on2}, not 3.17 gal: gallons were taken for litres.`,
		);
		expect(words({ kind: "odometer", event: "one" }, "gal")).toContain("52326 mi");
	});

	test("refuses an explanation of an entry that was not gone through", () => {
		expect(() => words({ kind: "click", event: "nowhere" })).toThrow(RangeError);
		expect(() => words({ kind: "pump", event: "level" })).toThrow(RangeError);
	});
});

test("everything that the model suspects has a sentence of its own and a way to settle it", () => {
	const suspects = suspectsIn(entries, [flex, e10], 1e4);
	const sentences = suspects.map(({ explanation }) => words(explanation));
	expect(new Set(sentences).size).toBe(sentences.length);
	expect(new Set(suspects.map(({ explanation }) => explanation.kind)).size).toBe(Object.keys(told).length);
	for (const { explanation } of suspects) {
		const remedies = remediesFor(explanation, entries);
		const labels = remedies.map((remedy) => remedyLabel(remedy, explanation, "L"));
		expect(labels.length).toBeGreaterThan(0);
		expect(new Set(labels).size).toBe(labels.length);
		for (const remedy of remedies) {
			if (remedy.kind === "takeBack")
				expect(takenBackWords(remedy)).toMatch(
					/^The (stop|\w+ ?\w*) (is void|counts without its (gauge|click|odometer))\.$/,
				);
			if (remedy.kind === "correct") expect(correctedWords(remedy.event)).toMatch(/ is corrected\.$/);
		}
	}
});

test("weightWords() speaks in percent, and of what is small as one in so many", () => {
	const said = [1, 0.994, 0.846, 0.01, 0.0024, 0.000_05, 0].map(weightWords).map(spaces);
	expect(said).toEqual([
		"over 99 %",
		"over 99 %",
		"85 %",
		"1 %",
		"1 in 400",
		"less than 1 in 10,000",
		"less than 1 in 10,000",
	]);
});

const contradiction = (fields: Partial<Contradiction> & { nothing?: number; weight?: number }): Contradiction => ({
	doubt: {
		nothing: fields.nothing ?? 0.1,
		explanations: [{ explanation: { kind: "reading", event: "tank" }, weight: fields.weight ?? 0.84 }],
	},
	grave: true,
	surprises: [],
	entries,
	...fields,
});
const [, fill, , tank, , , level] = entries;
const disagrees = { event: tank, surprise: { kind: "disagrees", chance: 0.0025 } } as const;
const tooFull = { event: level, surprise: { kind: "impossibleLevel" } } as const;
const tooFar = { event: fill, surprise: { kind: "impossibleDistance" } } as const;

test("what disagrees is told entry by entry, or of all of them together where none stands out", () => {
	const all = contradiction({ surprises: [disagrees, tooFull, tooFar] });
	expect(disagreements(all, "L").map(spaces)).toEqual([
		`The reading of 41 % on ${on12} disagrees with the account: a chance of 1 in 400.`,
		`What was said of the level on ${on15} does not fit in the tank.`,
		`The odometer of ${on2}, 84210 km, does not go with the fuel that was in the tank.`,
	]);
	expect(new Set(treatments(all)).size).toBe(3);
	expect(treatments(contradiction({ surprises: [disagrees, disagrees] }))).toHaveLength(1);
	expect([disagrees, tooFull, tooFar].map(({ surprise }) => markWords(surprise))).toEqual([
		"disagrees: a chance of 1 in 400",
		"does not fit in the tank",
		"distance does not fit",
	]);
	expect(disagreements(contradiction({ nothing: 0.41 }), "L").map(spaces)).toEqual([
		"Taken together, the last entries hardly fit: that nothing is wrong with them has a chance of 41 %.",
	]);
	expect(treatments(contradiction({}))[0]).toMatch(/nothing is left out/);
});

test("likeliest() is as sure as its weight, and may be that nothing is wrong", () => {
	const sentence = `The reading of 41 % on ${on12} is wrong.`;
	const sure = [0.97, 0.84, 0.6, 0.3].map((weight) => spaces(likeliest(contradiction({ weight }), "L")));
	expect(sure).toEqual([
		`Almost surely (97 %): ${sentence}`,
		`Very likely (84 %): ${sentence}`,
		`Probably (60 %): ${sentence}`,
		`Perhaps (30 %): ${sentence}`,
	]);
	expect(spaces(likeliest(contradiction({ nothing: 0.6, weight: 0.3 }), "L"))).toBe(
		`Probably (60 %): ${nothingWords()}`,
	);
	const none = contradiction({ doubt: { nothing: 0, explanations: [] } });
	expect(likeliest(none, "L")).toBe("No single slip explains it.");
});

test("measureAgainWords() asks for a second reading where there is one, else for what tells most", () => {
	expect(measureAgainWords(contradiction({ surprises: [disagrees] }))).toMatch(/^Measure the tank again/);
	const unread = entries.filter(({ kind }) => kind !== "reading");
	expect(measureAgainWords(contradiction({ entries: unread, surprises: [tooFull] }))).toMatch(/^Look at the gauge/);
	expect(measureAgainWords(contradiction({ entries: unread }))).toMatch(/^Measure the tank:/);
});
