import { describe, expect, test } from "vitest";
import { lastOdometer, lastPrice, productsAt } from "../../src/app/fillChoices";
import { type FillDraft, newDraft } from "../../src/app/fillDraft";
import {
	atPlace,
	changeOffer,
	forStop,
	newPlanForm,
	type PlanForm,
	planAskOf,
	readPlanForm,
	withOffer,
} from "../../src/app/planForm";
import type { LogEvent } from "../../src/domain/event";
import { aCar, aFill, aLevel, aVoid } from "../helpers/logs";

const { tank } = aCar();
const flex = { id: "flex-51-83", range: [0.51, 0.83] } as never;
const e10 = { id: "gasoline-e10", range: [0.09, 0.1] } as never;
const e15 = { id: "gasoline-e15", range: [0.1, 0.15] } as never;
let ids = 0;
const newId = () => `id ${++ids}`;
const at = "2026-07-01T12:00:00+00:00";
const log: readonly LogEvent[] = [
	aFill({ id: "1", stop: "s1", product: e15, place: "Mill Road", pricePerLitre: 1.6 }),
	aFill({ id: "2", stop: "s2", product: flex, place: "Harbour", pricePerLitre: 0.8 }),
	aFill({ id: "3", stop: "s2", product: e10, place: "Harbour", pricePerLitre: 1.5 }),
	aFill({ id: "4", stop: "s3", product: e10, place: "Harbour", pricePerLitre: 1.55, at: "2026-06-09T12:00:00Z" }),
];
const draftAt = (place: string | null, unit: FillDraft["unit"] = "L") => newDraft(newId, flex, place, unit);
const formAt = (place: string | null, unit: FillDraft["unit"] = "L") => newPlanForm(newId, log, draftAt(place, unit));
const on = (form: PlanForm) => form.offers.filter((offer) => offer.on).map(({ product }) => product.id);
const ask = (form: PlanForm, draft = draftAt("Harbour", form.unit)) => planAskOf(form, draft, [], tank, at);

describe("newPlanForm()", () => {
	test("has on sale what was bought at the place before, with what it cost there last", () => {
		const form = formAt("Harbour");
		expect(on(form)).toEqual(["gasoline-e10", "flex-51-83"]);
		expect(form.offers.map(({ price }) => price)).toEqual(["1.55", "0.8", "1.6"]);
		expect(form.offers.map(({ product }) => product.id)).toContain("gasoline-e15");
	});
	test("where nothing was bought has the last two on, and where one was fills up to two", () => {
		expect(on(formAt(null))).toEqual(["gasoline-e10", "flex-51-83"]);
		expect(on(formAt("Mill Road"))).toEqual(["gasoline-e15", "gasoline-e10"]);
	});
	test("with an empty log offers the usual fuels", () => {
		expect(on(newPlanForm(newId, [], draftAt(null)))).toEqual(["flex-51-83", "gasoline-e10"]);
	});
	test("counts prices and steps in the unit of the pump", () => {
		const form = formAt("Harbour", "gal");
		expect(form.step).toBe("0.1");
		expect(Number(form.offers[0].price)).toBeCloseTo(1.55 * 3.785411784, 3);
	});
});

describe("planAskOf()", () => {
	test("asks with everything from the log, and nothing typed", () => {
		const form = formAt("Harbour");
		const draft = { ...draftAt("Harbour"), gauge: 0.25, odometer: "84000" };
		expect(planAskOf(form, draft, [], tank, at)).toEqual({
			ok: true,
			value: {
				visit: { stop: draft.stop, at, place: "Harbour", gauge: 0.25, odometerKm: 84000 },
				poured: [],
				instead: [],
				offers: [
					{ product: e10, pricePerLitre: 1.55 },
					{ product: flex, pricePerLitre: 0.8 },
				],
				fullness: { kind: "click" },
				targetCalibration: null,
				handling: { step: 0.5, minimum: 0 },
				ids: form.ids.slice(0, 2),
			},
		});
	});
	test("reads amounts and money in the unit and with comma or point", () => {
		const gallons = { ...formAt("Harbour", "gal"), full: "litres", amount: "5,5" } as const;
		const asked = ask(gallons);
		expect(asked.ok && asked.value.fullness).toMatchObject({ kind: "litres", litres: 5.5 * 3.785411784 });
		expect(asked.ok && asked.value.handling.step).toBeCloseTo(0.3785, 4);
		const money = ask({ ...formAt("Harbour"), full: "money", money: "40" });
		expect(money.ok && money.value.fullness).toEqual({ kind: "money", amount: 40 });
	});
	test("gives ids that no pour at this stop has", () => {
		const form = formAt("Harbour");
		const asked = planAskOf(form, draftAt("Harbour"), [aFill({ id: form.ids[0] })], tank, at);
		expect(asked.ok && asked.value.ids).toEqual(form.ids.slice(1, 3));
	});
	test("names every fault beside its field", () => {
		const form = formAt("Harbour");
		const fault = (part: Partial<PlanForm>) => ask({ ...form, ...part });
		expect(fault({ full: "litres" })).toMatchObject({ ok: false, error: { amount: /How much/ } });
		expect(fault({ full: "litres", amount: "99" })).toMatchObject({ ok: false, error: { amount: /between/ } });
		expect(fault({ full: "money", money: "x" })).toMatchObject({ ok: false, error: { money: /digits/ } });
		expect(fault({ step: "0" })).toMatchObject({ ok: false, error: { step: /between/ } });
		expect(fault({ minimum: "-" })).toMatchObject({ ok: false, error: { minimum: /digits/ } });
		const priced = changeOffer(form, flex, { price: "cheap" });
		expect(ask(priced)).toMatchObject({ ok: false, error: { prices: { "flex-51-83 0.51 0.83": /digits/ } } });
		expect(ask(changeOffer(priced, flex, { on: false })).ok).toBe(true);
	});
});

test("forStop() keeps a form for its stop, and begins anew for the next with the driver's ways kept", () => {
	const draft = draftAt("Harbour");
	const form = { ...newPlanForm(newId, log, draft), full: "litres", amount: "20", step: "1", target: "e30" } as const;
	expect(forStop(form, newId, log, draft)).toEqual(form);
	const next = forStop(form, newId, log, draftAt("Mill Road", "gal"));
	expect(next).toMatchObject({ full: "litres", amount: "5.283", step: "0.264", target: null, unit: "gal" });
	expect(next.stop).not.toBe(form.stop);
	expect(next.ids).not.toEqual(form.ids);
	expect(on(next)[0]).toBe("gasoline-e15");
});

test("forStop() offers what is sold where the stop now is", () => {
	const draft = draftAt("Harbour");
	const form = newPlanForm(newId, log, draft);
	const moved = forStop(form, newId, log, { ...draft, place: "Mill Road" });
	expect(moved).toEqual(atPlace(form, "Mill Road", log));
	expect(on(moved)[0]).toBe("gasoline-e15");
});

describe("naming another place", () => {
	const e5 = { id: "gasoline-e5", range: [0.04, 0.05] } as never;
	test("keeps what the driver ticked, typed and added, and fills in the rest from there", () => {
		const begun = formAt("Harbour");
		const typed = changeOffer(changeOffer(begun, flex, { price: "0.99" }), e15, { on: true });
		const form = withOffer(changeOffer(typed, e10, { on: false }), e5, log);
		const moved = atPlace(form, "Mill Road", log);
		expect(on(moved).sort()).toEqual(["flex-51-83", "gasoline-e15", "gasoline-e5"]);
		expect(moved.offers.find(({ product }) => product.id === "flex-51-83")?.price).toBe("0.99");
		expect(moved.offers.find(({ product }) => product.id === "gasoline-e15")?.price).toBe("1.6");
		expect(new Set(moved.offers.map(({ product }) => product.id)).size).toBe(moved.offers.length);
	});
	test("keeps a typed price that is cleared, and a product bought nowhere before with its price", () => {
		const form = changeOffer(withOffer(changeOffer(formAt(null), e10, { price: "" }), e5, log), e5, { price: "1.4" });
		const moved = atPlace(form, "Harbour", log);
		expect(moved.offers.find(({ product }) => product.id === "gasoline-e10")?.price).toBe("");
		expect(moved.offers.at(-1)).toEqual({ product: e5, on: true, price: "1.4" });
	});
	test("changes what nobody touched to what is sold there", () => {
		expect(atPlace(formAt(null), "Mill Road", log).offers).toEqual(formAt("Mill Road").offers);
	});
});

test("withOffer() puts one more product on sale, once", () => {
	const form = formAt("Harbour");
	const more = withOffer(form, e15, log);
	expect(on(more)).toEqual(["gasoline-e10", "flex-51-83", "gasoline-e15"]);
	expect(more.offers).toHaveLength(form.offers.length);
});

test("readPlanForm() takes nothing for a form that is none", () => {
	for (const raw of [undefined, null, 5, {}, { stop: "s", offers: 3 }]) expect(readPlanForm(raw)).toBeNull();
	const form = formAt("Harbour");
	expect(readPlanForm(structuredClone(form))).toEqual(form);
});

test("what was noted last is found: products and prices by place, the odometer by time", () => {
	expect(productsAt(log, "Harbour").map(({ id }) => id)).toEqual(["gasoline-e10", "flex-51-83"]);
	expect(productsAt(log, null)).toEqual([]);
	expect(lastPrice(log, "Harbour", e10)).toBe(1.55);
	expect(lastPrice(log, "Mill Road", flex)).toBe(0.8);
	expect(lastPrice([], null, flex)).toBeNull();
	const travelled = [
		...log,
		aFill({ id: "5", stop: "s4", at: "2026-06-10T12:00:00Z", odometerKm: 1000 }),
		aLevel({ id: "6", at: "2026-06-11T12:00:00Z", odometerKm: 1100 }),
		aFill({ id: "7", stop: "s5", at: "2026-06-12T12:00:00Z", odometerKm: 1200 }),
		aVoid({ id: "8", at: "2026-06-13T12:00:00Z", target: "7" }),
	];
	const before = (iso: string, instead: readonly string[] = []) =>
		lastOdometer(travelled, Date.parse(iso), instead)?.km;
	expect(before("2026-06-30T00:00:00Z")).toBe(1100);
	expect(before("2026-06-10T18:00:00Z")).toBe(1000);
	expect(before("2026-06-30T00:00:00Z", ["6"])).toBe(1000);
	expect(before("2026-06-09T00:00:00Z")).toBeUndefined();
});
