import { describe, expect, test } from "vitest";
import { openLog } from "../../src/datalog/openLog";
import { csvOf } from "../helpers/logCsv";

const drive = { seed: "open", trim: 0.05, seconds: 30 };

async function opened(...parts: BlobPart[]) {
	const log = await openLog(new Blob(parts));
	if (!log.ok) throw new Error(log.error);
	return log.value;
}
async function refused(...parts: BlobPart[]) {
	const log = await openLog(new Blob(parts));
	return log.ok ? null : log.error;
}
const bytes = (...values: number[]) => new Uint8Array(values);
function utf16(text: string, littleEndian: boolean): Uint8Array<ArrayBuffer> {
	const view = new DataView(new ArrayBuffer(text.length * 2));
	for (let i = 0; i < text.length; i++) view.setUint16(2 * i, text.charCodeAt(i), littleEndian);
	return new Uint8Array(view.buffer);
}

describe("openLog()", () => {
	test("finds separator, decimal mark and columns in every usual way of writing", async () => {
		const styles = [
			{ delimiter: ",", mark: "." },
			{ delimiter: ";", mark: "," },
			{ delimiter: ";", mark: "." },
			{ delimiter: "\t", mark: "," },
			{ delimiter: "\t", mark: "." },
		] as const;
		for (const style of styles)
			for (const newline of ["\n", "\r\n", "\r"] as const)
				for (const before of [[], ["Logger 7, firmware 3.1", "Recorded; by: me", ""]]) {
					const log = await opened(csvOf(drive, { ...style, newline, before }));
					expect(log).toMatchObject({ ...style, newline, firstData: before.length + 1 });
					expect(log.columns.map((column) => column?.role)).toEqual(
						"time rpm speed coolant throttle load manifold short1 long1 lambda commanded".split(" "),
					);
				}
	});
	test("reads quoted fields with a decimal comma between commas", async () => {
		const rows = Array.from({ length: 20 }, (_, i) => `"0,${i}","12,5","800"`);
		const log = await opened(["Time (s),Throttle (%),RPM", ...rows].join("\n"));
		expect(log).toMatchObject({ delimiter: ",", mark: ",", headers: ["Time (s)", "Throttle (%)", "RPM"] });
	});
	test("tells encodings apart, with and without a byte order mark", async () => {
		const text = csvOf(drive);
		const utf8 = new TextEncoder().encode(text);
		const latin = Uint8Array.from(text, (char) => char.charCodeAt(0));
		for (const [encoding, ...parts] of [
			["utf-8", utf8],
			["utf-8", bytes(0xef, 0xbb, 0xbf), utf8],
			["utf-16le", bytes(0xff, 0xfe), utf16(text, true)],
			["utf-16be", bytes(0xfe, 0xff), utf16(text, false)],
			["utf-16le", utf16(text, true)],
			["utf-16be", utf16(text, false)],
			["windows-1252", latin],
		] as const) {
			const log = await opened(...parts);
			expect(log.encoding).toBe(encoding);
			expect(log.headers[0]).toBe("Time (s)");
			expect(log.headers[3]).toBe("Engine Coolant Temperature (°C)");
		}
	});
	test("takes units from a row under the header", async () => {
		const rows = Array.from({ length: 20 }, (_, i) => `${i * 100};${190 + i}`);
		const log = await opened(["Time;Coolant", "[ms];[°F]", ...rows].join("\r\n"));
		expect(log.columns).toEqual([
			{ role: "time", unit: "ms" },
			{ role: "coolant", unit: "°F" },
		]);
	});
	test("reads a log that ends with its first row", async () => {
		expect(await opened("Time,RPM\n0,800")).toMatchObject({ firstData: 1, rows: [["0", "800"]] });
	});
});

describe("what is no log", () => {
	test("is refused by name", async () => {
		const text = csvOf(drive);
		expect(await refused("")).toBe("empty");
		expect(await refused(" \n\n ")).toBe("empty");
		expect(await refused(bytes(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a))).toBe("picture");
		expect(await refused(bytes(0xff, 0xd8, 0xff, 0xe0))).toBe("picture");
		expect(await refused("%PDF-1.7\n")).toBe("pdf");
		expect(await refused(bytes(0x50, 0x4b, 3, 4), "xl/worksheets")).toBe("packed");
		expect(await refused(bytes(0x1f, 0x8b, 8))).toBe("packed");
		expect(await refused(bytes(1, 0, 0, 0, 7, 0, 0, 0), text)).toBe("binary");
		expect(await refused('{"format": "heeltap-log"}')).toBe("json");
		expect(await refused("[1, 2, 3]")).toBe("json");
		expect(await refused("<!DOCTYPE html><html></html>")).toBe("markup");
		expect(await refused('<?xml version="1.0"?>')).toBe("markup");
		expect(await refused("one\ntwo\nthree")).toBe("oneColumn");
		expect(await refused("a sentence, with a comma\nand, another one\n")).toBe("noNumbers");
	});
	test("is refused where the phone does not give it", async () => {
		for (const name of ["NotReadableError", "NotFoundError"])
			expect(await openLog(failing(new DOMException("gone", name)))).toEqual({ ok: false, error: "unreadable" });
	});
	test("is not told from any other failure", async () => {
		await expect(openLog(failing(new RangeError("out of memory")))).rejects.toThrow("out of memory");
	});
	test("is not a log with a section name in brackets before it", async () => {
		expect(await refused(`[Header]\n${csvOf(drive)}`)).toBeNull();
	});
});

/** A file that is not given. */
function failing(error: Error): Blob {
	return { size: 1000, slice: () => ({ arrayBuffer: () => Promise.reject(error) }) } as unknown as Blob;
}
