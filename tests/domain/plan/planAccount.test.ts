import { describe, expect, test } from "vitest";
import { absorb, initialBelief } from "../../../src/domain/estimator/absorb";
import type { Belief } from "../../../src/domain/estimator/belief";
import { estimateOf } from "../../../src/domain/estimator/estimate";
import type { FillEvent, TankEvent } from "../../../src/domain/event";
import { planned, plannedOn } from "../../../src/domain/plan/plan";
import type { Plan, Planned, PlanRequest, Visit } from "../../../src/domain/plan/request";
import { seedsFor, uniform } from "../../../src/domain/random";
import { aFill, aPumpReading, aStart } from "../../helpers/logs";
import { aRequest, aStanding, aTarget, e10, flex } from "./standings";

const tank = { capacityL: 58 } as never;

/** An account past its youth, which the estimator keeps on its small sample. */
function believed(...events: TankEvent[]): Belief {
	const size = 2 ** 13;
	const young = events.reduce(
		(belief, event) => absorb(belief, event, tank, size).belief,
		initialBelief("car", tank, size),
	);
	return { ...young, age: 20 };
}

const quarterE10 = believed(aStart({ contents: { range: [0.09, 0.1] }, gauge: 0.25 }));

/** Draws plans to the lean limit. */
const cheapFlex = [
	{ product: e10, pricePerLitre: 2 },
	{ product: flex, pricePerLitre: 1 },
];

function aVisit(fields: Record<string, unknown> = {}): Visit {
	return { stop: "stop", at: "2026-06-02T17:30:00+02:00", place: "north", gauge: 0.2, ...fields } as never;
}

function plannedAt(before: Belief, visit: Visit, request: PlanRequest, ids?: readonly string[]): Planned {
	const found = planned(before, visit, request, tank, ids);
	if (!found.ok) throw new Error(`unplannable: ${found.error.code}`);
	return found.value;
}

/** What the account shows once the plan is saved as it was given. */
function saved(before: Belief, visit: Visit, { plan }: Planned, ids: readonly string[], target = aTarget()) {
	const { gauge, ...shared } = visit;
	const belief = plan.pours.reduce((reached, { product, litres }, i) => {
		const at = i === 0 ? visit.at : new Date(Date.parse(visit.at) + 1000).toISOString();
		const fill = { kind: "fill", ...shared, id: ids[i], at, product, litres, ...(i === 0 && { gauge }) };
		return absorb(reached, fill as FillEvent, tank).belief;
	}, before);
	return estimateOf(belief, target.window as never);
}

describe("planned(…)", () => {
	const forty = aRequest({ fullness: { kind: "litres", litres: 40 } });

	test("of fixed amounts states just what the account will show once the fills are saved", () => {
		const visit = aVisit();
		const found = plannedAt(quarterE10, visit, forty, ["one", "two"]);
		const { median, low, high, below, above } = saved(quarterE10, visit, found, ["one", "two"]);
		expect(found.plan.pours).toHaveLength(2);
		expect(found.plan.chances).toEqual({ below, inside: expect.closeTo(1 - below! - above!, 12), above });
		expect(found.plan.content).toEqual({ median, low, high });
	});

	test("of fixed amounts never breaks the lean budget in the account, whatever the ids", () => {
		const seeds = seedsFor("never lean");
		const u = (low: number, high: number) => low + (high - low) * uniform(seeds);
		let binding = 0;
		for (let n = 0; n < 6; n++) {
			const history = [
				aStart({ contents: { range: [0, 0.1] }, gauge: u(0.1, 0.5) }),
				aFill({ id: `${n} before`, stop: "before", product: flex, litres: u(5, 20), place: "north" }),
				...(n % 3 === 0 ? [aPumpReading({ place: "north", product: flex, value: u(0.55, 0.8), sd: 0.02 })] : []),
			];
			const before = believed(...history);
			const visit = aVisit({ stop: `stop ${n}`, at: "2026-06-08T17:30:00+02:00", gauge: u(0.05, 0.3) });
			const budgets = { lean: [0.01, 0.05, 0.1][n % 3], knock: 0.05 };
			const request = aRequest({
				fullness: { kind: "litres", litres: Math.round(u(20, 35)) },
				target: aTarget({ budgets }),
				offers: cheapFlex,
			});
			const ids = [`${n} one`, `${n} two`];
			const found = plannedAt(before, visit, request, ids);
			const { above } = saved(before, visit, found, ids);
			// Where the content is little known the account takes more particles than a plan does.
			expect(Math.abs(found.plan.chances.above - above!)).toBeLessThan(0.002);
			if (found.verdict !== "lean") expect(above).toBeLessThanOrEqual(budgets.lean);
			if (above! > 0.5 * budgets.lean && above! <= budgets.lean) binding++;
		}
		expect(binding).toBeGreaterThan(2);
	});

	test("to the click says how much will likely go in, and leaves the amount to the nozzle", () => {
		const { plan } = plannedAt(quarterE10, aVisit(), aRequest());
		const last = plan.pours.at(-1);
		expect(last?.toClick).toBe(true);
		// A fifth of 58 L on the gauge.
		expect(plan.pours.reduce((sum, { litres }) => sum + litres, 0)).toBeGreaterThan(40);
		expect(plan.pours.reduce((sum, { litres }) => sum + litres, 0)).toBeLessThan(52);
		expect(plan.chances.above).toBeLessThanOrEqual(0.05);
	});

	test("goes on from what was poured at this stop", () => {
		const visit = aVisit();
		const fill = aFill({ ...visit, id: "poured", product: flex, litres: 14 });
		const { plan } = plannedAt(absorb(quarterE10, fill, tank).belief, visit, aRequest({ pours: 1 }));
		expect(plan.pours.map(({ product }) => product.id)).toEqual(["e10"]);
		expect(plan.content.median).toBeGreaterThan(0.2);
	});

	test("says the same at every asking, and changes nothing in the belief", () => {
		const copy = JSON.stringify(quarterE10);
		expect(planned(quarterE10, aVisit(), forty, tank)).toEqual(planned(quarterE10, aVisit(), forty, tank));
		expect(JSON.stringify(quarterE10) === copy).toBe(true);
	});

	test("says why there is no plan", () => {
		const error = (request: PlanRequest) => {
			const found = planned(quarterE10, aVisit(), request, tank);
			return found.ok ? null : found.error.code;
		};
		expect(error(aRequest({ offers: [] }))).toBe("nothingOnSale");
		expect(error(aRequest({ fullness: { kind: "litres", litres: 58 } }))).toBe("doesNotFit");
	});
});

describe("plannedOn(…)", () => {
	/** Pumps that give flex fuel of 60 and of 80 %, so many particles of each: no mix is inside with both. */
	const pumps = (weaker: number, stronger: number) =>
		aStanding(
			...[...Array(weaker).fill(0.6), ...Array(stronger).fill(0.8)].map(
				(content): [number, number, number, number, number] => [10, 0.1, 40, 0.1, content],
			),
		);
	const budgets = { lean: 0.35, knock: 0.05 };
	const request = aRequest({ target: aTarget({ window: [0.29, 0.31], budgets }) });
	const on = (samples: Parameters<typeof plannedOn>[0], request: PlanRequest) => {
		const found = plannedOn(samples, request);
		if (!found.ok) throw new Error(found.error.code);
		return found.value.planned;
	};

	test("takes no plan that only the small sample thinks is within the lean budget", () => {
		const few = pumps(7, 3);
		expect(on({ few, many: few }, request).plan.chances.above).toBeCloseTo(0.3, 9);
		const checked = on({ few, many: pumps(11, 9) }, request);
		expect(checked.plan.chances).toEqual({ below: 0.55, inside: 0.45, above: 0 });
		expect(checked.verdict).toBe("knock");
	});

	test("searches on where the account says more than the samples", () => {
		const few = pumps(7, 3);
		const asked: number[] = [];
		const doubled = ({ chances, content }: Plan) => {
			asked.push(chances.above);
			return { ...content, below: chances.below - 0.1, above: chances.above + 0.1 } as never;
		};
		const fixed = { ...request, fullness: { kind: "litres", litres: 40 } } as never;
		const found = plannedOn({ few, many: few }, fixed, doubled);
		expect(asked).toEqual([expect.closeTo(0.3, 9), 0]);
		expect(found.ok && found.value.planned.plan.chances.above).toBeCloseTo(0.1, 9);
		// To the click nobody knows yet what the account will be told.
		plannedOn({ few, many: few }, request, doubled);
		expect(asked).toHaveLength(2);
	});

	test("gives up after a few searches where the account always says a little too much, and says so", () => {
		let asked = 0;
		const few = pumps(1, 0);
		const fixed = { ...request, fullness: { kind: "litres", litres: 40 } } as never;
		const found = plannedOn({ few, many: few }, fixed, ({ content }) => {
			asked++;
			return { ...content, below: 0.6, above: 0.3501 } as never;
		});
		expect(asked).toBeLessThanOrEqual(5);
		expect(found.ok && found.value.planned.verdict).toBe("lean");
	});

	test("ends with the plan least likely lean, and says so, where the large sample accepts none", () => {
		// The few know a tank of 10 %, the many one of 90 % that nothing can mend.
		const samples = { few: aStanding([40, 0.1, 10, 0.1, 0.7]), many: aStanding([40, 0.9, 10, 0.1, 0.7]) };
		const found = on(samples, aRequest());
		expect([found.verdict, found.plan.chances.above]).toEqual(["lean", 1]);
	});
});
