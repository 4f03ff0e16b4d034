import { describe, expect, test } from "vitest";
import { openLog } from "../../src/datalog/openLog";
import { readLog } from "../../src/datalog/readLog";
import type { Columns } from "../../src/domain/datalog/role";
import { csvOf } from "../helpers/logCsv";

const drive = { seed: "read", trim: 0.06, seconds: 600 };

async function read(text: string, told?: Columns) {
	const file = new Blob([text]);
	const log = await openLog(file);
	if (!log.ok) throw new Error(log.error);
	const shares: number[] = [];
	const result = await readLog(file, log.value, told ?? log.value.columns, (share) => shares.push(share));
	return { ...result, shares };
}

describe("readLog()", () => {
	test("comes to the same whatever way the log is written", async () => {
		const plain = await read(csvOf(drive));
		expect(plain).toMatchObject({ rows: 6000, skipped: [], ended: null });
		expect(Math.abs((plain.finding.steady?.found?.value ?? 1) - 0.06)).toBeLessThan(0.015);
		const other = await read(csvOf(drive, { delimiter: ";", mark: ",", newline: "\r\n", before: ["Logger 7"] }));
		expect(other.finding).toEqual(plain.finding);
		expect(other.rows).toBe(plain.rows);
	});
	test("gives copies of a log one fingerprint, whatever is read of it, and every other log another", async () => {
		const text = csvOf({ ...drive, seconds: 4000 });
		const { fingerprint, shares } = await read(text);
		expect(shares.length).toBeGreaterThan(1);
		expect(fingerprint).toMatch(/^[0-9a-f]{16}$/);
		expect((await read(text, [{ role: "time", unit: null }])).fingerprint).toBe(fingerprint);
		// One digit in the last row, far behind the first piece.
		const other = text.replace(/\d(?=\D*$)/, (digit) => String((Number(digit) + 1) % 10));
		expect((await read(other)).fingerprint).not.toBe(fingerprint);
	});
	test("tells how far it is, up to the end", async () => {
		const { shares } = await read(csvOf({ ...drive, seconds: 4000, rate: 10 }));
		expect(shares.length).toBeGreaterThan(1);
		expect([...shares].sort((a, b) => a - b)).toEqual(shares);
		expect(shares.at(-1)).toBe(1);
	});
	test("counts the rows that it skips, each kind with its first line", async () => {
		const lines = csvOf(drive).trimEnd().split("\n");
		const row = lines[500];
		lines.splice(500, 0, row.replace(/^[^,]*/, "soon"), "lap 2");
		lines.splice(900, 0, lines[100], "", lines[0]);
		lines.splice(1500, 0, `${lines[1499].split(",")[0]}${",".repeat(10)}`);
		const { skipped, rows } = await read(`${lines.join("\n")}\n`);
		expect(skipped).toEqual([
			{ why: "noTime", count: 2, firstLine: 501 },
			{ why: "otherWidth", count: 1, firstLine: 502 },
			{ why: "noValues", count: 1, firstLine: 1501 },
		]);
		// The row from before counts as the beginning of another recording, as does the one after it.
		expect(rows).toBe(6001);
	});
	test("reads channels that are logged at different times", async () => {
		const lines = csvOf(drive).trimEnd().split("\n");
		const sparse = lines.map((line, i) => {
			if (i === 0) return line;
			return line
				.split(",")
				.map((field, j) => (j === 0 || i % 3 === j % 3 ? field : ""))
				.join(",");
		});
		const [all, few] = await Promise.all([read(lines.join("\n")), read(sparse.join("\n"))]);
		const found = few.finding.steady?.found;
		expect(Math.abs((found?.value ?? 1) - (all.finding.steady?.found?.value ?? 0))).toBeLessThan(0.005);
	});
	test("reads clock times past midnight as one recording", async () => {
		const lines = csvOf({ ...drive, seconds: 300 })
			.trimEnd()
			.split("\n");
		const asClock = lines.map((line, i) => {
			const [time, ...rest] = line.split(",");
			if (i === 0) return line.replace("Time (s)", "Time");
			const at = new Date((86_400 - 150 + Number(time)) * 1000);
			return [at.toISOString().slice(11, 23), ...rest].join(",");
		});
		const { finding, ended } = await read(asClock.join("\n"));
		expect(finding).toMatchObject({
			recordings: 1,
			columns: [{ role: "time", unit: "clock", guessed: true }, {}, {}, {}, {}, {}, {}, {}, {}, {}, {}],
		});
		expect(finding.seconds).toBeCloseTo(300, 0);
		expect(ended).toBeNull();
	});
	test("tells when a log with dates ended: by its offset, else by the phone's own time", async () => {
		const at = (suffix: string) =>
			read(
				["Time,STFT,LTFT,RPM,Speed", ...[0, 1, 2].map((i) => `2026-06-01T17:30:0${i}${suffix},0.8,3.1,2000,80`)].join(
					"\n",
				),
			);
		expect((await at("+02:00")).ended).toBe(Date.parse("2026-06-01T17:30:02+02:00"));
		expect((await at("")).ended).toBe(Date.parse("2026-06-01T17:30:02"));
	});
	test("reads open and closed loop from codes and from letters", async () => {
		const open = csvOf(drive)
			.trimEnd()
			.split("\n")
			.map((line, i) => `${line},${i === 0 ? "FUELSYS1" : i < 3000 ? "OL" : "CL"}`);
		const { finding } = await read(open.join("\n"));
		expect(finding.steady?.left.openLoop).toBeGreaterThan(150);
		expect(finding.steady?.stretches[0].fromS).toBeGreaterThanOrEqual(299.5);
	});
	test("reads the columns as they are told, not as they are named", async () => {
		const named = csvOf(drive, {
			headers: { "Short Term Fuel Trim Bank 1 (%)": "K1", "Long Term Fuel Trim Bank 1 (%)": "K2" },
		});
		const file = new Blob([named]);
		const log = await openLog(file);
		if (!log.ok) throw new Error(log.error);
		const told = log.value.columns.map((column, i) => {
			const { [i]: header } = log.value.headers;
			return header === "K1" || header === "K2"
				? ({ role: header === "K1" ? "short1" : "long1", unit: null } as const)
				: column;
		});
		const { finding } = await read(named, told);
		expect(finding.steady?.found?.value).toBe((await read(csvOf(drive))).finding.steady?.found?.value);
		expect((await read(named)).finding.steady).toBeNull();
	});
});
