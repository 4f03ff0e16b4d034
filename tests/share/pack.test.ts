import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { MangledError, reader, writer } from "../../src/share/bytes";
import { readLetters, writeLetters } from "../../src/share/letters";
import { packed, unpacked } from "../../src/share/pack";
import { vocabulary } from "../../src/share/vocabulary";
import { logs } from "../helpers/logs";

const seeded = { seed: 6, numRuns: 500 };
const uuid = "0f8fad5b-d9cb-469f-a165-70867728950e";

describe("unpacked(packed(x)) is x", () => {
	test("for whatever JSON holds, to the last bit and in the same order", () => {
		const value = fc.jsonValue({ maxDepth: 5 }).filter((value) => !JSON.stringify(value).includes("__proto__"));
		fc.assert(
			fc.property(value, (value) => {
				// JSON knows no -0, so what comes back may be held against the text.
				expect(JSON.stringify(unpacked(packed(value)))).toBe(JSON.stringify(value));
				expect(unpacked(packed(value))).toEqual(value);
			}),
			seeded,
		);
	});
	test("for every log", () => {
		fc.assert(
			fc.property(logs, (log) => {
				expect(unpacked(packed(log))).toEqual(log);
			}),
			{ ...seeded, numRuns: 200 },
		);
	});
	test.each([0.1 + 0.2, -0, 5e-324, 1.7976931348623157e308, -12.345, 63, 64, 2 ** 53, 0.123456789, 1e21])(
		"for the number %s",
		(value) => {
			expect(Object.is(unpacked(packed(value)), value)).toBe(true);
		},
	);
	test.each([
		"2026-06-01T17:30:00+02:00",
		"2026-06-01T17:30:00Z",
		"2026-06-01T17:30:00.125-03:30",
		"2026-06-01T17:30:00-00:00",
		"1969-12-31T23:59:59.999Z",
		"2026-02-30T12:00:00Z",
		"2026-06-01T17:30Z",
		uuid,
		uuid.toUpperCase(),
		"",
		"Straße nach Süden – „Nord“",
		"\u0000\u0001",
		"автозаправка",
		"👨‍👩‍👧‍👦",
		"toString",
	])("for the text %j", (value) => {
		expect(unpacked(packed([value, value]))).toEqual([value, value]);
	});
});

test("known words are a byte, an id 17, a time 8, a decimal its digits", () => {
	expect(packed("calibratedFor")).toHaveLength(1);
	expect(packed(uuid)).toHaveLength(17);
	expect(packed([uuid, uuid])).toHaveLength(1 + 17 + 2);
	expect(packed("2026-06-01T17:30:00+02:00").length).toBeLessThanOrEqual(8);
	expect(packed(15.57)).toHaveLength(3);
});

test("letters: every code belongs to one text, and sentences take less than 5.5 bits a letter", () => {
	const sentence = "Zündung an, zehn Sekunden warten, then choose slot 1 and burn the tank down on E10.";
	const out = writer();
	writeLetters(out, sentence);
	expect(out.bytes.length * 8).toBeLessThan(sentence.length * 5.5);
	// The table is a full code: any bits are some text, if they only go on long enough.
	fc.assert(
		fc.property(fc.uint8Array({ minLength: 1, maxLength: 60 }), (bytes) => {
			try {
				readLetters(reader(bytes), 100);
			} catch (error) {
				expect(error).toBeInstanceOf(MangledError);
				expect((error as Error).message).not.toBe("no letter has this code");
			}
		}),
		seeded,
	);
});

test("the words of the format are each there once, and no more than have a byte", () => {
	expect(new Set(vocabulary).size).toBe(vocabulary.length);
	expect(vocabulary.length).toBeLessThanOrEqual(0x70);
});

describe("unpacked() is a value or a MangledError, never anything else,", () => {
	const outcome = (bytes: Uint8Array): "value" | "mangled" => {
		try {
			unpacked(bytes);
			return "value";
		} catch (error) {
			expect(error).toBeInstanceOf(MangledError);
			return "mangled";
		}
	};
	test("for bytes of chance", () => {
		fc.assert(
			fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => void outcome(bytes)),
			{ ...seeded, numRuns: 5000 },
		);
	});
	test("for claims of billions, deep brackets, fields from birth and fields twice", () => {
		const count = (value: number) => writer().count(value).bytes;
		const proto = [...packed({ x: 1 })];
		const named = (name: string) => Uint8Array.from([0xb1, ...packed(name), 1]);
		expect(outcome(Uint8Array.from([0xdb, ...count(2 ** 40)]))).toBe("mangled");
		expect(outcome(Uint8Array.from([0xda, ...count(2 ** 40)]))).toBe("mangled");
		expect(outcome(Uint8Array.from([0xd8, ...count(2 ** 40), 65]))).toBe("mangled");
		expect(outcome(Uint8Array.from([0xd9, 7]))).toBe("mangled");
		expect(outcome(Uint8Array.from(Array(300).fill(0xc1)))).toBe("mangled");
		expect(outcome(named("__proto__"))).toBe("mangled");
		expect(outcome(Uint8Array.from([0xb2, ...proto.slice(1), ...proto.slice(1)]))).toBe("mangled");
		expect(outcome(Uint8Array.from([...proto, 0]))).toBe("mangled");
		// Fields from birth are plain fields here, and nothing is inherited by them.
		expect(unpacked(named("constructor"))).toEqual(JSON.parse('{"constructor":1}'));
		expect(({} as Record<string, unknown>).polluted).toBeUndefined();
	});
});
