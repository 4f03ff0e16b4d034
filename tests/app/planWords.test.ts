import { describe, expect, test } from "vitest";
import type { Guided, Rest } from "../../src/app/fillPlan";
import {
	burnWords,
	clickedWords,
	driveWords,
	orderWords,
	pourWords,
	restWords,
	unplannableWords,
	verdictLine,
} from "../../src/app/planWords";
import type { Plan } from "../../src/domain/plan/request";
import { aCalibration } from "../helpers/logs";

const flex = { id: "flex-51-83", range: [0.51, 0.83] } as never;
const e10 = { id: "gasoline-e10", range: [0.09, 0.1] } as never;
const plain = (text: string | null | undefined) => text?.replaceAll("\u00a0", " ") ?? null;
const chances = (above: number, below = 0.1) => ({ above, below, inside: 1 - above - below });
const pours = (first: unknown, second: unknown, toClick = true) => [
	{ product: first, litres: 8, toClick: false },
	{ product: second, litres: 21.04, toClick },
];
const aPlan = (fields: Record<string, unknown> = {}): Plan =>
	({ pours: pours(flex, e10), chances: chances(0.05), swapped: chances(0.05), cost: null, ...fields }) as never;

test("pourWords() says the amount as the pump shows it, and of a click only about how much", () => {
	expect(aPlan().pours.map((pour) => plain(pourWords(pour, "L")))).toEqual([
		"8 L of Flex fuel E85 (US)",
		"Gasoline E10 (US) to the click, about 21.0 L",
	]);
});

describe("orderWords()", () => {
	test("with gasoline first says that an early click is on the safe side", () => {
		const words = orderWords(aPlan({ pours: pours(e10, flex), swapped: chances(0.15) }));
		expect(words).toBe(
			"Gasoline E10 (US) first: if the nozzle clicks early, what is missing is Flex fuel E85 (US), and the blend stays on the safe side. The other way round, too much: 3 in 20.",
		);
	});
	test("with flex fuel first says who takes up the difference, and what the other order risks", () => {
		expect(orderWords(aPlan({ swapped: chances(0.2) }))).toMatch(
			/^Flex fuel.*takes up the difference.*too much: 4 in 20/,
		);
		expect(orderWords(aPlan({ swapped: chances(0.05, 0.4) }))).toMatch(/the other way round, inside: 11 in 20/i);
	});
	test("makes no more of the order than there is", () => {
		expect(orderWords(aPlan())).toMatch(/would do as well/);
		expect(orderWords(aPlan({ pours: pours(flex, e10).slice(1), swapped: null }))).toBeNull();
		const byAmount = aPlan({ pours: pours(flex, e10, false), swapped: chances(0.2) });
		expect(orderWords(byAmount)).toBe("Flex fuel E85 (US) first. The other way round, too much: 4 in 20.");
	});
});

describe("verdictLine()", () => {
	const line = (value: Record<string, unknown>) =>
		verdictLine({
			planned: { ok: true, value: { plan: aPlan({ chances: chances(0.2, 0.3) }), reach: [0.1, 0.5], ...value } },
			calibration: aCalibration(),
			dots: null,
			otherwise: null,
		} as never);
	test("says nothing where the plan is inside", () => expect(line({ verdict: "inside" })).toBeNull());
	test("says what is left of the lean risk", () =>
		expect(line({ verdict: "lean" })?.more).toMatch(/too much ethanol is still 4 in 20/));
	test("says how likely too little is", () =>
		expect(line({ verdict: "knock" })?.more).toMatch(/too little ethanol is 6 in 20/));
	test("says which way a window lies that the products do not reach", () => {
		const below = line({ verdict: "knock", reach: [0.1, 0.2] });
		expect(below).toMatchObject({ outOfReach: true, more: /10–20.%.*26–34.%.*product with more ethanol/ });
		expect(line({ verdict: "lean", reach: [0.4, 0.5] })).toMatchObject({ outOfReach: true, more: /with less ethanol/ });
	});
});

test("unplannableWords() says what to change, for every reason", () => {
	const words = (why: unknown) => plain(unplannableWords(why as never, "L"));
	expect(words({ code: "nothingOnSale" })).toMatch(/^Tick at least one product/);
	expect(words({ code: "tooLittle", least: 0 })).toMatch(/more than nothing/);
	expect(words({ code: "tooLittle", least: 2 })).toMatch(/no less than 2.0 L/);
	expect(words({ code: "doesNotFit", room: 12.34 })).toMatch(/12.3 L surely do/);
	expect(words({ code: "full", room: 0 })).toMatch(/^The tank is full/);
	expect(words({ code: "full", room: 1.5 })).toMatch(/about 1.5 L still fit/);
	expect(words({ code: "noPrice", product: e10 })).toBe(
		"Type what Gasoline E10 (US) costs: without it nobody knows what the money buys.",
	);
	expect(words({ code: "tooLittleMoney" })).toMatch(/raise the sum/);
});

describe("restWords()", () => {
	const guided = (rest: Rest | null): Guided => ({ plan: { made: aPlan(), rest } }) as never;
	const planned = (litres: number): Rest =>
		({ kind: "planned", planned: { plan: { pours: [{ product: e10, litres, toClick: true }] } } }) as never;
	const words = (rest: Rest | null, poured: number) => plain(restWords(guided(rest), poured, "L"));
	test("says how the second pour changed, and why", () => {
		expect(words(planned(19.6), 9.5)).toBe(
			"Planned 21.0 L, now 19.6 L, because the first came out larger, 9.5 L instead of 8 L.",
		);
		expect(words(planned(24), 5)).toMatch(/now 24.0 L, because the first came out smaller/);
		expect(words(planned(21.04), 9.5)).toMatch(/^Still 21.0 L, though/);
	});
	test("says nothing where all went as planned", () => {
		expect(words(null, 8)).toBeNull();
		expect(words(planned(21.01), 8)).toBeNull();
		expect(words({ kind: "unknown" }, 8)).toBeNull();
	});
	test("says that a plan stands as it was where it could not be reckoned anew", () => {
		expect(words({ kind: "unknown" }, 9.5)).toMatch(/could not be reckoned anew/);
	});
	test("says that nothing more is to be poured, and to save", () => {
		const none = (why: unknown) => words({ kind: "none", why } as never, 9.5);
		expect(none({ code: "usedUp" })).toMatch(/took all.*save/);
		expect(none({ code: "full", room: 0 })).toMatch(/Nothing more fits.*save/);
		expect(none({ code: "tooLittle", least: 2 })).toMatch(/less than the dispenser sells.*save/);
		expect(none({ code: "doesNotFit", room: 15 })).toMatch(/15.0 L do/);
	});
});

test("clickedWords() tells an early click from a full tank, and never says to squeeze in more", () => {
	expect(plain(clickedWords(12.5, 8, "L"))).toMatch(
		/^It clicked 4.5 L early\..*take the click back.*leave it there and save/,
	);
	for (const poured of [12.5, 13]) {
		expect(clickedWords(12.5, poured, "L")).toMatch(
			/^It clicked before the second product\. If the tank is full, leave it/,
		);
	}
});

test("driving some off first is told in distance where the car's thirst is known, else in litres alone", () => {
	expect(plain(burnWords(8, 104, "L"))).toMatch(/about 8.0 L first, some 100 km of driving/);
	expect(plain(burnWords(8, 104, "gal"))).toMatch(/about 2.1 gal first, some 60 mi/);
	expect(plain(burnWords(1, 9.4, "L"))).toMatch(/some 9 km/);
	expect(burnWords(8, null, "L")).not.toMatch(/km|driving/);
	expect(burnWords(null, null, "L")).toMatch(/even with a nearly empty tank/);
});

test("several stops are promised only where the last comes inside", () => {
	const drive = { gauge: 0.25, days: 7 } as never;
	expect(plain(driveWords(drive, 3, true))).toBe(
		"In 3 stops it comes inside, driving down to about 25 % of the tank and 7 days in between:",
	);
	expect(driveWords(drive, 5, false)).toMatch(/^Even 5 stops in a row do not/);
});
