import { expect, test } from "vitest";
import { itemsOf, itemWith, monthsOf, outsideOf, replacementOf, targetsFor, voidedAt } from "../../src/app/logView";
import { aCalibration, aCar, aFill, aFlash, aLevel, aStart, aTankReading, aVoid } from "../helpers/logs";
import { anAccount, figures, manyFills } from "./lines";

const at = (day: number, minute = 0) =>
	`2026-06-${String(day).padStart(2, "0")}T12:${String(minute).padStart(2, "0")}:00+02:00`;
const contents: Record<string, number> = { start: 0.07, flex: 0.4, e10: 0.31, tank: 0.3 };
const stop = [
	aFill({ id: "flex", at: at(2) }),
	aFill({ id: "e10", at: at(2, 1), product: { id: "gasoline-e10", range: [0.09, 0.1] } }),
];
const told = (events: Parameters<typeof anAccount>[0], options = {}) =>
	itemsOf(anAccount(events, ({ id }) => figures(contents[id] ?? 0.3), options));

test("the fills of one stop are one item, from what was before to what is after", () => {
	const items = told([aStart(), ...stop, aTankReading()]);
	expect(items.map(({ events }) => events.map(({ id }) => id))).toEqual([["start"], ["flex", "e10"], ["tank"]]);
	expect(items[1]).toMatchObject({ id: "flex", at: at(2), before: { median: 0.07 }, after: { median: 0.31 } });
	expect(items[0].before).toBeNull();
	expect(items[2].before?.median).toBe(0.31);
});

test("a stop's surprise is kept, whichever of its fills had it", () => {
	const surprise = { kind: "impossibleLevel" } as const;
	expect(told([aStart(), ...stop], { surprises: { flex: surprise } })[1].surprise).toEqual(surprise);
	expect(told([aStart(), ...stop], { surprises: { e10: surprise } })[1].surprise).toEqual(surprise);
});

test("what is void is an item of its own without figures, and changes nothing for others", () => {
	const items = told([aStart(), ...stop, aVoid({ target: "e10" }), aTankReading()]);
	expect(items.map(({ id, isVoid }) => [id, isVoid])).toEqual([
		["start", false],
		["flex", false],
		["e10", true],
		["tank", false],
	]);
	expect(items[2]).toMatchObject({ before: null, after: null, calibration: null });
	expect(items[3].before?.median).toBe(0.4);
});

test("every item knows the calibration in force after it", () => {
	const car = aCar({ calibrations: [aCalibration(), aCalibration({ id: "e50", name: "E50" })] });
	const events = [
		aStart(),
		aFlash({ id: "away", at: at(3), calibration: "e50" }),
		aLevel({ id: "between", at: at(4) }),
		aFlash({ id: "mistake", at: at(5), calibration: "e30" }),
		aVoid({ target: "mistake" }),
		aLevel({ id: "after", at: at(9) }),
	];
	const items = itemsOf(anAccount(events, () => figures(0.3), { car }));
	expect(items.map(({ id, calibration }) => [id, calibration?.id])).toEqual([
		["start", "e30"],
		["away", "e50"],
		["between", "e50"],
		["mistake", undefined],
		["after", "e50"],
	]);
});

test("any fill leads to its stop, and a void to what it took back, also through another void", () => {
	const events = [...stop, aVoid({ id: "v1", target: "e10" }), aVoid({ id: "v2", at: at(8), target: "v1" })];
	const account = anAccount(events);
	const items = itemsOf(account);
	for (const id of ["flex", "e10", "v1", "v2"]) expect(itemWith(items, account.events, id)?.id).toBe("flex");
	expect(itemWith(items, account.events, "nothing")).toBeNull();
});

test("voids that aim at each other lead nowhere, and end", () => {
	const circle = [aVoid({ id: "v1", target: "v2" }), aVoid({ id: "v2", target: "v1" })];
	expect(itemWith([], circle, "v1")).toBeNull();
});

test("a void item is replaced by what counts of its kind at its time", () => {
	const corrected = aFill({ id: "better", stop: "another", at: at(2), litres: 14 });
	const items = told([
		aStart(),
		...stop,
		corrected,
		aVoid({ id: "v1", target: "flex" }),
		aVoid({ id: "v2", target: "e10" }),
	]);
	const old = items.find(({ isVoid }) => isVoid);
	expect(old && replacementOf(old, items)?.id).toBe("better");
	expect(replacementOf(items[0], items)).toBeNull();
	const alone = told([...stop, aVoid({ id: "v1", target: "flex" }), aVoid({ id: "v2", target: "e10" })]);
	expect(replacementOf(alone[0], alone)).toBeNull();
});

test("a chance is told of where it is more than the calibration accepts", () => {
	const calibration = aCalibration({ leanBudget: 0.01, knockBudget: 0.2 });
	expect(outsideOf(figures(0.3, { above: 0.02, below: 0.19 }), calibration)).toEqual([{ side: "above", chance: 0.02 }]);
	expect(outsideOf(figures(0.3, { above: 0.01, below: 0.3 }), calibration)).toEqual([{ side: "below", chance: 0.3 }]);
	expect(outsideOf(figures(0.3, { above: 0.06, below: 0.06 }), null)).toHaveLength(2);
	expect(outsideOf(figures(0.3, { above: null, below: null }), null)).toEqual([]);
});

test("months come newest first and keep the order of their items", () => {
	const events = ["2026-04-10", "2026-06-10", "2026-06-20", "2027-06-15"].map((day, i) =>
		aLevel({ id: `l${i}`, at: `${day}T12:00:00+02:00` }),
	);
	const months = monthsOf(told(events).reverse());
	expect(months.map(({ items }) => items.map(({ id }) => id))).toEqual([["l3"], ["l2", "l1"], ["l0"]]);
});

test("to let some events count and others not, only what stands in the way is voided", () => {
	const events = [
		...stop,
		aLevel(),
		aVoid({ id: "v1", target: "flex" }),
		aVoid({ id: "v2", target: "flex", at: at(8) }),
	];
	expect(targetsFor(events, ["flex", "e10"], ["level"])).toEqual(["level", "v1", "v2"]);
	expect(targetsFor(events, ["level"], ["flex"])).toEqual([]);
});

test("a void item is void since its first void that counts", () => {
	const events = [
		aLevel(),
		aVoid({ id: "v1", target: "level", at: at(8) }),
		aVoid({ id: "v0", target: "level", at: at(7) }),
	];
	expect(voidedAt(told(events)[0], events)).toBe(at(7));
});

test("2,000 entries are told at once", () => {
	const account = anAccount(manyFills(2000, Date.parse(at(10))));
	const begun = performance.now();
	const items = itemsOf(account);
	monthsOf([...items].reverse());
	expect(performance.now() - begun).toBeLessThan(400);
	expect(items).toHaveLength(2000);
});
