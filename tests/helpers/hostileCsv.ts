/** Data logs that accidents and malice make of a sound one. */
import fc from "fast-check";
import { type HostileFile, hostileTexts, onBytes, type Picks, pick } from "./hostileLogs";
import { csvOf } from "./logCsv";

const sound = csvOf({ seed: "hostile", trim: 0.05, seconds: 60 });

const fields = [
	...hostileTexts,
	..."1e400 -1e400 NaN Infinity 9.9e37 3.4e38 1e15 -0 0x10 1,5 1.000,5 ∞ null #DIV/0! =1+1 @SUM(A1) 12:61 24:00:00 1e-320".split(
		" ",
	),
	'"',
	'""',
	'"a\nb"',
	'"never closed',
	'closed before"',
	"",
	"1".repeat(70_000),
	`1${",".repeat(300)}é1`,
	"\u0000",
];

type Change = (lines: readonly string[], picks: Picks) => readonly string[];

const onLines: Record<string, Change> = {
	"a field": (lines, [at, where, what]) => edited(lines, at, (line) => withField(line, where, pick(fields, what))),
	"a field of the header": (lines, [where, what]) =>
		edited(lines, 0, (line) => withField(line, where, pick(fields, what))),
	"a column of them": (lines, [where, what]) =>
		lines.map((line, i) => (i === 0 ? line : withField(line, where, pick(fields, what)))),
	"a column gone": (lines, [where]) => lines.map((line) => without(line.split(","), where).join(",")),
	"a line twice": (lines, [at, times]) =>
		lines.flatMap((line, i) => (i === at % lines.length ? Array(1 + (times % 50)).fill(line) : [line])),
	"lines in another order": (lines, [by]) => [...lines].sort((a, b) => ((a.length * by) % 7) - ((b.length * by) % 7)),
	"another separator": (lines, [what]) =>
		lines.map((line) => line.replaceAll(",", pick([";", "\t", "|", " ", ",,"], what))),
	"decimal commas": (lines) => lines.map((line) => line.replaceAll(".", ",")),
	"no header": (lines) => lines.slice(1),
	"another logger's notes": (lines, [what]) => [pick(hostileTexts, what), "", ...lines],
	"a long line": (lines, [at, what]) =>
		edited(lines, at, (line) => line + pick([",", '"', " ", "x", '",'], what).repeat(150_000)),
};

type Step = (bytes: Uint8Array, picks: Picks) => Uint8Array;

const steps: readonly (readonly [string, Step])[] = [
	...Object.entries(onBytes),
	...Object.entries(onLines).map(([name, change]): [string, Step] => [
		name,
		(bytes, picks) => new TextEncoder().encode(change(new TextDecoder().decode(bytes).split("\n"), picks).join("\n")),
	]),
];

export const hostileCsvs: fc.Arbitrary<HostileFile> = fc
	.array(fc.tuple(fc.constantFrom(...steps), fc.array(fc.nat(), { minLength: 4, maxLength: 4 })), {
		minLength: 1,
		maxLength: 3,
	})
	.map((chosen) => {
		const done = chosen.map(([[name], picks]) => `${name} (${picks})`).join(", then ");
		const start: Uint8Array = new TextEncoder().encode(sound);
		const bytes = chosen.reduce(
			(before, [[, step], picks]) => (before.length === 0 ? before : step(before, picks)),
			start,
		);
		return { done, bytes: Uint8Array.from(bytes), [fc.toStringMethod]: () => done };
	});

function edited(lines: readonly string[], at: number, edit: (line: string) => string): readonly string[] {
	return lines.map((line, i) => (i === at % lines.length ? edit(line) : line));
}

function withField(line: string, where: number, put: string): string {
	const row = line.split(",");
	return row.map((field, i) => (i === where % row.length ? put : field)).join(",");
}

function without(row: readonly string[], where: number): readonly string[] {
	return row.filter((_, i) => i !== where % row.length);
}
