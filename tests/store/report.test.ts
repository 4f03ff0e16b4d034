import { describe, expect, test } from "vitest";
import { parseLog } from "../../src/store/backup";
import { parseReport } from "../../src/store/report";
import { measuredCar, noteOf, reportText } from "../helpers/reports";

const now = Date.parse("2026-06-10T12:00:00Z");
const made = "2026-06-10T14:00:00+02:00";
const log = measuredCar("car", "The grey one", 0.31, 2, now);
const text = reportText(log, made);

// biome-ignore lint/suspicious/noExplicitAny: a test breaks whatever it likes in the file
type Json = Record<string, any>;

function broken(mutate: (report: Json, file: Json) => unknown): ReturnType<typeof parseReport> {
	const file = JSON.parse(text);
	mutate(file.report, file);
	return parseReport(JSON.stringify(file));
}

test("a report comes back as it was made, and says so near its beginning", () => {
	const report = parseReport(text);
	expect(report).toEqual({ ok: true, value: { log: expect.anything(), note: noteOf(log, made) } });
	expect(report.ok && report.value.log.events).toHaveLength(3);
	expect(text.indexOf('"report"')).toBeLessThan(text.indexOf('"car"'));
});

test("the same report gives the same text, whatever the order of the log", () => {
	expect(reportText({ ...log, events: log.events.toReversed() }, made)).toBe(text);
});

test("a report is a log to whoever opens it as one, with nothing added", () => {
	const asLog = parseLog(text);
	expect(asLog).toEqual({ ok: true, value: { car: log.car, events: expect.arrayContaining([...log.events]) } });
});

test("a plain log is a report that says nothing", () => {
	const { report: _, ...plain } = JSON.parse(text);
	expect(parseReport(JSON.stringify(plain))).toMatchObject({ ok: true, value: { note: null } });
});

describe("a report is refused whole, with the place, where", () => {
	test.each<[string, (report: Json, file: Json) => unknown, string]>([
		["it is no object", (_, file) => Object.assign(file, { report: 3 }), "report"],
		["it is null", (_, file) => Object.assign(file, { report: null }), "report"],
		["it says nothing", (report) => delete report.says, "report.says"],
		["it was made at no time", (report) => Object.assign(report, { made: "yesterday" }), "report.made"],
		["its app turns the text", (report) => Object.assign(report, { app: "1\u202e" }), "report.app"],
		["its app has a long name", (report) => Object.assign(report, { app: "x".repeat(201) }), "report.app"],
		["its model is half a number", (report) => Object.assign(report, { model: 2.5 }), "report.model"],
		["its model is beyond all", (report) => Object.assign(report, { model: 1e300 }), "report.model"],
		["a content is over one", ({ says }) => Object.assign(says.figures, { high: 3 }), "report.says.figures.high"],
		["a content is text", ({ says }) => Object.assign(says.figures, { median: "0.3" }), "report.says.figures.median"],
		["the range is upside down", ({ says }) => Object.assign(says.figures, { low: 0.9 }), "report.says.figures"],
		[
			"chances add up to more than one",
			({ says }) => Object.assign(says.figures, { below: 0.7, above: 0.7 }),
			"report.says.figures",
		],
		["one chance is there alone", ({ says }) => Object.assign(says.figures, { below: null }), "report.says.figures"],
		[
			"the calibration is unknown",
			({ says }) => Object.assign(says, { calibration: "other" }),
			"report.says.calibration",
		],
		[
			"what is odd has no name",
			({ says }) => Object.assign(says, { surprise: { kind: "boom" } }),
			"report.says.surprise",
		],
		["the last entry has no time", ({ says }) => Object.assign(says, { last: 7 }), "report.says.last"],
	])("%s", (_name, mutate, place) => {
		const result = broken(mutate);
		expect(result).toMatchObject({ ok: false, error: { kind: "bad" } });
		const where = result.ok ? null : result.error.where;
		expect(typeof where === "object" && where && "path" in where && where.path.startsWith(place)).toBe(true);
	});

	test("it reaches for the prototype", () => {
		const hostile = text.replace('"app"', '"__proto__": {"made": "x"}, "app"');
		expect(hostile).not.toBe(text);
		expect(parseReport(hostile)).toMatchObject({ ok: false });
	});

	test("it was cut off anywhere", () => {
		for (let length = 0; length < text.trimEnd().length; length += 97)
			expect(parseReport(text.slice(0, length)).ok).toBe(false);
	});

	test("its log is of a newer version", () => {
		expect(broken((_, file) => Object.assign(file, { version: 2 }))).toMatchObject({
			ok: false,
			error: { kind: "newer" },
		});
	});
});
