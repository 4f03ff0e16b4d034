import fc from "fast-check";
import { expect, test } from "vitest";
import { textsIn } from "../../src/app/pastedReports";

test("reports are found one after the other, with whatever stands between them", () => {
	expect(textsIn('Anna, 20:14: {"a": {"b": "}"}}\n\nand {"c": "\\"}{"}')).toEqual([
		'{"a": {"b": "}"}}',
		'{"c": "\\"}{"}',
	]);
});

test("a text without a brace has none", () => {
	expect(textsIn("no report } here")).toEqual([]);
	expect(textsIn("")).toEqual([]);
});

test("one that was cut off does not swallow the next", () => {
	const whole = '{\n  "format": "heeltap-log"}';
	const cut = '{\n  "format": "heeltap-log", "car": {"name": "Gr';
	expect(textsIn(`${cut}\n${whole}`)).toEqual([`${cut}\n`, whole]);
	expect(textsIn(`${whole}${cut}`)).toEqual([whole, cut]);
});

test("any values that begin like a file come back as they were", () => {
	const file = fc.jsonValue({ maxDepth: 3 }).map((value) => JSON.stringify({ format: "heeltap-log", value }));
	const between = fc.string().filter((text) => !/[{}]/.test(text));
	fc.assert(
		fc.property(fc.array(fc.tuple(file, between), { minLength: 1, maxLength: 5 }), (parts) => {
			expect(textsIn(parts.flat().join(""))).toEqual(parts.map(([text]) => text));
		}),
		{ seed: 6, numRuns: 200 },
	);
});
