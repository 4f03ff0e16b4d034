import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { newlineOf, rowReader } from "../../src/datalog/rows";

/** As a spreadsheet would write it: fields in quotes where they must be. */
function csv(rows: readonly (readonly string[])[], delimiter: string, newline: string): string {
	const quoted = (field: string) =>
		/["\r\n]/.test(field) || field.includes(delimiter) ? `"${field.replaceAll('"', '""')}"` : field;
	return rows.map((row) => row.map(quoted).join(delimiter)).join(newline);
}

const field = fc.string({ unit: fc.constantFrom("1", "2", ".", ",", ";", '"', " ", "°", "\n", "a"), maxLength: 6 });
const rows = fc
	.tuple(fc.integer({ min: 2, max: 4 }), fc.integer({ min: 1, max: 12 }))
	.chain(([width, count]) =>
		fc.array(fc.array(field, { minLength: width, maxLength: width }), { minLength: count, maxLength: count }),
	);

describe("rowReader()", () => {
	test("reads what was written, wherever the text is cut into pieces", () => {
		fc.assert(
			fc.property(
				rows,
				fc.constantFrom(",", ";", "\t"),
				fc.constantFrom("\n" as const, "\r\n" as const),
				fc.array(fc.nat(), { maxLength: 6 }),
				(rows, delimiter, newline, cuts) => {
					const text = csv(rows, delimiter, newline);
					const reader = rowReader({ delimiter, newline });
					const ends = [...cuts.map((cut) => cut % (text.length + 1)), text.length].sort((a, b) => a - b);
					let from = 0;
					const read = ends.flatMap((end) => {
						const piece = text.slice(from, end);
						from = end;
						return piece === "" ? [] : [...reader.push(piece)];
					});
					// Nobody's log ends with a blank line of its own.
					const last = [...read, ...reader.end()];
					expect(last.map((row) => row.join("\u0000"))).toEqual(rows.map((row) => row.join("\u0000")));
				},
			),
		);
	});
	test("gives up on a quotation mark that nobody closes, and loses no rows for it", () => {
		const reader = rowReader({ delimiter: ",", newline: "\n" });
		const lines = Array.from({ length: 20_000 }, (_, i) => (i === 3 ? `"${i},1` : `${i},1`));
		const read = [...reader.push(lines.join("\n")), ...reader.end()];
		expect(read).toHaveLength(lines.length);
		expect(read[3]).toEqual(['"3', "1"]);
	});
});

test("newlineOf() finds the line ends of all systems", () => {
	expect(["a\nb", "a\r\nb", "a\rb", "a"].map(newlineOf)).toEqual(["\n", "\r\n", "\r", "\n"]);
});
