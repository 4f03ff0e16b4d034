import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { chancesAlong, outcomeOf } from "../../../src/domain/plan/outcome";
import { pouringsOf } from "../../../src/domain/plan/pouring";
import { outOfReach } from "../../../src/domain/plan/reach";
import type { Planned, PlanRequest } from "../../../src/domain/plan/request";
import { roomOf } from "../../../src/domain/plan/room";
import { planFor } from "../../../src/domain/plan/search";
import type { Standing } from "../../../src/domain/plan/standing";
import { bruteForcePlan } from "./bruteForce";
import { aRequest, aStanding, aTarget, e10, flex, situations } from "./standings";

/** The plan; throws where there is none. */
function plannedFor(standing: Standing, request: PlanRequest): Planned {
	const found = planFor(standing, request);
	if (!found.ok) throw new Error(`unplannable: ${found.error.code}`);
	return found.value;
}

/** What to pump, as "product litres", the click marked by a star. */
function pumped({ plan }: Planned): string[] {
	return plan.pours.map(
		({ product, litres, toClick }) => `${product.id} ${Number(litres.toFixed(3))}${toClick ? "*" : ""}`,
	);
}

/** 10 L of E10 in the tank, 40 L of room, gasoline of 10 % and flex fuel of 70 %. */
const certain = aStanding([10, 0.1, 40, 0.1, 0.7]);

test("planFor(…) finds the very plan that trying all of them finds, or says the same of why there is none", () => {
	fc.assert(
		fc.property(situations, ({ standing, request }) => {
			const brute = bruteForcePlan(standing, request);
			const found = planFor(standing, request);
			if (typeof brute === "string" || !found.ok) {
				expect(found.ok ? "planned" : found.error.code).toBe(brute);
				return;
			}
			const { plan, verdict } = found.value;
			expect(plan.pours.map(({ product }) => product.id)).toEqual(brute.products);
			expect(plan.pours.map(({ toClick }) => toClick)).toEqual([false, brute.toClick].slice(-plan.pours.length));
			expect(verdict).toBe(brute.verdict);
			const { chances, swapped, cost } = plan;
			closeTo([...plan.pours.map(({ litres }) => litres), cost ?? -1], [...brute.litres, brute.cost ?? -1], 1e-6);
			closeTo([chances.below, chances.inside, chances.above], [brute.below, brute.inside, brute.above], 1e-9);
			closeTo(swapped ? [swapped.below, swapped.above] : [], brute.swapped ?? [], 1e-9);
		}),
		{ numRuns: 150 },
	);
});

test("The chances along a row of pourings are those of each pouring by itself", () => {
	fc.assert(
		fc.property(situations, ({ standing, request }) => {
			const rows = pouringsOf(request, roomOf(standing));
			for (const row of rows.ok ? rows.value : []) {
				const { window } = request.target;
				for (const [k, { below, above }] of chancesAlong(standing, row, window).entries()) {
					const alone = outcomeOf(standing, row[k], window);
					closeTo([below, above], [alone.below, alone.above], 1e-9);
				}
			}
		}),
		{ numRuns: 200 },
	);
});

test("A row for money may cross an edge to and fro", () => {
	// At 0.80 for the one and 1.00 for the other every fifth litre brings another one.
	const standing = aStanding([10, 0.77, 40, 0.15, 0]);
	const request = aRequest({
		offers: [
			{ product: e10, pricePerLitre: 0.8 },
			{ product: flex, pricePerLitre: 1 },
		],
		fullness: { kind: "money", amount: 20 },
		handling: { step: 1, minimum: 0 },
		target: aTarget({ window: [0, 0.275] }),
	});
	const rows = pouringsOf(request, roomOf(standing));
	const row = rows.ok ? rows.value.find(([{ first, second }]) => first === 0 && second === 1) : undefined;
	const above = chancesAlong(standing, row ?? [], request.target.window).map((chances) => chances.above);
	expect(above.join("")).toMatch(/^0+1+0+1+/);
	expect(above).toEqual(row?.map((pouring) => outcomeOf(standing, pouring, request.target.window).above));
});

function closeTo(found: readonly number[], truth: readonly number[], within: number): void {
	expect(found).toHaveLength(truth.length);
	for (const [i, value] of truth.entries()) expect(Math.abs(found[i] - value)).toBeLessThan(within);
}

describe("Every plan", () => {
	test("fits, is sold in such amounts, and adds up to what was asked", () => {
		fc.assert(
			fc.property(situations, ({ standing, request }) => {
				const found = planFor(standing, request);
				if (!found.ok) return;
				const { pours, cost } = found.value.plan;
				const { sure, median } = roomOf(standing);
				const { fullness, handling } = request;
				const total = pours.reduce((sum, { litres }) => sum + litres, 0);
				for (const [i, { litres, toClick }] of pours.entries()) {
					expect(litres).toBeGreaterThanOrEqual(handling.minimum - 1e-6);
					expect(litres).toBeGreaterThan(0);
					if (i < pours.length - 1) {
						expect(litres).toBeLessThanOrEqual(sure + 1e-6);
						expect(Math.abs(litres / handling.step - Math.round(litres / handling.step))).toBeLessThan(1e-6);
						expect(toClick).toBe(false);
					}
				}
				if (fullness.kind === "click")
					expect([total, pours.at(-1)?.toClick]).toEqual([expect.closeTo(median, 4), true]);
				if (fullness.kind === "litres") expect(total).toBeCloseTo(fullness.litres, 6);
				if (fullness.kind === "money") expect(cost).toBeLessThanOrEqual(fullness.amount + 1e-6);
			}),
			{ numRuns: 150 },
		);
	});

	test("states chances that add up to one, and a content that lies within reach of the fuels", () => {
		fc.assert(
			fc.property(situations, ({ standing, request }) => {
				const found = planFor(standing, request);
				if (!found.ok) return;
				const { chances, content, swapped } = found.value.plan;
				for (const { below, inside, above } of swapped ? [chances, swapped] : [chances]) {
					expect(below + inside + above).toBeCloseTo(1, 12);
					expect(Math.min(below, inside, above)).toBeGreaterThanOrEqual(0);
				}
				const all = [standing.content, ...standing.delivered].flatMap((column) => [...column]);
				expect(content.low).toBeLessThanOrEqual(content.median);
				expect(content.median).toBeLessThanOrEqual(content.high);
				expect(content.low).toBeGreaterThanOrEqual(Math.min(...all) - 1e-6);
				expect(content.high).toBeLessThanOrEqual(Math.max(...all) + 1e-6);
			}),
			{ numRuns: 100 },
		);
	});

	test("is, with a larger lean budget, no less likely inside than with a smaller one, up to what counts as alike", () => {
		let compared = 0;
		fc.assert(
			fc.property(situations, fc.constantFrom(0.02, 0.05, 0.2, 0.5), ({ standing, request }, lean) => {
				const budgets = { ...request.target.budgets, lean: lean / 2 };
				const strict = planFor(standing, { ...request, target: { ...request.target, budgets } });
				const lax = planFor(standing, { ...request, target: { ...request.target, budgets: { ...budgets, lean } } });
				if (!strict.ok || !lax.ok || strict.value.verdict === "lean") return;
				const before = strict.value.plan.chances.inside;
				if (before < 0.05) return;
				compared++;
				expect(lax.value.plan.chances.inside).toBeGreaterThanOrEqual(before - 0.005 - 1e-9);
			}),
			{ numRuns: 150 },
		);
		expect(compared).toBeGreaterThan(20);
	});
});

describe("planFor(…) picks", () => {
	test("amounts that hit the window, the second to the click", () => {
		const found = plannedFor(certain, aRequest());
		expect(found.verdict).toBe("inside");
		expect(found.plan.chances).toEqual({ below: 0, inside: 1, above: 0 });
		expect(found.plan.content.median).toBeGreaterThan(0.26 - 1e-6);
		expect(found.plan.content.median).toBeLessThan(0.34 + 1e-6);
		expect(found.plan.pours.at(-1)?.toClick).toBe(true);
	});

	test("the cheapest of what is as likely inside: as much of the cheaper fuel as keeps inside", () => {
		const offers = (gasoline: number, flexFuel: number) => [
			{ product: e10, pricePerLitre: gasoline },
			{ product: flex, pricePerLitre: flexFuel },
		];
		// 50 L in all: 13.5 L of flex fuel make 26.2 %, 20 L make 34 %.
		const dear = plannedFor(certain, aRequest({ offers: offers(1, 2) }));
		expect(pumped(dear)).toEqual(["e10 26.5", "flex 13.5*"]);
		expect(dear.plan.cost).toBeCloseTo(26.5 + 27, 6);
		const cheap = plannedFor(certain, aRequest({ offers: offers(2, 1) }));
		expect(pumped(cheap)).toEqual(["e10 20", "flex 20*"]);
	});

	test("one product where that costs no more and is as likely inside", () => {
		const blend = { product: { id: "blend", range: [0.3, 0.3] } };
		const standing = aStanding([10, 0.1, 40, 0.1, 0.7, 0.34]);
		const offers = [{ product: e10 }, { product: flex }, blend];
		expect(pumped(plannedFor(standing, aRequest({ offers })))).toEqual(["blend 40*"]);
		const priced = offers.map((offer) => ({ ...offer, pricePerLitre: 1 }));
		expect(pumped(plannedFor(standing, aRequest({ offers: priced })))).toEqual(["blend 40*"]);
	});

	test("one product where only one may still be poured", () => {
		expect(pumped(plannedFor(certain, aRequest({ pours: 1 })))).toHaveLength(1);
	});

	test("the order in which an early click harms least, and says what the other order would do", () => {
		// The room is anything from 20 to 40 L: what is poured first is surely all poured.
		const particles = Array.from({ length: 64 }, (_, i) => {
			const room = 20 + (20 * i) / 63;
			return [50 - room, 0.3, room, 0.1, 0.7] as [number, number, number, number, number];
		});
		const { plan } = plannedFor(aStanding(...particles), aRequest({ target: aTarget({ window: [0.27, 0.33] }) }));
		expect(plan.swapped?.inside).toBeLessThan(plan.chances.inside);
	});

	test("the mix nearest the aim where no plan has a chance to come inside", () => {
		// 30 L of pure gasoline and 10 L of room.
		const found = plannedFor(aStanding([30, 0, 10, 0.1, 0.7]), aRequest());
		expect([pumped(found), found.verdict]).toEqual([["flex 10*"], "knock"]);
	});

	test("the least likely lean, and of those the mix nearest the aim, where nothing keeps the lean budget", () => {
		const found = plannedFor(aStanding([30, 0.8, 10, 0.1, 0.7]), aRequest());
		expect([pumped(found), found.verdict]).toEqual([["e10 10*"], "lean"]);
		expect(found.plan.chances.above).toBe(1);
	});

	test("the mix nearest the aim of plans that are about as little lean, where nothing keeps the lean budget", () => {
		const alike = (share: number) => {
			const standing = aStanding([10, 0.1, 40, 0.9, 0.3], [10, 0.1, 40, 0.1, 0.3], [10, 0.1, 40, 0.1, 0.1]);
			return plannedFor(
				{ ...standing, weight: Float32Array.of(0.5, share, 0.5 - share) },
				aRequest({ pours: 1, target: aTarget({ window: [0, 0.2], aim: 0.22 }) }),
			).plan.pours.map(({ product }) => product.id);
		};
		expect(alike(0.0048)).toEqual(["flex"]);
		expect(alike(0.0052)).toEqual(["e10"]);
	});

	test("no more flex fuel than the lean budget allows, however likely inside it would be", () => {
		// One pump in four gives 83 %: only a mix that is inside even then keeps the budget.
		const standing = aStanding(
			[10, 0.1, 40, 0.1, 0.52],
			[10, 0.1, 40, 0.1, 0.52],
			[10, 0.1, 40, 0.1, 0.52],
			[10, 0.1, 40, 0.1, 0.83],
		);
		const strict = plannedFor(standing, aRequest({ target: aTarget({ window: [0.28, 0.34] }) }));
		expect([strict.plan.chances, strict.verdict]).toEqual([{ below: 0.75, inside: 0.25, above: 0 }, "knock"]);
		const budgets = { lean: 0.25, knock: 0.05 };
		const lax = plannedFor(standing, aRequest({ target: aTarget({ window: [0.28, 0.34], budgets }) }));
		expect([lax.plan.chances, lax.verdict]).toEqual([{ below: 0, inside: 0.75, above: 0.25 }, "inside"]);
	});

	test("the cheaper only of plans whose chances inside are at most half a percent apart", () => {
		const offers = [
			{ product: e10, pricePerLitre: 2 },
			{ product: flex, pricePerLitre: 1 },
		];
		const worse = (share: number) => {
			const standing = aStanding([10, 0.3, 40, 0.3, 0.3], [10, 0.3, 40, 0.3, 0.5]);
			return plannedFor(
				{ ...standing, weight: Float32Array.of(1 - share, share) },
				aRequest({ offers, pours: 1 }),
			).plan.pours.map(({ product }) => product.id);
		};
		expect(worse(0.0048)).toEqual(["flex"]);
		expect(worse(0.0052)).toEqual(["e10"]);
	});

	test("by the chance inside from one in twenty on, and by the mean mix where it is smaller everywhere", () => {
		// Gasoline is now and then of 30 %, and else further from the aim than flex fuel of 40 %.
		const seldom = (share: number) => {
			const standing = aStanding([0, 0.3, 40, 0.3, 0.4], [0, 0.3, 40, 0.1, 0.4]);
			const budgets = { lean: 1, knock: 0.05 };
			return plannedFor(
				{ ...standing, weight: Float32Array.of(share, 1 - share) },
				aRequest({ pours: 1, target: aTarget({ aim: 0.35, budgets }) }),
			).plan.pours.map(({ product }) => product.id);
		};
		expect(seldom(0.052)).toEqual(["e10"]);
		expect(seldom(0.048)).toEqual(["flex"]);
	});

	test("of mixes equally near the aim the cheapest, though it takes two products", () => {
		const standing = aStanding([10, 0.375, 40, 0.25, 0.5, 0.375]);
		const offers = [
			{ product: e10, pricePerLitre: 1 },
			{ product: flex, pricePerLitre: 1 },
			{ product: { id: "blend", range: [0.3, 0.3] }, pricePerLitre: 3 },
		];
		for (const window of [
			[0.8, 0.9],
			[0, 0.01],
		]) {
			const found = plannedFor(standing, aRequest({ offers, target: aTarget({ window, aim: 0.375 }) }));
			expect(pumped(found)).toEqual(["e10 20", "flex 20*"]);
			const alike = offers.map((offer) => ({ ...offer, pricePerLitre: 1 }));
			const simple = plannedFor(standing, aRequest({ offers: alike, target: aTarget({ window, aim: 0.375 }) }));
			expect(pumped(simple)).toEqual(["blend 40*"]);
		}
	});

	test("for money, what the rest of it buys, and never more than there is", () => {
		const offers = [
			{ product: e10, pricePerLitre: 1.7 },
			{ product: flex, pricePerLitre: 1.1 },
		];
		const { plan } = plannedFor(certain, aRequest({ offers, fullness: { kind: "money", amount: 30 } }));
		expect(plan.cost).toBeLessThanOrEqual(30);
		expect(plan.cost).toBeGreaterThan(30 - 0.5 * 1.7);
		expect(plan.pours.some(({ toClick }) => toClick)).toBe(false);
	});

	test("for more money than the tank can take, the click", () => {
		const offers = [
			{ product: e10, pricePerLitre: 1 },
			{ product: flex, pricePerLitre: 1 },
		];
		const { plan } = plannedFor(certain, aRequest({ offers, fullness: { kind: "money", amount: 500 } }));
		expect(plan.pours.at(-1)?.toClick).toBe(true);
		expect(plan.cost).toBeCloseTo(40, 4);
	});

	test("a content on the very edge of the window as inside, as the account does", () => {
		const { plan } = plannedFor(
			aStanding([10, 0.34, 40, 0.34]),
			aRequest({ offers: [{ product: flex }], target: aTarget({ window: [0.26, 0.34] }) }),
		);
		expect(plan.chances).toEqual({ below: 0, inside: 1, above: 0 });
	});

	test("something even for an empty tank that takes nothing in some particles", () => {
		const found = plannedFor(aStanding([0, 0.1, -1, 0.1, 0.7], [0, 0.1, 10, 0.1, 0.7]), aRequest());
		expect(Number.isFinite(found.plan.content.low + found.plan.content.high)).toBe(true);
	});
});

describe("planFor(…) says why there is no plan:", () => {
	const codeOf = (standing: Standing, request: PlanRequest) => {
		const found = planFor(standing, request);
		return found.ok ? null : found.error;
	};
	const cheap = [{ product: e10, pricePerLitre: 1 }];

	test("nothing is on sale", () => {
		expect(codeOf(certain, aRequest({ offers: [] }))).toEqual({ code: "nothingOnSale" });
	});

	test("less is asked for than is sold, or nothing, or no number", () => {
		const handling = { step: 0.5, minimum: 2 };
		for (const litres of [1.5, 0, -3, Number.NaN]) {
			const found = codeOf(certain, aRequest({ handling, fullness: { kind: "litres", litres } }));
			expect(found).toEqual({ code: "tooLittle", least: 2 });
		}
		expect(codeOf(certain, aRequest({ handling, fullness: { kind: "litres", litres: 2 } }))).toBeNull();
	});

	test("more is asked for than surely fits", () => {
		expect(codeOf(certain, aRequest({ fullness: { kind: "litres", litres: 40.5 } }))).toEqual({
			code: "doesNotFit",
			room: 40,
		});
		expect(codeOf(certain, aRequest({ fullness: { kind: "litres", litres: 40 } }))).toBeNull();
	});

	test("what surely fits is what fits in nineteen cases of twenty", () => {
		const rooms = Array.from({ length: 100 }, (_, i): [number, number, number, number] => [10, 0.1, i, 0.1]);
		const found = codeOf(aStanding(...rooms), aRequest({ offers: cheap, fullness: { kind: "litres", litres: 30 } }));
		expect(found).toEqual({ code: "doesNotFit", room: 4.5 });
	});

	test("the tank is full, or takes less than is sold", () => {
		expect(codeOf(aStanding([50, 0.1, -2, 0.1, 0.7]), aRequest())).toEqual({ code: "full", room: 0 });
		const little = aStanding([50, 0.1, 1.5, 0.1, 0.7]);
		expect(codeOf(little, aRequest({ handling: { step: 0.5, minimum: 2 } }))).toEqual({ code: "full", room: 1.5 });
		expect(codeOf(little, aRequest())).toBeNull();
	});

	test("a price is missing, or is none", () => {
		const fullness = { kind: "money", amount: 30 };
		for (const price of [{}, { pricePerLitre: 0 }, { pricePerLitre: Number.NaN }]) {
			const offers = [...cheap, { product: flex, ...price }];
			expect(codeOf(certain, aRequest({ fullness, offers }))).toEqual({ code: "noPrice", product: flex });
		}
	});

	test("the money does not buy the least that is sold", () => {
		const handling = { step: 0.5, minimum: 2 };
		const asked = (amount: number) => aRequest({ fullness: { kind: "money", amount }, offers: cheap, handling });
		const standing = aStanding([10, 0.1, 40, 0.1]);
		for (const amount of [1.99, 0, -5, Number.NaN]) {
			expect(codeOf(standing, asked(amount))).toEqual({ code: "tooLittleMoney" });
		}
		expect(codeOf(standing, asked(2))).toBeNull();
	});

	test("a step of nothing is no question at all", () => {
		expect(() => planFor(certain, aRequest({ handling: { step: 0, minimum: 0 } }))).toThrow(RangeError);
	});
});

describe("The reach", () => {
	test("runs from the content now to that with the strongest fuel to the click", () => {
		const { reach } = plannedFor(certain, aRequest());
		expect(reach[0]).toBeCloseTo(0.1, 6);
		expect(reach[1]).toBeCloseTo((10 * 0.1 + 40 * 0.7) / 50, 6);
	});

	test("tells that a window is out of reach, and on which side the tank stays", () => {
		const window = (low: number, high: number) => [low, high] as never;
		const found = plannedFor(aStanding([30, 0, 10, 0.1, 0.7]), aRequest());
		expect(outOfReach(found, window(0.26, 0.34))).toBe("below");
		expect(outOfReach(found, window(0.1, 0.17))).toBeNull();
		const rich = plannedFor(aStanding([30, 0.8, 10, 0.1, 0.7]), aRequest());
		expect(outOfReach(rich, window(0.26, 0.34))).toBe("above");
	});
});
