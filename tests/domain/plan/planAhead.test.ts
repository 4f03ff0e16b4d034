import { describe, expect, test } from "vitest";
import { absorb, initialBelief } from "../../../src/domain/estimator/absorb";
import type { Belief } from "../../../src/domain/estimator/belief";
import { burnFirst, stages } from "../../../src/domain/plan/ahead";
import { planned } from "../../../src/domain/plan/plan";
import type { PlanRequest, Visit } from "../../../src/domain/plan/request";
import { aStart } from "../../helpers/logs";
import { aRequest, aTarget, e10, flex } from "./standings";

const tank = { capacityL: 60, gaugeSd: 0.01, clickSd: 0.005 } as never;

/** A car on a known content, past its youth; the pumps sell just what they say. */
function holding(content: number): Belief {
	const start = aStart({ contents: { value: content, sd: 0.002 }, gauge: 1 });
	return { ...absorb(initialBelief("car", tank, 2 ** 13), start, tank, 2 ** 13).belief, age: 20 };
}

function at(gauge: number): Visit {
	return { stop: "stop", at: "2026-06-02T17:30:00+02:00", place: "north", gauge } as never;
}

const gasoline = { product: { ...(e10 as object), range: [0.1, 0.1] } };
const flexFuel = { product: { ...(flex as object), range: [0.7, 0.74] } };
const both = (fields = {}): PlanRequest => aRequest({ offers: [gasoline, flexFuel], ...fields });
const drive = { gauge: 0.25, days: 7 } as never;

function verdictAt(before: Belief, gauge: number, request: PlanRequest) {
	const found = planned(before, at(gauge), request, tank);
	return found.ok ? found.value.verdict : found.error.code;
}

describe("burnFirst(…)", () => {
	test("is nothing where a plan exists as it is", () => {
		expect(verdictAt(holding(0.3), 0.5, both())).toBe("inside");
		expect(burnFirst(holding(0.3), at(0.5), both(), tank)).toBe(0);
	});

	test("is the least that brings a plan inside, a step less being too little", () => {
		const request = both();
		const litres = burnFirst(holding(0.1), at(0.9), request, tank);
		expect(verdictAt(holding(0.1), 0.9, request)).toBe("knock");
		// 60 L at 29 % from 10 % and 72 % need 18.4 L of flex fuel, so 12.4 L more room than the 6 L there are.
		expect(litres).toBeGreaterThan(10);
		expect(litres).toBeLessThan(18);
		expect(verdictAt(holding(0.1), 0.9 - (litres ?? 0) / 60, request)).toBe("inside");
		expect(verdictAt(holding(0.1), 0.9 - ((litres ?? 0) - 3) / 60, request)).toBe("knock");
	});

	test("goes down from a blend that is too rich", () => {
		const litres = burnFirst(holding(0.6), at(0.9), both(), tank);
		// 60 L at 33 % from 60 % and 10 % leave 27.6 L.
		expect(litres).toBeGreaterThan(24);
		expect(litres).toBeLessThan(34);
	});

	test("makes room for an amount that does not fit yet", () => {
		const request = both({ fullness: { kind: "litres", litres: 30 } });
		expect(verdictAt(holding(0.3), 0.7, request)).toBe("doesNotFit");
		const litres = burnFirst(holding(0.3), at(0.7), request, tank);
		expect(litres).toBeGreaterThan(11);
		expect(litres).toBeLessThan(17);
	});

	test("is nothing at all where even a nearly empty tank does not help", () => {
		expect(burnFirst(holding(0.1), at(0.5), both({ offers: [gasoline] }), tank)).toBeNull();
	});

	test("counts on no more than is surely in the tank", () => {
		// Nobody looked at the gauge: the tank may be empty already.
		const { gauge: _unread, ...unread } = at(0);
		expect(burnFirst(holding(0.1), unread as Visit, both(), tank)).toBeNull();
	});
});

describe("stages(…)", () => {
	const staged = (before: Belief, gauge: number, request: PlanRequest) => {
		const found = stages(before, at(gauge), request, tank, drive);
		if (!found.ok) throw new Error(found.error.code);
		return found.value;
	};

	test("is one stop where one will do, and the very plan that planned(…) gives", () => {
		const found = staged(holding(0.3), 0.3, both());
		expect(found).toHaveLength(1);
		const single = planned(holding(0.3), at(0.3), both(), tank);
		expect(single.ok && single.value).toEqual(found[0].planned);
	});

	test("brings a tank of E10 to 30 % in small rooms, never too lean on the way", () => {
		const found = staged(holding(0.1), 0.85, both());
		expect(found.length).toBeGreaterThan(1);
		expect(found.map(({ planned }) => planned.verdict)).toEqual([...found.slice(1).map(() => "knock"), "inside"]);
		for (const { planned } of found) expect(planned.plan.chances.above).toBeLessThanOrEqual(0.05);
		const medians = found.map(({ planned }) => planned.plan.content.median);
		expect(medians).toEqual([...medians].sort((a, b) => a - b));
	});

	test("goes on from what the stop before left, at the level that the car is driven down to", () => {
		const [first, second] = staged(holding(0.1), 0.85, both());
		expect(second.visit).toEqual({
			stop: "stop ahead 1",
			at: "2026-06-09T15:30:00.000Z",
			place: "north",
			gauge: 0.25,
		});
		const poured = second.planned.plan.pours.reduce((sum, { litres }) => sum + litres, 0);
		expect(poured).toBeGreaterThan(40);
		expect(poured).toBeLessThan(50);
		// Without pouring it would still hold what the first stop left.
		const { reach } = second.planned;
		expect(Math.min(...reach.map((end) => Math.abs(end - first.planned.plan.content.median)))).toBeGreaterThan(0.001);
		expect(reach[0]).toBeLessThan(first.planned.plan.content.median);
	});

	test("brings a blend back to gasoline, stop by stop", () => {
		const target = aTarget({ window: [0, 0.12], aim: 0.1 });
		const found = staged(holding(0.3), 0.25, both({ target }));
		expect(found.length).toBeGreaterThan(1);
		expect(found.at(-1)?.planned.verdict).toBe("inside");
		for (const { planned } of found) expect(planned.plan.pours.map(({ product }) => product.id)).toEqual(["e10"]);
	});

	test("ends after five stops that do not get there", () => {
		const found = staged(holding(0.1), 0.5, both({ offers: [gasoline] }));
		expect(found.map(({ planned }) => planned.verdict)).toEqual(Array(5).fill("knock"));
	});

	test("says why not even the first stop can be planned", () => {
		const found = stages(holding(0.1), at(0.5), both({ offers: [] }), tank, drive);
		expect(found).toEqual({ ok: false, error: { code: "nothingOnSale" } });
	});
});
