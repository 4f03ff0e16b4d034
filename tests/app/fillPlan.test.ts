import { describe, expect, test } from "vitest";
import { type FillDraft, fillsOf, newDraft, readDraft, readFreshDraft, stopOf, visitOf } from "../../src/app/fillDraft";
import { asPlanned, backTo, guidedBy, restAsk, restOf, withPlan, withRest } from "../../src/app/fillPlan";
import type { Fullness, Plan } from "../../src/domain/plan/request";
import type { PlanAnswer, PlanAsk } from "../../src/keeper/view";
import { aCar } from "../helpers/logs";

const { tank } = aCar();
const flex = { id: "flex-51-83", range: [0.51, 0.83] } as never;
const e10 = { id: "gasoline-e10", range: [0.09, 0.1] } as never;
const e15 = { id: "gasoline-e15", range: [0.1, 0.15] } as never;
const now = Date.parse("2026-06-01T12:00:00Z");
const at = "2026-06-01T12:00:00+00:00";
let ids = 0;
const newId = () => `id ${++ids}`;

const plan = {
	pours: [
		{ product: flex, litres: 8, toClick: false },
		{ product: e10, litres: 21.04, toClick: true },
	],
	chances: { below: 0.03, inside: 0.93, above: 0.04 },
	content: { median: 0.3, low: 0.27, high: 0.33 },
	cost: null,
	swapped: null,
} as unknown as Plan;

function begun(fullness: Fullness = { kind: "click" }, before: Partial<FillDraft> = {}): FillDraft {
	const draft = { ...newDraft(newId, e10, "Harbour", "L"), ...before };
	const ask = {
		visit: visitOf(draft, at),
		poured: fillsOf(draft, tank, "L", now),
		instead: [],
		offers: [
			{ product: flex, pricePerLitre: 0.9 },
			{ product: e10, pricePerLitre: 1.6 },
			{ product: e15, pricePerLitre: 1.5 },
		],
		fullness,
		targetCalibration: "e30",
		handling: { step: 0.5, minimum: 0 },
		ids: ["one", "two"],
	} as unknown as PlanAsk;
	return withPlan(draft, ask, plan, now);
}
const typed = (draft: FillDraft, amount: string): FillDraft => {
	const open = draft.pours[draft.pours.length - 1];
	return { ...draft, pours: [...draft.pours.slice(0, -1), { ...open, typed: amount }] };
};
const guide = (draft: FillDraft) => {
	const guided = guidedBy(draft);
	if (!guided) throw new Error("no guide");
	return guided;
};
const restAfter = (draft: FillDraft) => restAsk(guide(draft), fillsOf(draft, tank, "L", now), [], visitOf(draft, at));
const answer = (litres: number): PlanAnswer =>
	({ planned: { ok: true, value: { plan: { ...plan, pours: [{ product: e10, litres, toClick: true }] } } } }) as never;

test("a plan opens its first pour under the id it was reckoned with, after what was poured already", () => {
	expect(begun().pours).toEqual([{ id: "one", product: flex, typed: "", toClick: false, price: "" }]);
	const pours = [{ id: "before", product: e15, typed: "3", toClick: false, price: "" }];
	const later = begun({ kind: "click" }, { pours });
	expect(later.pours.map(({ id }) => id)).toEqual(["before", "one"]);
	expect(guide(later)).toMatchObject({ step: 0, pour: { litres: 8 }, next: { litres: 21.04 } });
});

test("a price is taken over only where the plan was made for a sum of money", () => {
	expect(begun({ kind: "money", amount: 40 }).pours[0].price).toBe("0.9");
	expect(begun({ kind: "litres", litres: 29 as never }).pours[0].price).toBe("");
});

test("the preview of a plan shows where all of it leads, what is typed in place of what was planned", () => {
	const amounts = (draft: FillDraft) => stopOf(asPlanned(draft), tank, "L", now).fills.map(({ litres }) => litres);
	expect(amounts(begun())).toEqual([8, 21]);
	expect(amounts(typed(begun(), "9.5"))).toEqual([9.5, 21]);
	const fills = stopOf(asPlanned(begun()), tank, "L", now).fills;
	expect(fills.map(({ id, toClick }) => [id, toClick])).toEqual([
		["one", undefined],
		["two", true],
	]);
	expect(asPlanned({ ...begun(), plan: null }).pours).toHaveLength(1);
});

describe("restAsk()", () => {
	test("asks for the other products, one pour, and with what was poured", () => {
		const ask = restAfter(typed(begun(), "9.5")) as PlanAsk;
		expect(ask.offers.map(({ product }) => product)).toEqual([e10, e15]);
		expect(ask).toMatchObject({ ids: ["two"], targetCalibration: "e30", fullness: { kind: "click" } });
		expect(ask.poured).toMatchObject([{ id: "one", litres: 9.5, product: flex }]);
	});
	test("asks for what is left of an amount or of the money", () => {
		const amount = restAfter(typed(begun({ kind: "litres", litres: 29 as never }), "9.5")) as PlanAsk;
		expect(amount.fullness).toEqual({ kind: "litres", litres: 19.5 });
		const money = restAfter(typed(begun({ kind: "money", amount: 40 }), "10")) as PlanAsk;
		expect(money.fullness).toEqual({ kind: "money", amount: 31 });
	});
	test("reckons with the price that was typed at the pump", () => {
		const draft = typed(begun({ kind: "money", amount: 40 }), "10");
		const pours = draft.pours.map((pour) => ({ ...pour, price: "1" }));
		expect((restAfter({ ...draft, pours }) as PlanAsk).fullness).toEqual({ kind: "money", amount: 30 });
	});
	test("asks nothing where the first pour took it all", () => {
		const usedUp = { kind: "none", why: { code: "usedUp" } };
		expect(restAfter(typed(begun({ kind: "litres", litres: 9.5 as never }), "9.5"))).toEqual(usedUp);
		expect(restAfter(typed(begun({ kind: "money", amount: 8 }), "9.5"))).toEqual(usedUp);
	});
});

test("a click before the second pour ends the plan: the tank is full", () => {
	const draft = typed(begun(), "6");
	const clicked = { ...draft, pours: draft.pours.map((pour) => ({ ...pour, toClick: true })) };
	expect(guide(clicked)).toMatchObject({ step: 0, next: null, clicked: true });
	expect(asPlanned(clicked)).toEqual(clicked);
	expect(guide(draft)).toMatchObject({ clicked: false });
});

describe("the second pour", () => {
	const first = typed(begun(), "9.5");
	test("is that of the plan made anew, and goes to the click where that says so", () => {
		const second = withRest(first, guide(first), restOf(answer(19.6), { step: 0.5, minimum: 0 } as never));
		expect(second.pours[1]).toMatchObject({ id: "two", product: e10, toClick: true, typed: "" });
		expect(guide(second)).toMatchObject({ step: 1, pour: { litres: 19.6 }, next: null });
	});
	test("stays as it was planned where no answer came", () => {
		const second = withRest(first, guide(first), restOf(null, { step: 0.5, minimum: 0 } as never));
		expect(guide(second)).toMatchObject({ step: 1, pour: { product: e10, litres: 21.04 } });
	});
	test("is none where nothing more fits, or less than a hand can hit", () => {
		for (const nothing of [answer(0.2), { planned: { ok: false, error: { code: "full", room: 0.2 } } } as never]) {
			const rest = restOf(nothing, { step: 0.5, minimum: 0 } as never);
			expect(rest).toEqual({ kind: "none", why: { code: "full", room: 0.2 } });
			const stays = withRest(first, guide(first), rest);
			expect(stays.pours).toHaveLength(1);
			expect(guide(stays)).toMatchObject({ step: 0, next: null });
		}
	});
	test("is gone again once one goes back to the first", () => {
		const second = withRest(first, guide(first), restOf(answer(19.6), { step: 0.5, minimum: 0 } as never));
		expect(backTo(typed(second, "19"), "one")).toEqual(first);
	});
});

describe("a stored form", () => {
	test("from before there were plans, prices and odometers is read as one without them", () => {
		const { plan: _, odometer: __, notedAt: ___, ...old } = newDraft(newId, e10, "Harbour", "L");
		const pours = old.pours.map(({ price: _price, ...pour }) => ({ ...pour, typed: "12" }));
		const read = readDraft({ ...old, pours });
		expect(read).toMatchObject({ plan: null, odometer: "", pours: [{ typed: "12", price: "" }] });
		expect(read && fillsOf(read, tank, "L", now)[0]).not.toHaveProperty("pricePerLitre");
	});
	test("with a plan half poured comes back as it was", () => {
		const half = typed(begun(), "9.5");
		expect(readFreshDraft(structuredClone(half), now + 5 * 3_600_000)).toEqual(half);
	});
	test("of a stop that never came forgets what was noted for it", () => {
		const noted = { ...begun(), gauge: 0.5, odometer: "84000" };
		expect(readFreshDraft(noted, now + 3_600_000)).toEqual(noted);
		const later = readFreshDraft(noted, now + 3 * 3_600_000);
		expect(later).toMatchObject({ stop: noted.stop, gauge: null, odometer: "", plan: null });
		expect(readFreshDraft({ ...noted, at }, now + 3 * 3_600_000)?.gauge).toBe(0.5);
	});
});

test("odometer and prices go into the fills as km and per litre, the odometer with the first", () => {
	const draft = { ...begun(), plan: null, unit: "gal", odometer: "52000" } as const;
	const pours = [
		{ ...draft.pours[0], typed: "2", price: "3,459" },
		{ ...draft.pours[0], id: "b", typed: "4", price: "" },
	];
	const [first, second] = fillsOf({ ...draft, pours }, tank, "gal", now);
	expect(first.odometerKm).toBeCloseTo(52000 * 1.609344, 6);
	expect(first.pricePerLitre).toBeCloseTo(3.459 / 3.785411784, 9);
	expect(second).not.toHaveProperty("odometerKm");
	expect(second).not.toHaveProperty("pricePerLitre");
});

test("what a fill cost is no new question to the preview", () => {
	const draft = typed({ ...begun(), plan: null }, "8");
	const priced = { ...draft, pours: draft.pours.map((pour) => ({ ...pour, price: "1.5" })) };
	expect(stopOf(priced, tank, "L", now)).toEqual(stopOf(draft, tank, "L", now));
	expect(fillsOf(priced, tank, "L", now)).not.toEqual(fillsOf(draft, tank, "L", now));
});
