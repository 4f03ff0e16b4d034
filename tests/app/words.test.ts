import { describe, expect, test } from "vitest";
import { axisFor, stackedDots } from "../../src/app/components/dotLayout";
import { ago, exactPercent, inTwenty, percentRange, volumeRange } from "../../src/app/format";
import { parseNumber } from "../../src/app/parseNumber";
import { parseRoute, printRoute } from "../../src/app/route";
import { readSettings } from "../../src/app/settings";
import { productName } from "../../src/app/text";
import { catalogue } from "../../src/domain/catalogue";

const spaces = (text: string) => text.replaceAll("\u00a0", " ");
const window = [0.26, 0.34] as never;

describe("parseNumber()", () => {
	test("reads comma and point alike", () => {
		for (const typed of ["3,5", "3.5", " 3.5 "]) expect(parseNumber(typed, 0, 10)).toEqual({ ok: true, value: 3.5 });
		for (const typed of [".5", "0,5"]) expect(parseNumber(typed, 0, 10)).toEqual({ ok: true, value: 0.5 });
	});
	test("refuses what may mean something else", () => {
		for (const typed of ["1,000.5", "1e3", "-1", "3.5.1", "0x10", "Infinity", "."])
			expect(parseNumber(typed, -9, 1e9)).toEqual({ ok: false, error: "notANumber" });
	});
});

describe("inTwenty()", () => {
	test("speaks in the dots' own count and never says never", () => {
		const words = [0, 0.01, 0.05, 0.5, 0.98, 0.99, 1].map(inTwenty).map(spaces);
		expect(words).toEqual([
			"almost none",
			"fewer than 1 in 20",
			"1 in 20",
			"10 in 20",
			"more than 19 in 20",
			"more than 19 in 20",
			"20 in 20",
		]);
	});
});

test("ranges are rounded to what is known", () => {
	expect(spaces(percentRange(0.2449, 0.3051))).toBe("24–31 %");
	expect(spaces(exactPercent(0.008))).toBe("0.8 %");
	expect(spaces(volumeRange(3.785, 37.85, "gal"))).toBe("1.0–10.0 gal");
});

test("ago() counts days and gives up on them after two weeks", () => {
	const now = Date.parse("2026-06-20T12:00:00Z");
	const words = ["2026-06-20T11:30:00Z", "2026-06-20T02:00:00Z", "2026-06-19T11:00:00Z", "2026-06-10T12:00:00Z"].map(
		(at) => ago(at, now),
	);
	expect(words).toEqual(["within the last hour", "today", "a day ago", "10 days ago"]);
	expect(ago("2026-05-01T12:00:00Z", now)).toContain("2026");
});

test("routes survive printing and parsing, whatever the id", () => {
	for (const route of [
		{ screen: "tank" },
		{ screen: "fill" },
		{ screen: "entry", id: "a/b ü%" },
		{ screen: "calibration", id: null },
		{ screen: "measure", id: null },
		{ screen: "measure", id: "tube" },
	] as const)
		expect(parseRoute(printRoute(route))).toEqual(route);
	for (const hash of ["", "#", "#/nowhere", "#/entry", "#/%E0%A4%A"])
		expect(parseRoute(hash)).toEqual({ screen: "tank" });
});

test("readSettings() fills in what is missing and drops what is unknown", () => {
	expect(readSettings(undefined)).toMatchObject({ theme: "auto", notify: false });
	expect(readSettings({ theme: "neon", notify: true })).toMatchObject({ theme: "auto", notify: true });
});

test("every fuel of the catalogue has a name", () => {
	for (const entry of catalogue) expect(productName(entry)).not.toBe(entry.id);
});

describe("dots", () => {
	const x = (content: number) => content * 900;
	test("keep to their own side of the window's edges and to their order", () => {
		const contents = [0.25, 0.2599, 0.2601, 0.27, 0.27, 0.3399, 0.3401, 0.35];
		const { dots } = stackedDots(contents, window, x, 132);
		for (const { side, x: at } of dots) {
			if (side === "inside") expect(at).toBeGreaterThanOrEqual(x(0.26));
			if (side === "above") expect(at).toBeGreaterThanOrEqual(x(0.34));
			if (side === "below") expect(at).toBeLessThanOrEqual(x(0.26));
		}
		expect(dots.map((dot) => dot.x)).toEqual(dots.map((dot) => dot.x).sort((a, b) => a - b));
	});
	test("shrink until twenty equal contents fit the height", () => {
		const { dots, radius } = stackedDots(new Array(20).fill(0.3), window, x, 132);
		expect(Math.max(...dots.map(({ y }) => y)) + radius).toBeLessThanOrEqual(134);
	});
	test("stand on an axis that shows them all and the window", () => {
		const { from, to, step } = axisFor([0.05, 0.7], window);
		expect([from, to, step]).toEqual([0, 0.8, 0.1]);
	});
});
