import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { ethanolOfByte, readByte, trimOfByte } from "../../../src/domain/readings/obd";

const hex = (byte: number) => byte.toString(16).padStart(2, "0");

test("ethanolOfByte() scales PID 52 as SAE J1979 does: A·100/255 %", () => {
	expect([0, 77, 128, 255].map(ethanolOfByte)).toEqual([0, 77 / 255, 128 / 255, 1]);
	expect(ethanolOfByte(0x4d) * 100).toBeCloseTo(30.196, 3);
});

test("trimOfByte() scales PIDs 06 to 09 as SAE J1979 does: (A − 128)·100/128 %", () => {
	expect([0, 128, 132, 255].map(trimOfByte).map((trim) => trim * 100)).toEqual([-100, 0, 3.125, 99.21875]);
});

describe("readByte()", () => {
	const read = (typed: string) => readByte(typed, ["52"]);
	const value = (typed: string) => {
		const result = read(typed);
		return result.ok ? result.value : result.error;
	};

	test("takes any byte as hexadecimal where it is marked so, or has a letter", () => {
		fc.assert(
			fc.property(fc.nat(255), (byte) => {
				for (const typed of [`0x${hex(byte)}`, `$${hex(byte)}`, ` ${hex(byte).toUpperCase()}h `])
					expect(value(typed)).toEqual({ byte, as: "hexadecimal", inHex: null });
				if (/[a-f]/.test(hex(byte))) expect(value(hex(byte))).toMatchObject({ byte, as: "hexadecimal" });
			}),
		);
	});

	test("takes digits as decimal, and says what they would be in hexadecimal where that can be meant", () => {
		expect(value("77")).toEqual({ byte: 77, as: "decimal", inHex: 0x77 });
		expect(value("7")).toEqual({ byte: 7, as: "decimal", inHex: null });
		expect(value("119")).toEqual({ byte: 119, as: "decimal", inHex: null });
		fc.assert(
			fc.property(fc.nat(255), (byte) => {
				expect(value(String(byte))).toMatchObject({ byte, as: "decimal" });
			}),
		);
	});

	test("finds the byte in a whole response, with or without a header", () => {
		for (const typed of ["41 52 4D", "41524d", "7E8 03 41 52 4D 00 00", "48 6B 10 41 52 4D 9C", ">41 52 4D"])
			expect(value(typed)).toEqual({ byte: 0x4d, as: "response", inHex: null });
		expect(value("41 51 01")).toBe("otherPid");
		expect(readByte("41 07 7C", ["06"])).toEqual({ ok: false, error: "otherPid" });
		expect(readByte("41 06 7C", ["06"])).toMatchObject({ ok: true, value: { byte: 0x7c } });
	});

	test("says why it is no byte", () => {
		expect(["", "  ", "256", "0x100", "1ff", "30.2", "30 %", "-3", "xyz"].map(value)).toEqual([
			"empty",
			"empty",
			"tooLarge",
			"tooLarge",
			"tooLarge",
			"notAByte",
			"notAByte",
			"notAByte",
			"notAByte",
		]);
	});

	test("takes nothing for a byte that has more before or behind it", () => {
		for (const byte of ["0x4D", "$4D", "4Dh", "4D", "77", "41524D"])
			for (const typed of [`-${byte}`, `${byte} %`, `${byte}.5`]) expect(value(typed), typed).toBe("notAByte");
	});

	test("never throws, and never gives more than a byte", () => {
		fc.assert(
			fc.property(fc.string({ unit: fc.constantFrom(..."0123456789abcdefxh$ >.%-") }), (typed) => {
				const result = read(typed);
				if (result.ok) expect(result.value.byte === (result.value.byte & 255)).toBe(true);
			}),
			{ numRuns: 2000 },
		);
	});
});
