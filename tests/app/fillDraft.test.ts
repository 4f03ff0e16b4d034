import { describe, expect, test } from "vitest";
import { placesIn, productAfter, productsIn, usualProduct } from "../../src/app/fillChoices";
import { draftOf, type FillDraft, faultOf, fillsOf, newDraft, readDraft, stopOf } from "../../src/app/fillDraft";
import { aCar, aFill } from "../helpers/logs";

const { tank } = aCar();
const flex = { id: "flex-51-83", range: [0.51, 0.83] } as never;
const e10 = { id: "gasoline-e10", range: [0.09, 0.1] } as never;
let ids = 0;
const newId = () => `id ${++ids}`;
const now = Date.parse("2026-06-01T12:00:00Z");
const typed = (...amounts: string[]): FillDraft => {
	const draft = newDraft(newId, flex, "Harbour", "L");
	return { ...draft, pours: amounts.map((amount) => ({ ...draft.pours[0], id: newId(), typed: amount })) };
};

describe("fillsOf()", () => {
	test("leaves out what is no amount, and keeps the order of the others a second apart", () => {
		const fills = fillsOf(typed("10", "", "x", "20"), tank, "L", now);
		expect(fills.map(({ litres }) => litres)).toEqual([10, 20]);
		expect(Date.parse(fills[0].at)).toBe(now);
		expect(Date.parse(fills[1].at)).toBe(now + 1000);
	});
	test("reads gallons, with comma or point", () => {
		expect(fillsOf(typed("3,5"), tank, "gal", now)[0].litres).toBeCloseTo(13.249, 3);
		expect(fillsOf(typed("3.5"), tank, "imp gal", now)[0].litres).toBeCloseTo(15.911, 3);
	});
	test("puts the gauge on the first fill and the click on the last", () => {
		const draft = typed("10", "20");
		const pours = draft.pours.map((pour) => ({ ...pour, toClick: true }));
		const [first, second] = fillsOf({ ...draft, pours, gauge: 0.5 }, tank, "L", now);
		expect([first.gauge, first.toClick]).toEqual([0.5, undefined]);
		expect([second.gauge, second.toClick]).toEqual([undefined, true]);
	});
});

test("stopOf() asks about the open product as the next pour until its amount is typed", () => {
	expect(stopOf(typed("10", ""), tank, "L", now)).toMatchObject({ fills: [{ litres: 10 }], next: { product: flex } });
	expect(stopOf(typed("10", "5"), tank, "L", now)).toMatchObject({ fills: [{}, {}], next: null });
});

test("faultOf() names why an amount can't be used", () => {
	const fault = (amount: string) => faultOf(typed(amount).pours[0], tank, "L");
	expect(["", "abc", "0", "99", "1e2", "-5", "12,5"].map(fault)).toEqual([
		"empty",
		"notANumber",
		"tooSmall",
		"tooLarge",
		"notANumber",
		"notANumber",
		null,
	]);
});

test("draftOf() brings a saved stop back as it was typed", () => {
	const fills = [
		aFill({ id: "a", litres: 13.2489, place: "Harbour", gauge: 0.25 }),
		aFill({ id: "b", litres: 37.85412, toClick: true }),
	];
	const draft = draftOf(fills, "gal", newId);
	expect(draft).toMatchObject({ at: fills[0].at, place: "Harbour", gauge: 0.25, instead: ["a", "b"] });
	expect(draft.pours.map((pour) => [pour.typed, pour.toClick])).toEqual([
		["3.5", false],
		["10", true],
	]);
});

test("readDraft() takes nothing for a draft that is none", () => {
	for (const raw of [undefined, null, 5, {}, { stop: "s", pours: [] }]) expect(readDraft(raw)).toBeNull();
	expect(readDraft(typed("1"))).not.toBeNull();
});

test("places and products are offered with the last used first, and habits are kept", () => {
	const events = [
		aFill({ id: "1", stop: "s1", product: e10, place: "Mill Road" }),
		aFill({ id: "2", stop: "s2", product: flex, place: "Harbour" }),
		aFill({ id: "3", stop: "s2", product: e10, place: "Harbour" }),
	];
	expect(placesIn(events)).toEqual(["Harbour", "Mill Road"]);
	expect(productsIn(events).map(({ id }) => id)).toEqual(["gasoline-e10", "flex-51-83", "gasoline-to-10"]);
	expect(usualProduct(events)).toEqual(flex);
	expect(productAfter(events, flex)).toEqual(e10);
	expect(productAfter([], flex).id).not.toBe("flex-51-83");
});
