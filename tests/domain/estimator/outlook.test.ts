import { describe, expect, test } from "vitest";
import { absorb, initialBelief } from "../../../src/domain/estimator/absorb";
import { estimateOf } from "../../../src/domain/estimator/estimate";
import { outlookOf } from "../../../src/domain/estimator/outlook";
import type { FillEvent, TankEvent } from "../../../src/domain/event";
import { contentRange } from "../../../src/domain/quantity";
import { aFill, aPumpReading, aStart } from "../../helpers/logs";

const tank = { capacityL: 58 } as never;
const flexFuel = { id: "E85", range: [0.51, 0.83] };
const e10 = { id: "E10", range: [0.09, 0.1] };

function believed(...events: TankEvent[]) {
	return events.reduce((belief, event) => absorb(belief, event, tank).belief, initialBelief("car", tank));
}

/** Chances after really absorbing the fill of so many steps. */
function absorbed(
	before: ReturnType<typeof believed>,
	pour: FillEvent,
	step: number,
	k: number,
	window: [number, number],
) {
	const { belief } = absorb(before, { ...pour, litres: (k * step) as never }, tank);
	return estimateOf(belief, contentRange(...window));
}

const someE10 = believed(aStart({ contents: { range: [0.09, 0.1] }, gauge: 0.3 }));
const firstFill = absorb(someE10, aFill({ id: "gas", stop: "shared", product: e10, litres: 20, gauge: 0.25 }), tank);

describe("outlookOf(…) foretells what absorbing the fill will say, within 0.01:", () => {
	test.each([
		[
			"flex fuel on E10",
			someE10,
			aFill({ product: flexFuel, gauge: 0.25, place: "north" }),
			[0.26, 0.34],
			[20, 60, 100, 150, 190],
		],
		[
			"the second fill of a stop",
			firstFill.belief,
			aFill({ product: flexFuel, stop: "shared" }),
			[0.26, 0.34],
			[10, 40, 70, 100],
		],
		[
			"flex fuel into a tank nobody knows",
			initialBelief("car", tank),
			aFill({ product: flexFuel }),
			[0.5, 0.7],
			[5, 80, 160],
		],
		[
			"gasoline on flex fuel",
			believed(aStart({ contents: { range: [0.51, 0.83] }, gauge: 0.4 })),
			aFill({ product: e10, gauge: 0.4 }),
			[0.26, 0.34],
			[5, 60, 120],
		],
	] as [string, ReturnType<typeof believed>, FillEvent, [number, number], number[]][])(
		"%s",
		(_name, before, pour, window, steps) => {
			const outlook = outlookOf(before, pour, tank, contentRange(...window));
			for (const k of steps) {
				const { above, below } = absorbed(before, pour, outlook.step, k, window);
				expect(Math.abs(outlook.above[k] - above!)).toBeLessThan(0.01);
				expect(Math.abs(outlook.below[k] - below!)).toBeLessThan(0.01);
			}
		},
	);

	test("a pump that was tested", () => {
		const pour = aFill({ product: flexFuel, place: aPumpReading().place, gauge: 0.2, at: aPumpReading().at });
		const before = believed(
			aStart({ contents: { range: [0, 0.1] }, gauge: 0.2 }),
			aPumpReading({ value: 0.6, sd: 0.02 }),
		);
		const outlook = outlookOf(before, pour, tank, contentRange(0.26, 0.34));
		for (const k of [40, 55, 70]) {
			const { above, below } = absorbed(before, pour, outlook.step, k, [0.26, 0.34]);
			expect(Math.abs(outlook.above[k] - above!)).toBeLessThan(0.01);
			expect(Math.abs(outlook.below[k] - below!)).toBeLessThan(0.01);
		}
	});
});

describe("outlookOf(…)", () => {
	const outlook = outlookOf(someE10, aFill({ product: flexFuel, gauge: 0.25 }), tank, contentRange(0.26, 0.34));

	test("begins with nothing poured and ends where the tank is all but sure to be over-full", () => {
		const { above, below } = estimateOf(someE10, contentRange(0.26, 0.34));
		expect([outlook.above[0], outlook.below[0]]).toEqual([above, below]);
		const most = (outlook.above.length - 1) * outlook.step;
		// Gauge at a quarter: three quarters are free, and an eighth for the gauge's error and the filler neck.
		expect(most / 58).toBeGreaterThan(0.75);
		expect(most / 58).toBeLessThan(1.08);
	});

	test("lists chances, as many above as below, that never sum to more than one", () => {
		expect(outlook.above).toHaveLength(outlook.below.length);
		for (const [k, above] of outlook.above.entries()) {
			expect(above >= 0 && outlook.below[k] >= 0 && above + outlook.below[k] <= 1 + 1e-9).toBe(true);
		}
	});

	test("counts a content just on the edge of the window as inside, as the estimate does", () => {
		const start = believed(aStart({ contents: { range: [0.3, 0.3] }, gauge: 0.3 }));
		for (const window of [
			[0.3, 0.34],
			[0.26, 0.3],
		] as [number, number][]) {
			const same = { id: "same", range: [0.3, 0.3] };
			const outlook = outlookOf(start, aFill({ product: same, gauge: 0.3 }), tank, contentRange(...window));
			expect(new Set([...outlook.above, ...outlook.below])).toEqual(new Set([0]));
			const { above, below } = absorbed(start, aFill({ product: same, gauge: 0.3 }), outlook.step, 60, window);
			expect([above, below]).toEqual([0, 0]);
		}
	});

	test("stays outside for ever when the fuel poured lies just on the edge it would have to cross", () => {
		const drum = { id: "drum", range: [0.34, 0.34] };
		const rich = believed(aStart({ contents: { range: [0.7, 0.8] }, gauge: 0.3 }));
		const { above, below } = outlookOf(rich, aFill({ product: drum, gauge: 0.3 }), tank, contentRange(0.26, 0.34));
		expect(new Set(above)).toEqual(new Set([1]));
		expect(new Set(below)).toEqual(new Set([0]));
	});

	test("changes nothing in the belief it looks out from", () => {
		const copy = structuredClone(someE10);
		outlookOf(someE10, aFill({ product: flexFuel, gauge: 0.25 }), tank, contentRange(0.26, 0.34));
		expect(someE10).toEqual(copy);
	});
});
