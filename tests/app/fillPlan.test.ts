import { describe, expect, test } from "vitest";
import {
	type FillDraft,
	fillsOf,
	inUnit,
	newDraft,
	readDraft,
	readFreshDraft,
	stopOf,
	visitOf,
} from "../../src/app/fillDraft";
import { asPlanned, backTo, guidedBy, losesTyped, restAsk, restOf, withPlan, withRest } from "../../src/app/fillPlan";
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

test("a price typed before the plan goes along with its product, to the second pour as well", () => {
	const pour = { id: "typing", product: e10, typed: "", toClick: false, price: "1,63" };
	const draft = begun({ kind: "click" }, { pours: [pour] });
	expect(draft.pours).toMatchObject([{ id: "one", price: "" }]);
	const first = typed(draft, "8");
	const handling = { step: 0.5, minimum: 0 } as never;
	expect(withRest(first, guide(first), restOf(answer(19), handling)).pours[1]).toMatchObject({
		id: "two",
		price: "1.63",
	});
	expect(begun({ kind: "click" }, { pours: [{ ...pour, product: flex }] }).pours[0].price).toBe("1.63");
	// A pour that is in the tank keeps its own.
	expect(begun({ kind: "click" }, { pours: [{ ...pour, typed: "3" }] }).plan?.priced).toEqual([]);
});

test("what a plan takes from the form is known: a price, a click or an amount that is none, if the driver typed it", () => {
	const draft = newDraft(newId, e10, "Harbour", "L");
	const loses = (part: object) => losesTyped({ ...draft, pours: [{ ...draft.pours[0], ...part }] }, []);
	expect([{}, { price: "1.6" }, { toClick: true }, { typed: "1x" }].map(loses)).toEqual([false, true, true, true]);
	const poured = [{ id: draft.pours[0].id }] as never;
	expect(losesTyped({ ...draft, pours: [{ ...draft.pours[0], typed: "3" }] }, poured)).toBe(false);
	const second = { ...draft.pours[0], id: "two", toClick: true };
	expect(losesTyped({ ...begun(), pours: [second] }, [])).toBe(false);
});

describe("what a plan was made with", () => {
	const handling = { step: 0.5, minimum: 0 } as never;
	const changed = (draft: FillDraft, part: Partial<FillDraft>) => guide({ ...draft, ...part }).changed;
	test("is told where it is noted otherwise since", () => {
		const draft = begun();
		expect(changed(draft, {})).toEqual([]);
		expect(changed(draft, { gauge: 0.81 })).toEqual(["gauge"]);
		expect(changed(draft, { place: null, at, odometer: "84000" })).toEqual(["place", "time", "odometer"]);
		expect(changed(begun({ kind: "click" }, { gauge: 0.5 }), { gauge: null })).toEqual(["gauge"]);
	});
	test("is the same in another unit, and with an odometer that can't be read", () => {
		const draft = begun({ kind: "click" }, { odometer: "84001" });
		expect(guide(inUnit(draft, "gal")).changed).toEqual([]);
		expect(changed(begun(), { odometer: "84x" })).toEqual([]);
	});
	test("is what the second pour was reckoned with, once it was", () => {
		const first = { ...typed(begun(), "9.5"), gauge: 0.4 as never };
		const second = withRest(first, guide(first), restOf(answer(19.6), handling));
		expect(guide(second).changed).toEqual([]);
		expect(changed(second, { gauge: 0.5 })).toEqual(["gauge"]);
		expect(guide(backTo(second, "one")).changed).toEqual(["gauge"]);
		// Not reckoned anew, it stands as it was made.
		expect(guide(withRest(first, guide(first), restOf(null, handling))).changed).toEqual(["gauge"]);
	});
	test("opens the rest again where nothing more did fit before", () => {
		const first = typed(begun(), "9.5");
		const none = withRest(first, guide(first), restOf(answer(0.2), handling));
		expect(guide(none).next).toBeNull();
		expect(guide({ ...none, gauge: 0.2 }).next).toMatchObject({ litres: 21.04 });
	});
	test("is not known of a stored plan from before it was kept, which is read all the same", () => {
		const draft = begun();
		const { visit: _, priced: __, ...old } = draft.plan as NonNullable<FillDraft["plan"]>;
		const read = readDraft(structuredClone({ ...draft, plan: old }));
		expect(read && changed(read, { gauge: 0.81 })).toEqual([]);
		const first = typed(read as FillDraft, "8");
		expect(withRest(first, guide(first), restOf(answer(19), handling)).pours).toHaveLength(2);
	});
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
