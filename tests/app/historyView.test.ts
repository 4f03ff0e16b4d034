import { expect, test } from "vitest";
import { findingOf, historyOf, type Span, shownOf } from "../../src/app/historyView";
import { itemsOf } from "../../src/app/logView";
import type { LogEvent } from "../../src/domain/event";
import { aCalibration, aCar, aFill, aFlash, aLevel, aStart, aTankReading, aVoid } from "../helpers/logs";
import { anAccount, figures, manyFills } from "./lines";

const now = Date.parse("2026-06-20T12:00:00Z");
const day = 86_400_000;
const ago = (days: number) => new Date(now - days * day).toISOString();

function history(events: readonly LogEvent[], contents: Record<string, number> = {}, car = aCar()) {
	return historyOf(car, itemsOf(anAccount(events, ({ id }) => figures(contents[id] ?? 0.3), { car })));
}
function shown(events: readonly LogEvent[], span: Span, contents: Record<string, number> = {}, car = aCar()) {
	return shownOf(history(events, contents, car), span, now);
}
const finding = (...args: Parameters<typeof shown>) => {
	const part = shown(...args);
	return part && findingOf(part).replaceAll("\u00a0", " ");
};

test("a stop is one point, after its last fill; void events and flashes are none", () => {
	const { points, stops } = history(
		[
			aStart({ at: ago(9) }),
			aFill({ id: "a", at: ago(8) }),
			aFill({ id: "b", at: ago(7.99) }),
			aFlash({ at: ago(6) }),
			aLevel({ at: ago(5) }),
			aVoid({ at: ago(4) }),
		],
		{ a: 0.5, b: 0.31 },
	);
	expect(points.map(({ id, figures: { median } }) => [id, median])).toEqual([
		["start", 0.3],
		["a", 0.31],
	]);
	expect(stops).toEqual([Date.parse(ago(7.99))]);
});

test("the window in force changes with each flash that counts", () => {
	const car = aCar({ calibrations: [aCalibration(), aCalibration({ id: "e50", window: [0.45, 0.55] })] });
	const flash = { at: ago(6), calibration: "e50" };
	const { windows, points } = history(
		[
			aStart({ at: ago(9) }),
			aFlash(flash),
			aLevel({ at: ago(5) }),
			aFlash({ id: "back", at: ago(4) }),
			aVoid({ target: "back" }),
		],
		{},
		car,
	);
	expect(windows).toEqual([
		{ from: -Infinity, window: [0.26, 0.34] },
		{ from: Date.parse(flash.at), window: [0.45, 0.55] },
	]);
	expect(points.map(({ side }) => side)).toEqual(["inside", "below"]);
});

test("readings of the tank are told with their sd, others are not", () => {
	const { points } = history([aTankReading(), aLevel()]);
	expect(points.map(({ reading }) => reading)).toEqual([{ value: 0.31, sd: 0.02 }, null]);
});

test("ten stops back begins with the tenth last stop, where nothing is held from before", () => {
	const events = Array.from({ length: 15 }, (_, i) => aFill({ id: `f${i}`, stop: `s${i}`, at: ago(60 - 4 * i) }));
	const part = shown(events, "stops");
	expect(part).toMatchObject({ from: Date.parse(ago(40)), stops: 10, held: null });
	expect(part?.points[0].id).toBe("f5");
	expect(shown(events.slice(0, 4), "stops")?.points).toHaveLength(4);
});

test("three months back holds the content from before, and ends now", () => {
	const part = shown([aFill({ id: "old", at: ago(150) }), aFill({ id: "new", stop: "2", at: ago(30) })], "months");
	expect(part?.held?.id).toBe("old");
	expect(part?.points.map(({ id }) => id)).toEqual(["new"]);
	expect(part?.to).toBe(now);
	expect(new Date(part?.from ?? 0).getMonth()).toBe(2);
});

test("three months before the last of May is the last of February", () => {
	const last = new Date(2026, 4, 31, 12).getTime();
	const part = shownOf(history([aFill({ at: new Date(last).toISOString() })]), "months", last);
	expect(new Date(part?.from ?? 0).toDateString()).toBe("Sat Feb 28 2026");
});

test("the last content is drawn on for a little, not to a now that lies far off", () => {
	const part = shown([aFill({ at: ago(300) }), aFill({ id: "b", stop: "2", at: ago(200) })], "all");
	expect(part?.to).toBe(Date.parse(ago(200)) + 6 * day);
	const single = shown([aFill({ at: ago(0) })], "all");
	expect((single?.to ?? 0) - (single?.from ?? 0)).toBe(2 * day);
});

test("entries from a clock that ran ahead are shown", () => {
	for (const span of ["stops", "months", "all"] as const) {
		expect(shown([aFill({ at: ago(9) }), aFill({ id: "b", stop: "2", at: ago(-3) })], span)?.points).toHaveLength(2);
	}
});

test("only windows that were in force in the time shown are told", () => {
	const car = aCar({
		calibrations: [aCalibration(), aCalibration({ id: "e50", window: [0.45, 0.55] })],
	});
	const events = [aStart({ at: ago(200) }), aFlash({ at: ago(190), calibration: "e50" }), aLevel({ at: ago(3) })];
	expect(shown(events, "months", {}, car)?.windows.map(({ window }) => window)).toEqual([[0.45, 0.55]]);
	expect(shown(events, "all", {}, car)?.windows).toHaveLength(2);
});

test("an empty account shows nothing", () => {
	expect(shown([], "all")).toBeNull();
});

test("the finding says the stretch, the latest, and how many lie outside", () => {
	const events = [aStart({ at: ago(9) }), aFill({ at: ago(8) }), aLevel({ at: ago(2) })];
	expect(finding(events, "all", { start: 0.07, fill: 0.41, level: 0.31 })).toMatch(
		/^The whole log, .+ to .+: the most likely content lies between 7 % and 41 %, at the end about 31 %\. 1 of 3 entries inside the window, 1 above it, 1 below it\.$/,
	);
	expect(finding(events, "stops")).toMatch(
		/^The whole log, .+: the most likely content is about 30 %\. All 3 entries lie inside the window\.$/,
	);
	expect(finding(events, "stops", {}, aCar({ calibrations: [] }))).toMatch(/about 30 %\.$/);
});

test("the finding of a time without entries says what was held", () => {
	expect(finding([aFill({ at: ago(200) })], "months")).toMatch(
		/^The last 3 months, .+: no entries, so the content stayed at about 30 %\.$/,
	);
});

test("2,000 entries are sifted at once", () => {
	const account = anAccount(manyFills(2000, now));
	const items = itemsOf(account);
	const begun = performance.now();
	const part = shownOf(historyOf(account.car, items), "all", now);
	if (part) findingOf(part);
	expect(performance.now() - begun).toBeLessThan(200);
	expect(part?.points).toHaveLength(2000);
});
