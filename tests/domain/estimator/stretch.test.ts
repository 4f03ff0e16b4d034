import { describe, expect, test } from "vitest";
import { absorb, initialBelief } from "../../../src/domain/estimator/absorb";
import { outlookOf } from "../../../src/domain/estimator/outlook";
import { insideStretch, leanStretch, type Outlook } from "../../../src/domain/estimator/stretch";
import { aFill, aStart } from "../../helpers/logs";

const usual = { lean: 0.05, knock: 0.05 };
const made = (above: number[], below: number[]) =>
	({ step: 2, fits: above.map(() => 1), above, below }) as unknown as Outlook;

describe("insideStretch(…) and leanStretch(…)", () => {
	test("give the amounts between which both chances keep to budget, and those that are too lean", () => {
		const outlook = made([0, 0, 0.01, 0.05, 0.2, 0.9], [1, 0.5, 0.05, 0.01, 0, 0]);
		expect(insideStretch(outlook, usual)).toEqual({ from: 4, to: 6 });
		expect(leanStretch(outlook, usual)).toEqual({ from: 8, to: 10 });
	});

	test("are null where no amount is inside, and where none is too lean", () => {
		expect(insideStretch(made([0, 0.1], [1, 0.5]), usual)).toBeNull();
		expect(leanStretch(made([0, 0.05], [1, 0.5]), usual)).toBeNull();
		expect(insideStretch(made([0, 0.01], [0, 0]), usual)).toEqual({ from: 0, to: 2 });
	});

	test("begin at nothing poured where the tank is inside, or too lean, already", () => {
		expect(insideStretch(made([0, 0.01], [0, 0.2]), usual)).toEqual({ from: 0, to: 0 });
		expect(leanStretch(made([0.9, 0.5, 0.04], [0, 0, 0]), usual)).toEqual({ from: 0, to: 2 });
	});

	test("take the first of several insides", () => {
		expect(insideStretch(made([0, 0, 0.1, 0, 0], [1, 0, 0, 0, 0]), usual)).toEqual({ from: 2, to: 2 });
	});

	test("agree on real outlooks: no chance inside is over budget, and nothing too lean is inside", () => {
		const tank = { capacityL: 58 } as never;
		const start = aStart({ contents: { range: [0.09, 0.1] }, gauge: 0.3 });
		const { belief } = absorb(initialBelief("car", tank), start, tank);
		const pour = aFill({ gauge: 0.25 });
		const found = (
			[
				[0.2, 0.5],
				[0.26, 0.34],
				[0.28, 0.32],
				[0.4, 0.7],
			] as const
		).map((window) => {
			const outlook = outlookOf(belief, pour, tank, window as never);
			for (const budgets of [usual, { lean: 0.2, knock: 0.3 }]) {
				const inside = insideStretch(outlook, budgets);
				const lean = leanStretch(outlook, budgets);
				if (!inside) continue;
				for (let k = Math.round(inside.from / outlook.step); k <= Math.round(inside.to / outlook.step); k++) {
					expect(outlook.above[k]).toBeLessThanOrEqual(budgets.lean);
					expect(outlook.below[k]).toBeLessThanOrEqual(budgets.knock);
				}
				if (lean) expect(lean.from > inside.to || lean.to < inside.from).toBe(true);
			}
			return insideStretch(outlook, usual) !== null;
		});
		// Flex fuel of 51 to 83 % can be aimed at twenty to fifty percent, not at four points.
		expect(found[0]).toBe(true);
		expect(found[2]).toBe(false);
	});
});
