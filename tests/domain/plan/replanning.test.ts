/** The chance inside with the plan that is best now, on tanks small enough to be reckoned by hand. */
import { describe, expect, test } from "vitest";
import { insideNow, prospectsOf } from "../../../src/domain/plan/replanning";
import { classesOf, massOf, outcomesOf } from "../../../src/domain/plan/shown";
import { aRequest, aStanding, aTarget } from "./standings";

describe("insideNow()", () => {
	const tanks = (of: (i: number) => readonly [level: number, content: number, room: number]) =>
		// On sale are pure gasoline and pure ethanol.
		aStanding(...Array.from({ length: 20 }, (_, i) => [...of(i), 0, 1] as const));
	const only = (first: number) => ({ first, second: first, amount: 0, total: Infinity });
	const inside = (standing: ReturnType<typeof tanks>, target: Record<string, unknown>) =>
		insideNow(prospectsOf(standing, aRequest({ target: aTarget(target) }), only(0)));

	test("counts a plan whose first product just fits in nineteen cases of twenty", () => {
		// Ten litres of ethanol on twenty of gasoline, then gasoline until the click: 10/30 or 10/32. Half a litre less: 9.5/32.
		const standing = tanks((i) => [20, 0, i < 2 ? 10 : 12]);
		expect(inside(standing, { window: [0.305, 0.34] })).toBeCloseTo(1, 9);
	});

	test("takes the least lean plan where none keeps the budget, and one that just keeps it", () => {
		// Two tanks of twenty hold much ethanol, and are lean whatever is poured.
		const standing = tanks((i) => (i < 2 ? [50, 1, 20] : [20, 0, 20]));
		expect(inside(standing, { window: [0.26, 0.34] })).toBeCloseTo(0.9, 9);
		const sound = tanks(() => [20, 0, 20]);
		expect(inside(sound, { window: [0.26, 0.34], budgets: { lean: 0, knock: 0.05 } })).toBeCloseTo(1, 9);
	});
});

describe("outcomesOf()", () => {
	const chanceOf = (widest: number, rubbish: boolean, sd = 0.02) => {
		const classes = classesOf(Float64Array.from({ length: 1000 }, (_, i) => 0.3 + (widest * i) / 999));
		const instrument = { sd: () => sd, rubbish, truth: () => 0 };
		return outcomesOf(classes, massOf(classes), instrument).reduce((sum, { chance }) => sum + chance, 0);
	};

	test("leaves out the rubbish that no good reading would show, and never tells more than all", () => {
		expect(chanceOf(0.2, false)).toBeCloseTo(1, 3);
		// One reading in fifty is rubbish, evenly from 0 to 1; told is what lies within four uncertainties of the truths.
		expect(Math.abs(chanceOf(0.2, true) - (0.98 + 0.02 * (0.2 + 8 * 0.02)))).toBeLessThan(0.001);
		expect(chanceOf(0.5, true, 0.5)).toBeLessThanOrEqual(1 + 1e-12);
	});
});
