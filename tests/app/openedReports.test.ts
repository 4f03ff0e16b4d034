import { describe, expect, test } from "vitest";
import { checkedReport, type OpenedReport, type Source, withReport } from "../../src/app/openedReports";
import type { Glance } from "../../src/keeper/glance";
import type { ReportRead } from "../../src/keeper/reports";
import { aCalibration } from "../helpers/logs";

const figures = { median: 0.3, low: 0.27, high: 0.33, below: 0.01, above: 0.02 };
const glance = (fields: Partial<Record<keyof Glance, unknown>> = {}): Glance =>
	({
		carId: "car",
		name: "The grey one",
		figures,
		calibration: aCalibration(),
		surprise: null,
		grave: false,
		lastAt: "2026-06-01T12:00:00Z",
		...fields,
	}) as never;
const read = (at: string | null, fields: Partial<ReportRead> = {}): ReportRead => ({
	glance: glance(),
	made: at === null ? null : { at, app: "0.1.0", otherModel: false },
	entries: 3,
	here: false,
	...fields,
});
const source = (name: string): Source => ({ name, text: name });
const only = (open: readonly OpenedReport[]) => {
	expect(open).toHaveLength(1);
	return open[0] as OpenedReport;
};

describe("of two reports of a car", () => {
	test.each([
		["2026-06-01T12:00:00Z", "2026-06-02T12:00:00Z", "second"],
		["2026-06-02T12:00:00Z", "2026-06-01T12:00:00Z", "first"],
		// The same day, told by two clocks.
		["2026-06-02T12:00:00+09:00", "2026-06-02T12:00:00-05:00", "second"],
		["2026-06-02T12:00:00Z", null, "first"],
	])("made %s and %s the later is shown, and both are counted", (first, second, shown) => {
		const open = withReport(withReport([], source("first"), read(first)), source("second"), read(second));
		expect(only(open)).toMatchObject({ source: { name: shown }, count: 2 });
	});
});

test("reports of other cars are rows of their own", () => {
	const other = read("2026-06-01T12:00:00Z", { glance: glance({ carId: "other" }) });
	expect(withReport(withReport([], source("a"), read(null)), source("b"), other)).toHaveLength(2);
});

describe("held against its entries", () => {
	const opened = only(withReport([], source("a"), read("2026-06-01T12:00:00Z")));
	test("a report is confirmed where they come to the same within half a point", () => {
		const found = glance({ figures: { ...figures, median: 0.304 } });
		expect(checkedReport(opened, found)).toMatchObject({ check: "confirmed", glance: found });
	});
	test.each<[string, Partial<Record<keyof Glance, unknown>>]>([
		["another content", { figures: { ...figures, median: 0.31 } }],
		["another chance", { figures: { ...figures, above: 0.03 } }],
		["no tank", { figures: null }],
		["a contradiction", { grave: true }],
		["another calibration", { calibration: aCalibration({ id: "e70" }) }],
		["none", { calibration: null }],
		["an odd last entry", { surprise: { kind: "impossibleLevel" } }],
		["another last entry", { lastAt: "2026-06-02T12:00:00Z" }],
	])("it differs where they come to %s, and the entries count", (_name, fields) => {
		const found = glance(fields);
		expect(checkedReport(opened, found)).toMatchObject({ check: "differs", glance: found });
	});
	test("another model explains it", () => {
		const made = { at: "2026-06-01T12:00:00Z", app: "0.1.0", otherModel: true };
		const old = only(withReport([], source("a"), read(null, { made })));
		expect(checkedReport(old, glance({ grave: true })).check).toBe("otherModel");
	});
	test.each(["tooLong", "failed", "gone"] as const)("what could not be checked (%s) stays as it was said", (why) => {
		expect(checkedReport(opened, why)).toMatchObject({ check: why, glance: opened.read.glance });
	});
});
