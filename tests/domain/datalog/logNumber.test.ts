import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { decimalMarkOf, looksNumeric, readLogNumber } from "../../../src/domain/datalog/logNumber";
import { instantOf, readClock, readLogTime } from "../../../src/domain/datalog/logTime";
import { inCoreUnit, timeUnitOf, unitFor } from "../../../src/domain/datalog/resolveUnit";

const number = fc.double({ min: -1e7, max: 1e7, noNaN: true }).map((value) => Math.round(value * 1000) / 1000 + 0);

describe("readLogNumber()", () => {
	test("reads back what any locale writes, with its thousands and its decimals", () => {
		const locales = { en: ".", de: ",", fr: ",", "de-CH": "." } as const;
		for (const [locale, mark] of Object.entries(locales)) {
			const format = new Intl.NumberFormat(locale, { maximumFractionDigits: 3 });
			fc.assert(
				fc.property(number, (value) => {
					expect(readLogNumber(format.format(value), mark)).toBe(value);
				}),
			);
		}
	});
	test("takes nothing that no sensor shows for a number", () => {
		for (const text of ["1e400", "-1e400", "9.9e37", "1e16", "Infinity", "1".repeat(61), `1${",".repeat(1e5)}é1`])
			expect(readLogNumber(text, "."), text.slice(0, 20)).toBeNaN();
		expect(readLogNumber("1764000000000", ".")).toBe(1764000000000);
	});
	test("reads back plain numbers with either mark, spaces around, a sign or a unit behind", () => {
		const dress = fc.constantFrom(
			(text: string) => ` ${text} `,
			(text: string) => `${text} %`,
			(text: string) => `${text}°C`,
		);
		fc.assert(
			fc.property(number, dress, fc.constantFrom(".", ","), (value, dressed, mark) => {
				const text = value.toFixed(3).replace(".", mark);
				expect(readLogNumber(dressed(text), mark as "." | ",")).toBe(Number(value.toFixed(3)));
				expect(readLogNumber(`+${text.replace("-", "")}`, mark as "." | ",")).toBe(Math.abs(Number(value.toFixed(3))));
			}),
		);
	});
	test("takes exponents and a typographic minus", () => {
		expect(readLogNumber("1.5e-3", ".")).toBe(0.0015);
		expect(readLogNumber("\u22122,5", ",")).toBe(-2.5);
	});
	test("refuses what is no number or may be two", () => {
		for (const text of [
			"",
			" ",
			"-",
			"N/A",
			"NaN",
			"0x1F",
			"Infinity",
			"1,23",
			"1,2345",
			"0,123",
			"12:30",
			"1.2.3",
			"--5",
		])
			expect(readLogNumber(text, "."), text).toBeNaN();
		for (const text of ["1.5", "0.500", "1.23,4", "1,2,3"]) expect(readLogNumber(text, ","), text).toBeNaN();
	});
});

describe("decimalMarkOf()", () => {
	test("tells the comma from fields that only a comma explains", () => {
		expect(decimalMarkOf(["12,5", "0,25", "830"])).toBe(",");
		expect(decimalMarkOf(["1.234,5"])).toBe(",");
		expect(decimalMarkOf([",5"])).toBe(",");
	});
	test("takes the point where commas may be thousands, and where there are no decimals", () => {
		expect(decimalMarkOf(["1,234.5", "12,500"])).toBe(".");
		expect(decimalMarkOf(["1,234", "800"])).toBe(".");
		expect(decimalMarkOf(["12", "abc"])).toBe(".");
	});
});

test("looksNumeric() knows numbers by either mark and times of day, and no words", () => {
	for (const field of ["1", "-1.5", "+0,8", "1e-3", ".5", "17:30:01.250", "0:05", "2026-06-01 17:30:00"])
		expect(looksNumeric(field), field).toBe(true);
	for (const field of ["", "rpm", "B1S1", "-", "1 of 3 banks"]) expect(looksNumeric(field), field).toBe(false);
});

describe("readClock()", () => {
	test("reads times of day, stopwatches and dates", () => {
		expect(readClock("17:30:01.250")).toBe(17 * 3600 + 30 * 60 + 1.25);
		expect(readClock("17:30:01,25")).toBe(readClock("17:30:01.250"));
		expect(readClock("17:30:01:250")).toBe(readClock("17:30:01.250"));
		expect(readClock("02:05.5")).toBe(125.5);
		expect(readClock("12:00:00 AM")).toBe(0);
		expect(readClock("5:30:00 pm")).toBe(readClock("17:30:00"));
		expect(readClock("2026-06-01T17:30:00+02:00")).toBe(Date.parse("2026-06-01T17:30:00+02:00") / 1000);
		expect(readClock("2026-06-01 17:30:00.5")).toBe(Date.parse("2026-06-01T17:30:00.500Z") / 1000);
		expect(readClock("yesterday")).toBeNaN();
	});
	test("counts a day's seconds the same with or without a date in front", () => {
		const second = fc.integer({ min: 0, max: 86_399 });
		const text = (s: number) => new Date(s * 1000).toISOString().slice(11, 19);
		fc.assert(
			fc.property(second, second, (a, b) => {
				expect(readClock(text(a)) - readClock(text(b))).toBe(a - b);
				expect(readClock(`01.06.2026 ${text(a)}`) - readClock(`01.06.2026 ${text(b)}`)).toBe(a - b);
			}),
		);
	});
	test("reads a clock in a column of clocks, and a number in any other, whatever spaces surround it", () => {
		expect(readLogTime(" 17:30:00.5 ", "clock", ".")).toBe(17.5 * 3600 + 0.5);
		expect([readLogTime("1,5", "min", ","), readLogTime("90", "s", "."), readLogTime("90000", "ms", ".")]).toEqual([
			90, 90, 90,
		]);
		expect(readLogTime("17:30:00", "s", ".")).toBeNaN();
		expect(readLogTime("90", "clock", ".")).toBeNaN();
	});
	test("only what counts from 1970 is an instant", () => {
		expect(instantOf(readClock("2026-06-01T17:30:00Z"))).toBe(Date.parse("2026-06-01T17:30:00Z"));
		expect(instantOf(readClock("17:30:00"))).toBeNull();
		expect(instantOf(readClock("01.06.2026 17:30:00"))).toBeNull();
		expect(instantOf(readLogTime("1780335000000", "ms", "."))).toBe(1780335000000);
	});
});

describe("units that nobody named", () => {
	const spread = (least: number, most: number, median = (least + most) / 2) => ({ least, most, median });
	test("follow from the values", () => {
		expect(unitFor("coolant", spread(15, 96))).toBe("°C");
		expect(unitFor("coolant", spread(60, 205))).toBe("°F");
		expect(unitFor("throttle", spread(0.1, 0.95))).toBe("fraction");
		expect(unitFor("throttle", spread(12, 80))).toBe("%");
		expect(unitFor("lambda", spread(0.8, 2, 1))).toBe("lambda");
		expect(unitFor("lambda", spread(11, 22, 14.6))).toBe("AFR");
		expect(unitFor("manifold", spread(0.3, 2.1))).toBe("bar");
		expect(unitFor("manifold", spread(-11, 14, -5))).toBe("psi");
		expect(unitFor("manifold", spread(28, 102))).toBe("kPa");
		expect(unitFor("manifold", spread(280, 1020))).toBe("mbar");
		expect(unitFor("short1", spread(-12, 9))).toBe("%");
		expect(unitFor("short1", spread(-0.12, 0.09))).toBe("fraction");
		expect(unitFor("long1", spread(0.9, 1.1))).toBe("factor");
		expect(unitFor("long1", spread(0, 0))).toBe("%");
		expect(unitFor("ethanol", spread(0.2, 0.5))).toBe("fraction");
	});
	test("of the time follow from its steps, and text is a clock whatever the header says", () => {
		const counted = (step: number) => Array.from({ length: 20 }, (_, i) => String(100 + i * step));
		expect(timeUnitOf(counted(0.1), null, ".")).toBe("s");
		expect(timeUnitOf(counted(100), null, ".")).toBe("ms");
		expect(timeUnitOf(["1780335000000", "1780335000001"], null, ".")).toBe("ms");
		expect(timeUnitOf(counted(0.002), "min", ".")).toBe("min");
		expect(timeUnitOf(["17:30:00.0", "17:30:00.1"], "s", ".")).toBe("clock");
	});
	test("convert to the core's", () => {
		expect(inCoreUnit(212, "°F")).toBeCloseTo(100, 10);
		expect(inCoreUnit(14.696, "psi")).toBeCloseTo(101.33, 2);
		expect(inCoreUnit(14.7, "AFR")).toBe(1);
		expect(inCoreUnit(1.05, "factor")).toBeCloseTo(0.05, 12);
		expect(inCoreUnit(60, "mph")).toBeCloseTo(96.56, 2);
	});
});
