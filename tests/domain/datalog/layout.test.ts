import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { layoutOf, usualWidth } from "../../../src/domain/datalog/layout";

const data = (count: number, width = 3) =>
	Array.from({ length: count }, (_, i) => Array.from({ length: width }, (_, j) => String(i + j)));

describe("layoutOf()", () => {
	test("finds the header above the numbers, and a row of units under it", () => {
		expect(layoutOf([["Time", "RPM", "ECT"], ...data(5)])).toEqual({
			headers: ["Time", "RPM", "ECT"],
			units: ["", "", ""],
			firstData: 1,
		});
		expect(layoutOf([["Time", "RPM", "ECT"], ["[s]", "rpm", "°C"], ...data(5)])).toEqual({
			headers: ["Time", "RPM", "ECT"],
			units: ["s", "rpm", "°C"],
			firstData: 2,
		});
	});
	test("passes over notes before the header, even those that hold numbers or as many fields", () => {
		const notes = [["Logger 7"], ["Recorded", "2026"], [""], ["Firmware", "3.1", "b"], ["1", "2", "3"]];
		const layout = layoutOf([...notes, ["Time", "RPM", "ECT"], ...data(8)]);
		expect(layout).toMatchObject({ headers: ["Time", "RPM", "ECT"], firstData: 6 });
	});
	test("names columns that have no name, and tells apart those that share one", () => {
		expect(layoutOf(data(4))).toMatchObject({ headers: ["Column 1", "Column 2", "Column 3"], firstData: 0 });
		expect(layoutOf([["A", "A", ""], ...data(4)])).toMatchObject({ headers: ["A", "A (2)", "Column 3"] });
	});
	test("minds neither a separator at the end of the rows nor fields left empty", () => {
		const rows = [
			["1", "2", "", ""],
			["", "2", "3", ""],
			["2", "", "", ""],
		];
		expect(layoutOf([["Time", "RPM", "ECT"], ...rows, ...rows])).toMatchObject({ firstData: 1 });
	});
	test("takes a header or rows with one field more or less, and none with more than that", () => {
		const named = { headers: ["Time", "RPM", "ECT"], firstData: 1 };
		expect(layoutOf([["Time", "RPM", "ECT", ""], ...data(5)])).toMatchObject(named);
		expect(layoutOf([["Time", "RPM", "ECT"], ["1", "2", "3", ""], ["1", "2"], ...data(5)])).toMatchObject(named);
		expect(layoutOf([["Time", "RPM", "ECT"], ["1", "2", "3", "4", "5"], ...data(5)])).toMatchObject({ firstData: 2 });
		expect(layoutOf([["Time", "RPM", "ECT"], ["some", "five", "words", "of", "notes"], ...data(5)])).toMatchObject({
			headers: ["Time", "RPM", "ECT"],
			firstData: 2,
		});
	});
	test("passes over blank lines, wherever they stand", () => {
		const spaced = data(6).flatMap((row) => [row, ["", " ", ""], [""]]);
		expect(layoutOf([["Time", "RPM", "ECT"], [" "], ...spaced])).toMatchObject({
			headers: ["Time", "RPM", "ECT"],
			firstData: 2,
		});
		expect(usualWidth(spaced)).toEqual({ width: 3, share: 1 });
	});
	test("takes rows for numbers where one column in two is words, and where most fields are blank", () => {
		const state = Array.from({ length: 6 }, (_, i) => [String(i), "CL", " ", "", ""]);
		expect(layoutOf([["Time", "Loop", "A", "B", "C"], ...state])).toMatchObject({ firstData: 1 });
		const words = state.map(([time]) => [time, "CL", "warm", "", ""]);
		expect(layoutOf([["Time", "Loop", "A", "B", "C"], ...words])).toBe("noNumbers");
	});
	test("takes a row for units only where most of what it says are units", () => {
		const rows = data(6, 5);
		expect(layoutOf([["A", "B", "C", "D", "E"], ["s", "", "rpm", "", ""], ...rows])).toMatchObject({
			headers: ["A", "B", "C", "D", "E"],
			units: ["s", "", "rpm", "", ""],
		});
		expect(layoutOf([["one", "two", "three", "four", "five"], ["Speed", "Load", "", "", ""], ...rows])).toMatchObject({
			headers: ["Speed", "Load", "Column 3", "Column 4", "Column 5"],
			units: ["", "", "", "", ""],
		});
	});
	test("says what is missing where it is no log", () => {
		expect(layoutOf([["one"], ["two"]])).toBe("oneColumn");
		expect(layoutOf([])).toBe("oneColumn");
		expect(
			layoutOf([
				["a", "b"],
				["c", "d"],
				["e", "f"],
			]),
		).toBe("noNumbers");
	});
	test("refuses more columns than any logger writes", () => {
		expect(layoutOf(data(5, 1001))).toBe("tooWide");
		expect(layoutOf(data(5, 1000))).toMatchObject({ firstData: 0 });
	});
	test("shows headers on one line, cut to what can be read, and with nothing that turns a text", () => {
		const header = ["Time", "a\nb\u202ec", `${"x".repeat(200)}`];
		expect(layoutOf([header, ...data(5)])).toMatchObject({ headers: ["Time", "a b c", "x".repeat(100)] });
	});
	test("finds the first row of numbers however many notes stand before it", () => {
		const note = fc.array(fc.constantFrom("car", "driver", "x y", "", "v. b"), { maxLength: 5 });
		fc.assert(
			fc.property(fc.array(note, { maxLength: 20 }), fc.integer({ min: 4, max: 30 }), (notes, count) => {
				const layout = layoutOf([...notes, ["Time", "RPM", "ECT", "TP"], ...data(count, 4)]);
				// A note may look like a header, but never like numbers.
				if (typeof layout !== "string" && usualWidth([...notes, ...data(count, 4)]).width === 4)
					expect(layout.firstData).toBe(notes.length + 1);
			}),
		);
	});
});
