import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { doubtOf, isGrave } from "../../src/domain/doubt/doubt";
import { priors } from "../../src/domain/doubt/explanation";
import { isOdd, suspectedFrom } from "../../src/domain/doubt/odd";
import { suspectsIn } from "../../src/domain/doubt/suspects";
import { absorb, initialBelief } from "../../src/domain/estimator/absorb";
import type { TankEvent } from "../../src/domain/event";
import { aFill, aLevel, aStart, aTankReading } from "../helpers/logs";

const flex = { id: "flex", range: [0.51, 0.83] } as never;
const e10 = { id: "e10", range: [0.09, 0.1] } as never;
const tank = { capacityL: 58 } as never;
const size = 2 ** 13;
const at = (n: number) => new Date(1.78e12 + n * 3.6e6).toISOString();

describe("Suspects", () => {
	const first = aFill({ id: "a", at: at(1), stop: "s", product: flex, litres: 14, gauge: 0.2, odometerKm: 1000 });
	const second = aFill({ id: "b", at: at(2), stop: "s", product: e10, litres: 30, toClick: true });
	const kinds = (events: readonly TankEvent[], of: string) =>
		suspectsIn(events, [flex, e10], 70)
			.filter(({ explanation }) => explanation.event === of)
			.map(({ explanation }) => explanation.kind);

	test("of a fill are all that was said of it, its amount, its product, its pump, and a fill before it", () => {
		const found = new Set(kinds([first, second], "a"));
		expect(found).toEqual(new Set(["gauge", "odometer", "amount", "product", "pump", "missing", "exchange"]));
	});

	test("of a stop's second fill are no fill before it, but that the nozzle clicked early", () => {
		expect(kinds([first, second], "b")).not.toContain("missing");
		expect(kinds([first, second], "b")).toContain("click");
	});

	test("of every stop's first fill, and of a look at the gauge, are a fill before it, whatever came earlier", () => {
		const third = aFill({ id: "c", at: at(4), stop: "t", product: e10, litres: 5 });
		const events = [aStart({ id: "s" }), first, second, aLevel({ id: "l", at: at(3) }), third];
		const missed = events.filter(({ id }) => kinds(events, id).includes("missing"));
		expect(missed.map(({ id }) => id)).toEqual(["a", "l", "c"]);
	});

	test("hold no amount that fits into no such tank", () => {
		const amounts = suspectsIn([first, second], [flex, e10], 70).flatMap(({ explanation }) =>
			explanation.kind === "amount" ? [explanation.litres] : [],
		);
		expect(Math.max(...amounts)).toBeLessThanOrEqual(70);
		expect(Math.min(...amounts)).toBeCloseTo(1.4, 9);
	});

	test("of one product alone hold neither another product nor an exchange", () => {
		const found = suspectsIn([first, { ...second, product: flex }], [flex], 70).map(
			({ explanation }) => explanation.kind,
		);
		expect(found).not.toContain("product");
		expect(found).not.toContain("exchange");
	});

	test("share the chance of their kind, however many products there are", () => {
		const more = ["e5", "e20", "e40"].map((id, i) => ({ id, range: [0.04 + i / 10, 0.05 + i / 10] }) as never);
		for (const products of [[flex, e10], [flex, e10, ...more], [e10]])
			for (const kind of ["product", "missing"] as const) {
				const found = suspectsIn([first], products, 70).filter(({ explanation }) => explanation.kind === kind);
				const different = kind === "product" ? products.filter((product) => product !== flex) : products;
				expect(found).toHaveLength(different.length);
				expect(found.reduce((sum, { prior }) => sum + prior, 0)).toBeCloseTo(priors[kind], 12);
			}
	});

	test("take back one thing and leave all else of the entry as it was said", () => {
		const really = (of: TankEvent, kind: string) =>
			suspectsIn([of], [flex, e10], 70)
				.filter(({ explanation }) => explanation.kind === kind)
				.map(({ instead }) => instead.get(0)?.event);
		const full = { ...first, place: "north", toClick: true };
		const { gauge: _, ...noGauge } = full;
		const { odometerKm: __, ...noOdometer } = full;
		const { toClick: ___, ...noClick } = full;
		expect(really(full, "gauge")).toEqual([noGauge]);
		expect(really(full, "odometer")).toEqual([noOdometer]);
		expect(really(full, "click")).toEqual([noClick]);
		expect(really(full, "product")).toEqual([{ ...full, product: e10 }]);
		expect(really(full, "missing")).toEqual([full, full]);
		// A litre is 0.264 US gallons of 231 cubic inches, a gallon 3.785 litres.
		const amounts = [14 / 10, 14 * 3.785411784, 14 / 3.785411784].sort((a, b) => a - b);
		const found = really(full, "amount").map((event) => (event?.kind === "fill" ? event.litres : Number.NaN));
		expect(found.sort((a, b) => a - b)).toEqual(amounts.map((amount) => expect.closeTo(amount, 9)));
		// A pump beyond its label teaches nothing of the place, nor of the product.
		const [pump] = really(full, "pump");
		expect(pump).toMatchObject({ litres: 14, gauge: 0.2, toClick: true, product: { range: [0, 1] } });
		expect(pump).not.toHaveProperty("place");
		expect(pump?.kind === "fill" && pump.product.id).not.toBe("flex");
		const level = aLevel({ id: "l", odometerKm: 5000 });
		expect(really(level, "odometer")).toEqual([aLevel({ id: "l" })]);
		expect(really(level, "gauge")).toEqual([null]);
		expect(really(aStart({ contents: { value: 0.3, sd: 0.01 }, gauge: 0.5 }), "start")).toMatchObject([
			{ kind: "start", gauge: 0.5, contents: { range: [0, 0.85] } },
		]);
	});

	test("exchange two products of one stop, each in the other's amount, and those of no two stops", () => {
		const third = aFill({ id: "c", at: at(3), stop: "t", product: e10, litres: 5 });
		const again = aFill({ id: "d", at: at(4), stop: "s", product: flex, litres: 6 });
		const exchanges = suspectsIn([first, second, third, again], [flex, e10], 70).filter(
			({ explanation }) => explanation.kind === "exchange",
		);
		expect(exchanges.map(({ instead }) => [...instead])).toEqual([
			[
				[0, { event: { ...first, product: e10 } }],
				[1, { event: { ...second, product: flex } }],
			],
			[
				[1, { event: { ...second, product: flex } }],
				[3, { event: { ...again, product: e10 } }],
			],
		]);
		expect(exchanges.map(({ explanation }) => explanation)).toEqual([
			{ kind: "exchange", event: "a", other: "b" },
			{ kind: "exchange", event: "b", other: "d" },
		]);
	});

	test("of a start, a reading and a look at the gauge are these themselves", () => {
		const events = [aStart({ id: "s" }), aTankReading({ id: "r", at: at(1) }), aLevel({ id: "l", at: at(2) })];
		expect(kinds(events, "s")).toEqual(["start"]);
		expect(kinds(events, "r")).toEqual(["reading"]);
		expect(new Set(kinds(events, "l"))).toEqual(new Set(["gauge", "missing"]));
	});
});

describe("suspectedFrom()", () => {
	const fill = (stop: number, n: number) => aFill({ id: `${stop} ${n}`, at: at(10 * stop + n), stop: `stop ${stop}` });
	const reading = (n: number) => aTankReading({ id: `reading ${n}`, at: at(n) });

	test("goes back over two stops and the readings before them", () => {
		const events = [aStart({}), fill(1, 1), reading(12), fill(2, 1), fill(2, 2), fill(3, 1), reading(35)];
		expect(suspectedFrom(events)).toBe(2);
	});

	test("goes back to a start and no further", () => {
		expect(suspectedFrom([fill(1, 1), aStart({ at: at(15) }), fill(2, 1), reading(25)])).toBe(1);
		expect(suspectedFrom([])).toBe(0);
	});

	test("leaves out a third stop that the log begins with", () => {
		expect(suspectedFrom([fill(1, 1), fill(2, 1), fill(3, 1)])).toBe(1);
	});
});

test("isOdd() holds of what is half as likely as saying nothing, and of what is called out by itself", () => {
	expect([0, 0.49, 0.5, 3].map((likelihood) => isOdd({ likelihood, surprise: null }))).toEqual([
		true,
		true,
		false,
		false,
	]);
	expect(isOdd({ likelihood: 3, surprise: { kind: "impossibleLevel" } })).toBe(true);
});

test("isGrave() holds where less than three in four speak for nothing wrong", () => {
	expect([0, 0.74, 0.75, 1].map((nothing) => isGrave({ nothing, explanations: [] }))).toEqual([
		true,
		true,
		false,
		false,
	]);
});

describe("A doubt", () => {
	const before = initialBelief("car", tank, size);

	test("about a reading of a known tank is what Bayes' rule says", () => {
		const start = aStart({ id: "s", contents: { value: 0.3, sd: 0.0005 }, gauge: 0.5 });
		const reading = aTankReading({ id: "r", at: at(1), value: 0.39, sd: 0.025 });
		const { nothing, explanations } = doubtOf(before, [start, reading], [flex, e10], tank);
		const normal = (x: number, sd: number) => Math.exp(-0.5 * (x / sd) ** 2) / (sd * Math.sqrt(2 * Math.PI));
		const right = 0.98 * normal(0.09, 0.025);
		// With nothing known of the start, any content up to 85 % is as likely.
		const [rubbish, unknown] = [0.02, 0.01 * (0.98 / 0.85 + 0.02)];
		const all = right + rubbish + unknown;
		const weightOf = (kind: string) => explanations.find(({ explanation }) => explanation.kind === kind)?.weight;
		expect(nothing).toBeCloseTo(right / all, 2);
		expect(weightOf("reading")).toBeCloseTo(rubbish / all, 2);
		expect(weightOf("start")).toBeCloseTo(unknown / all, 2);
	});

	test("has weights that make up the whole, the greatest first, and is the same every time", () => {
		fc.assert(
			fc.property(fc.double({ min: 0, max: 1, noNaN: true }), fc.integer({ min: 1, max: 50 }), (value, litres) => {
				const events = [
					aStart({ id: "s", gauge: 0.5 }),
					aFill({ id: "f", at: at(1), product: flex, litres, gauge: 0.3 }),
					aTankReading({ id: "r", at: at(2), value, sd: 0.025 }),
				];
				const doubt = doubtOf(before, events, [flex, e10], tank);
				const weights = doubt.explanations.map(({ weight }) => weight);
				expect(weights.reduce((sum, weight) => sum + weight, doubt.nothing)).toBeCloseTo(1, 9);
				expect(weights).toEqual([...weights].sort((a, b) => b - a));
				expect(doubtOf(before, events, [flex, e10], tank)).toEqual(doubt);
			}),
			{ numRuns: 15 },
		);
	});

	test("about what no single thing explains is no number out of nothing", () => {
		const absurd = [
			aFill({ id: "f1", at: at(1), stop: "1", product: flex, litres: 150, gauge: 0.9 }),
			aFill({ id: "f2", at: at(2), stop: "2", product: flex, litres: 160, gauge: 0.9 }),
		];
		const { nothing, explanations } = doubtOf(absorb(before, aStart({}), tank, size).belief, absurd, [flex], tank);
		expect(nothing).toBe(0);
		for (const { weight } of explanations) expect(weight).toBeGreaterThanOrEqual(0);
	});
});
