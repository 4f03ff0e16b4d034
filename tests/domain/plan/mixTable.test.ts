import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { absorb, initialBelief } from "../../../src/domain/estimator/absorb";
import { type MixGrid, type MixTarget, mixTableOf } from "../../../src/domain/plan/mixTable";
import { type Standing, standingAt } from "../../../src/domain/plan/standing";
import { aStart } from "../../helpers/logs";
import { aStanding, e10, flex, situations } from "./standings";

const grid = (first: readonly number[], second: readonly number[]) => ({ first, second }) as unknown as MixGrid;
const target: MixTarget = { window: [0.26, 0.34] as never, budgets: { lean: 0.05, knock: 0.05 } };

describe("The table of mixes", () => {
	/** 10 L of 10 % in the tank, room for 40; the nozzles give 10 and 70 %. */
	const known = aStanding([10, 0.1, 40, 0.1, 0.7]);

	test("tells of one tank what a pocket reckoner would", () => {
		const { rows } = mixTableOf(known, grid([0, 10, 20], [0, 10, 20]), target);
		const medians = rows.map(({ cells }) => cells.map(({ mix }) => mix?.median ?? Number.NaN));
		const expected = [
			[0.1, 8 / 20, 15 / 30],
			[0.1, 9 / 30, 16 / 40],
			[0.1, 10 / 40, 17 / 50],
		];
		for (const [i, row] of expected.entries())
			for (const [k, content] of row.entries()) expect(medians[i][k]).toBeCloseTo(content, 6);
		expect(rows[1].cells[1].mix?.judged).toEqual({ chances: { below: 0, inside: 1, above: 0 }, verdict: "inside" });
		expect(rows[0].cells[1].mix?.judged?.verdict).toBe("lean");
		expect(rows[2].cells[1].mix?.judged?.verdict).toBe("knock");
		// 34 % lies on the window's edge, and so inside.
		expect(rows[2].cells[2].mix?.judged?.verdict).toBe("inside");
	});

	test("fills up to the click with the second product", () => {
		const { rows } = mixTableOf(known, grid([0, 26, 40], [0]), target);
		expect(rows.map(({ toClick }) => toClick.litres)).toEqual([40, 14, 0]);
		expect(rows.map(({ toClick }) => toClick.fits)).toEqual([1, 1, 1]);
		const contents = [29 / 50, 13.4 / 50, 5 / 50];
		for (const [i, content] of contents.entries()) expect(rows[i].toClick.mix?.median).toBeCloseTo(content, 6);
	});

	test("says what does not fit, and how surely the rest does", () => {
		const standing = aStanding([10, 0.1, 40, 0.1, 0.7], [20, 0.1, 30, 0.1, 0.7], [25, 0.1, 25, 0.1, 0.7]);
		const [{ cells, toClick }] = mixTableOf(standing, grid([10], [10, 16, 25, 31]), target).rows;
		expect(cells.map(({ fits }) => fits)).toEqual([1, 2 / 3, 1 / 3, 0].map((share) => expect.closeTo(share, 6)));
		expect(cells[3].mix).toBeNull();
		// Only the first tank takes 35 L.
		expect(cells[2].mix?.low).toBeCloseTo((1 + 1 + 17.5) / 45, 6);
		expect(cells[2].mix?.high).toBeCloseTo((1 + 1 + 17.5) / 45, 6);
		expect(toClick).toMatchObject({ fits: 1, litres: 20 });
		const [over] = mixTableOf(standing, grid([35], [0]), target).rows;
		expect(over.toClick.fits).toBeCloseTo(1 / 3, 6);
	});

	test("leaves a tank of nothing as it was", () => {
		const [{ cells }] = mixTableOf(aStanding([0, 0.2, 50, 0.1, 0.7]), grid([0], [0]), null).rows;
		expect(cells[0].mix).toEqual({
			median: Math.fround(0.2),
			low: Math.fround(0.2),
			high: Math.fround(0.2),
			judged: null,
		});
	});

	test("puts too much before too little where both are too likely", () => {
		const torn = aStanding([10, 0, 40, 0, 0.5], [10, 0.9, 40, 0, 0.5]);
		const [{ cells }] = mixTableOf(torn, grid([0], [5]), target).rows;
		expect(cells[0].mix?.judged).toEqual({ chances: { below: 0.5, inside: 0, above: 0.5 }, verdict: "lean" });
	});

	test("takes two offers", () => {
		expect(() => mixTableOf(aStanding([10, 0.1, 40, 0.1]), grid([0], [0]), null)).toThrow(/two offers/);
	});
});

describe("Every table", () => {
	const amounts = fc.uniqueArray(fc.double({ min: 0, max: 60, noNaN: true }), { minLength: 1, maxLength: 3 });
	const grids = fc.tuple(amounts, amounts).map(([first, second]) => {
		const ascending = (list: readonly number[]) => [...list].sort((a, b) => a - b);
		return grid(ascending(first), ascending(second));
	});
	const twoOffers = situations.filter(({ standing }) => standing.delivered.length >= 2);

	test("says of each cell what weighing its particles one by one says", () => {
		fc.assert(
			fc.property(twoOffers, grids, ({ standing }, mixes) => {
				const { rows } = mixTableOf(standing, mixes, target);
				for (const { first, cells, toClick } of rows) {
					for (const [k, cell] of cells.entries()) expectBrute(standing, first, mixes.second[k], cell);
					expectBrute(standing, first, null, toClick);
				}
			}),
			// Seeded: amounts that fit to the last bit are judged otherwise by either sum once in some hundred runs.
			{ numRuns: 60, seed: 1 },
		);
	});

	test("fits the less, the more there is of either product", () => {
		fc.assert(
			fc.property(twoOffers, grids, ({ standing }, mixes) => {
				const { rows } = mixTableOf(standing, mixes, null);
				const fits = rows.map(({ cells }) => cells.map((cell) => cell.fits));
				for (const [i, row] of fits.entries())
					for (const [k, fit] of row.entries()) {
						expect(fit).toBeLessThanOrEqual(fits[i - 1]?.[k] ?? 1);
						expect(fit).toBeLessThanOrEqual(row[k - 1] ?? 1);
					}
			}),
			{ numRuns: 40 },
		);
	});
});

test("A mix of the table is what the account says once it is poured", () => {
	const tank = { capacityL: 58 } as never;
	const size = 2 ** 14;
	const offers = [{ product: flex }, { product: e10 }];
	const before = absorb(initialBelief("car", tank, size), aStart({ gauge: 0.4 }), tank, size).belief;
	const visit = { stop: "stop", at: "2026-01-09T10:00:00Z", gauge: 0.25 } as never;
	const standing = standingAt(before, visit, offers, tank, size);
	const [{ cells }] = mixTableOf(standing, grid([12], [20]), target).rows;
	const fill = { ...(visit as object), kind: "fill" };
	const poured = [
		{ ...fill, id: "a", product: flex, litres: 12 },
		{ ...fill, id: "b", product: e10, litres: 20 },
	].reduce((belief, event) => absorb(belief, event as never, tank, size).belief, before);
	const content = Array.from(poured.content.keys()).sort((a, b) => poured.content[a] - poured.content[b]);
	const at = (share: number) => {
		let reached = 0;
		const all = poured.weight.reduce((sum, w) => sum + w, 0);
		for (const i of content) {
			reached += poured.weight[i];
			if (reached >= share * all) return poured.content[i];
		}
		return Number.NaN;
	};
	expect(cells[0].mix?.low).toBeCloseTo(at(0.05), 2);
	expect(cells[0].mix?.median).toBeCloseTo(at(0.5), 2);
	expect(cells[0].mix?.high).toBeCloseTo(at(0.95), 2);
});

/** Holds a cell against sums over particles, in plain numbers. */
function expectBrute(
	{ weight, level, content, room, delivered }: Standing,
	first: number,
	/** Null: to the click. */
	second: number | null,
	cell: { readonly fits: number; readonly mix: ReturnType<typeof mixTableOf>["rows"][number]["toClick"]["mix"] },
): void {
	const all = weight.reduce((sum, w) => sum + w, 0);
	const fitting = Array.from(weight.keys()).filter((i) => first + (second ?? 0) <= Math.max(0, room[i]));
	const share = fitting.reduce((sum, i) => sum + weight[i], 0);
	expect(cell.fits).toBeCloseTo(share / all, 6);
	if (cell.fits < 0.05) {
		expect(cell.mix).toBeNull();
		return;
	}
	const mixes = fitting.map((i) => {
		const b = second ?? Math.max(0, room[i]) - first;
		const ethanol = level[i] * content[i] + first * delivered[0][i] + b * delivered[1][i];
		const volume = level[i] + first + b;
		return { w: weight[i], e: volume > 0 ? ethanol / volume : content[i] };
	});
	const chance = (of: (e: number) => boolean) => mixes.reduce((sum, { w, e }) => (of(e) ? sum + w : sum), 0) / share;
	const judged = cell.mix?.judged;
	const [surelyBelow, maybeBelow] = [0.26 - 2e-6, 0.26].map((edge) => chance((e) => e < edge));
	const [surelyAbove, maybeAbove] = [0.34 + 2e-6, 0.34].map((edge) => chance((e) => e > edge));
	expect(judged?.chances.below).toBeGreaterThanOrEqual(surelyBelow - 1e-6);
	expect(judged?.chances.below).toBeLessThanOrEqual(maybeBelow + 1e-6);
	expect(judged?.chances.above).toBeGreaterThanOrEqual(surelyAbove - 1e-6);
	expect(judged?.chances.above).toBeLessThanOrEqual(maybeAbove + 1e-6);
	const { below = 0, inside = 0, above = 0 } = judged?.chances ?? {};
	expect(below + inside + above).toBeCloseTo(1, 9);
	// Quantiles are interpolated: they lie between the particles on either side of the mark.
	mixes.sort((a, b) => a.e - b.e);
	for (const [mark, found] of [
		[0.05, cell.mix?.low],
		[0.5, cell.mix?.median],
		[0.95, cell.mix?.high],
	] as const) {
		const under = mixes.filter(({ e }) => e < (found ?? 0) - 1e-6).reduce((sum, { w }) => sum + w, 0);
		const upTo = mixes.filter(({ e }) => e <= (found ?? 0) + 1e-6).reduce((sum, { w }) => sum + w, 0);
		const heaviest = Math.max(...mixes.map(({ w }) => w));
		expect(under - heaviest).toBeLessThanOrEqual(mark * share + 1e-6);
		expect(upTo + heaviest).toBeGreaterThanOrEqual(mark * share - 1e-6);
	}
}
