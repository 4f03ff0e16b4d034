/** What would take minutes or gigabytes if anything in it grew with the square of a file ends the tests' patience. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { openLog } from "../../src/datalog/openLog";
import { type LogRead, readLog } from "../../src/datalog/readLog";
import { hostileCsvs } from "../helpers/hostileCsv";
import { csvOf } from "../helpers/logCsv";

const drive = { seed: "hostile", trim: 0.05, seconds: 60 };
const sound = csvOf(drive);
const rows = sound.trimEnd().split("\n").length - 1;
const head = csvOf({ ...drive, seconds: 600 });

async function read(...parts: BlobPart[]): Promise<LogRead | string> {
	const file = new Blob(parts);
	const log = await openLog(file);
	if (!log.ok) return log.error;
	if (!log.value.columns.some((column) => column?.role === "time")) return "no time";
	return readLog(file, log.value, log.value.columns, () => {});
}

/** Figures that are no numbers, by their places; NaN stands in plots for what is missing. */
function oddFigures(value: unknown, place = ""): string[] {
	if (typeof value === "number") return Number.isFinite(value) ? [] : [`${place} is ${value}`];
	if (ArrayBuffer.isView(value))
		return [...(value as Float32Array)].some((each) => Math.abs(each) === Infinity) ? [place] : [];
	if (typeof value !== "object" || value === null) return [];
	return Object.entries(value).flatMap(([name, inner]) => oddFigures(inner, `${place}.${name}`));
}

const files = 250;

test(`each of ${files} mangled data logs is read, its figures finite, or refused by name`, {
	timeout: 300_000,
}, async () => {
	const outcomes = { read: 0, refused: 0 };
	await fc.assert(
		fc.asyncProperty(hostileCsvs, async ({ bytes }) => {
			const result = await read(bytes);
			outcomes[typeof result === "string" ? "refused" : "read"]++;
			if (typeof result !== "string") expect(oddFigures(result)).toEqual([]);
		}),
		{ seed: 1, numRuns: files },
	);
	expect(outcomes.read).toBeGreaterThan(files / 4);
	expect(outcomes.refused).toBeGreaterThan(files / 20);
});

describe("a data log", () => {
	test("of a single line is refused, however long it is", async () => {
		const line = "1,".repeat(500_000);
		expect(await read(...Array(20).fill(line))).toBe("tooWide");
		expect(await read(...Array(20).fill("x".repeat(1e6)))).toBe("oneColumn");
	});
	test("that goes on as one line of megabytes is read up to there and behind it", async () => {
		for (const piece of ["1,", '"', '""', '" ', " ", '",', "\u0000"]) {
			const parts = piece === "1," ? 50 : 3;
			const result = await read(head, ...Array(parts).fill(piece.repeat(2e6 / piece.length)), "\n", sound);
			if (typeof result === "string") throw new Error(result);
			expect(result.rows, piece).toBe(11 * rows);
		}
	});
	test("of a hundred thousand columns is refused", async () => {
		const names = Array(100_000).fill("a").join();
		expect(await read([names, Array(100_000).fill("1").join()].join("\n"))).toBe("tooWide");
		const wide = [Array(1001).fill("RPM").join(), ...Array(5).fill(Array(1001).fill("1").join())];
		expect(await read(wide.join("\n"))).toBe("tooWide");
	});
	test("of a thousand columns with one name is read", async () => {
		const names = ["Time (s)", ...Array(999).fill("Short Term Fuel Trim Bank 1 (%)")];
		const lines = Array.from({ length: 20 }, (_, i) => [i, ...Array(999).fill(1)].join());
		expect(await read([names.join(), ...lines].join("\n"))).toMatchObject({ rows: 20 });
	});
	test("with headers like books is read", async () => {
		const names = [
			"Time (s)",
			"total ".repeat(5_000),
			`a${"(".repeat(30_000)}`,
			"STFT,".repeat(10) + "λ".repeat(20_000),
		];
		const lines = Array.from({ length: 20 }, (_, i) => `${i},1,2,3`);
		expect(await read([names.map((name) => `"${name}"`).join(), ...lines].join("\n"))).toMatchObject({ rows: 20 });
	});
	test("with a quotation mark in every line that nobody closes loses no rows", async () => {
		const lines = sound.trimEnd().split("\n");
		const quoted = lines.map((line, i) => (i < 5 ? line : `${line.replace(/,[^,]*$/, "")},"7`));
		expect(await read(quoted.join("\n"))).toMatchObject({ rows, skipped: [] });
	});
	test("with numbers like books, or beyond all sense, is read without them", async () => {
		const lines = sound.trimEnd().split("\n");
		for (const odd of ["1".repeat(90_000), `1${" ".repeat(90_000)}é1`, "1e400", "9.9e37", "-Infinity"]) {
			const result = await read(
				lines.map((line, i) => (i % 50 === 49 ? line.replace(/,[^,]*$/, `,${odd}`) : line)).join("\n"),
			);
			if (typeof result === "string") throw new Error(result);
			expect(oddFigures(result)).toEqual([]);
			expect(result.rows).toBe(rows);
		}
	});
	test("with formulas and zeros in it is text like any other", async () => {
		const lines = sound.trimEnd().split("\n");
		const odd = [...lines, `=cmd|' /C calc'!A0${",".repeat(10)}`, `\u0000${",1".repeat(10)}`, "@SUM(A1:A9)"];
		const padded = head + odd.slice(1).join("\n");
		const result = await read(padded);
		expect(result).toMatchObject({
			skipped: [
				{ why: "noTime", count: 2 },
				{ why: "otherWidth", count: 1 },
			],
		});
	});
});
