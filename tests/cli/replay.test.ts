import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, describe, expect, test, vi } from "vitest";
import { main } from "../../src/cli/replay";
import { formatLog } from "../../src/store/backup";
import { aCar, aFill, aFlash, aLevel, aLog, aStart, aTankReading, aVoid } from "../helpers/logs";

let folder = "";

beforeAll(async () => {
	folder = await mkdtemp(join(tmpdir(), "heeltap-"));
});

afterAll(() => rm(folder, { recursive: true }));

afterEach(() => {
	vi.restoreAllMocks();
});

async function file(contents: string | Uint8Array, name = "log.json"): Promise<string> {
	const path = join(folder, name);
	await writeFile(path, contents);
	return path;
}

/** What main prints, and its status. */
async function run(...args: string[]): Promise<{ status: number; out: string; err: string }> {
	const printed = { out: "", err: "" };
	for (const [stream, key] of [
		[process.stdout, "out"],
		[process.stderr, "err"],
	] as const) {
		vi.spyOn(stream, "write").mockImplementation((text, ...rest) => {
			printed[key] += String(text);
			for (const done of rest) if (typeof done === "function") done();
			return true;
		});
	}
	const status = await main(args);
	vi.restoreAllMocks();
	return { status, ...printed };
}

describe("replay", () => {
	test("prints a line for every event that counts, in order, with the keys of the contract", async () => {
		const { status, out, err } = await run(await file(formatLog(aLog())));
		expect({ status, err }).toEqual({ status: 0, err: "" });
		expect(out).toMatch(/}\n$/);
		const lines = out
			.trimEnd()
			.split("\n")
			.map((line) => JSON.parse(line));
		// aLog() voids its level; flashing the car is no event of the tank.
		expect(lines.map(({ id }) => id)).toEqual(["start", "fill", "pump", "tank", "trim"]);
		for (const line of lines) {
			expect(Object.keys(line)).toEqual([
				"id",
				"at",
				"median",
				"low",
				"high",
				"below",
				"above",
				"lawfulLow",
				"lawfulHigh",
			]);
			for (const value of Object.values(line).slice(2)) expect(value).toBeTypeOf("number");
		}
		expect(lines[1].at).toBe(aFill().at);
	});

	test("prints the same whatever the order of the events", async () => {
		const text = JSON.stringify({ format: "heeltap-log", version: 1, ...aLog(), events: [...aLog().events].reverse() });
		expect(await run(await file(text))).toEqual(await run(await file(formatLog(aLog()))));
	});

	test("prints no chances where the car has no calibration", async () => {
		const log = aLog({ car: aCar({ calibrations: [] }), events: [aStart()] });
		const { out } = await run(await file(formatLog(log)));
		expect(JSON.parse(out)).toMatchObject({ id: "start", below: null, above: null });
	});

	test("prints nothing for a log without events, or with none that counts", async () => {
		const events = [[], [aFlash()], [aLevel(), aVoid()]];
		for (const some of events) {
			expect(await run(await file(formatLog(aLog({ events: some }))))).toEqual({ status: 0, out: "", err: "" });
		}
	});
});

describe("replay refuses, in one line and with nothing printed,", () => {
	const refusals: [name: string, args: () => Promise<string[]>, line: RegExp][] = [
		["no file", async () => [], /^usage: npm run --silent replay -- FILE \(one log file\)\n$/],
		["two files", async () => ["a", "b"], /^usage: /],
		["a file that is not there", async () => [join(folder, "none")], /none: there is no such file\n$/],
		["a name with a line break", async () => ["a\nb"], /^a\\u000ab: there is no such file\n$/],
		["a directory", async () => [folder], /: it is a directory: name the log file in it\n$/],
		[
			"a file that is no text",
			async () => [await file(Uint8Array.of(0x89, 0x50, 0xff))],
			/: the file is not UTF-8 text/,
		],
		[
			"an empty file",
			async () => [await file("")],
			/log\.json: the file: is empty: choose a file that Heeltap saved\n$/,
		],
		[
			"broken JSON",
			async () => [await file('{"a": 1,\n"b" 2}')],
			/log\.json: line 2, column 5: expected a colon, got "2"\n$/,
		],
		[
			"a bad event",
			async () => [await file(formatLog(aLog({ events: [aStart(), aFill({ litres: 0 })] })))],
			/log\.json: events\[1\] \(id "fill"\) litres: must be more than 0 L and at most 2000 L, got 0\n$/,
		],
		[
			"a newer log",
			async () => [await file('{"format": "heeltap-log", "version": 2}')],
			/log\.json: version: made by a newer version of the app: update the app\n$/,
		],
	];

	test.each(refusals)("%s", async (_name, args, line) => {
		const { status, out, err } = await run(...(await args()));
		expect({ status, out }).toEqual({ status: 1, out: "" });
		expect(err).toMatch(line);
		expect(err.split("\n")).toHaveLength(2);
	});
});

test("replay takes a byte-order mark", async () => {
	const { status } = await run(await file(`\uFEFF${formatLog(aLog({ events: [aTankReading()] }))}`));
	expect(status).toBe(0);
});
