import { screen, waitFor, within } from "@testing-library/preact";
import { expect, test } from "vitest";
import type { KeeperPort } from "../../src/app/keeperPort";
import {
	contentWords,
	effectWords,
	evidenceWords,
	knownWords,
	reasonWords,
	remedyWords,
	silentWords,
	sourceWords,
	tellingEvidence,
} from "../../src/app/whyWords";
import type { Source } from "../../src/domain/why/sources";
import { aCar, aFill, aLevel, aPumpReading, aStart, aTankReading, aTrimReading } from "../helpers/logs";
import { type RenderedApp, renderApp } from "./renderApp";

const now = Date.parse("2026-06-20T15:30:00Z");
const car = aCar();
const flex = { id: "flex-51-83", range: [0.51, 0.83] };
const e10 = { id: "gasoline-e10", range: [0.09, 0.1] };
const spaces = (text: string | null | undefined) => text?.replaceAll("\u00a0", " ") ?? "";
const life = [
	aStart({ at: "2026-06-01T12:00:00+02:00", contents: { range: [0.09, 0.1] }, gauge: 0.25 }),
	aFill({
		id: "f1",
		stop: "s1",
		at: "2026-06-10T12:00:00+02:00",
		product: flex,
		litres: 12,
		place: "Harbour",
		gauge: 0.2,
	}),
	aFill({
		id: "f2",
		stop: "s1",
		at: "2026-06-10T12:01:00+02:00",
		product: e10,
		litres: 30,
		place: "Harbour",
		toClick: true,
	}),
	aTankReading({ id: "r1", at: "2026-06-12T12:00:00+02:00", value: 0.24, sd: 0.025 }),
];

async function open(
	events: readonly unknown[] = life,
	wrap?: (keeper: KeeperPort) => KeeperPort,
): Promise<RenderedApp> {
	return renderApp({ at: "#/why", now, logs: [{ car, events: events as never }], ...(wrap ? { wrap } : {}) });
}
const card = async (name: string) => within(await screen.findByRole("region", { name }));

test("the Tank screen leads there in one tap, and the tab stays Tank", async () => {
	const app = await renderApp({ at: "#/tank", now, logs: [{ car, events: life as never }] });
	await app.user.click(await screen.findByRole("link", { name: "Why this number" }));
	await waitFor(() => expect(location.hash).toBe("#/why"));
	await card("Why this number");
	expect(screen.getByRole("link", { name: "Tank" }).getAttribute("aria-current")).toBe("page");
});

test("the page says the tank's own number, and its first reason", async () => {
	const app = await open();
	const why = await card("Why this number");
	const { low, median, high } = app.model.state().now?.estimate ?? { low: 0, median: 0, high: 0 };
	const points = (content: number) => Math.round(100 * content);
	expect(spaces(why.getByRole("heading").textContent)).toBe(
		`Why about ${points(median)} %, 9 in 10: ${points(low)}–${points(high)} %`,
	);
	expect(spaces(why.getByText(/of the doubt is one question/).textContent)).toMatch(
		/: what the “Flex fuel E85 \(US\)” of Jun 10, 2026 at Harbour really was\. Were that known exactly, 9 in 10 would span about [\d.]+ points instead of [\d.]+ points\.$/,
	);
});

test("each doubt has a bar as long as what would go, the longest first, and the same in a table", async () => {
	const app = await open();
	const doubt = await card("What the doubt comes from");
	const rows = doubt.getAllByRole("listitem").map((item) => ({
		words: spaces(item.textContent),
		gone: Number(item.querySelector("rect.gone")?.getAttribute("width")),
	}));
	expect(rows[0].words).toMatch(/^What the “Flex fuel E85 \(US\)” of Jun 10, 2026 at Harbour really was/);
	expect(rows.at(-1)?.words).toMatch(/^All the rest together, \d+ things/);
	const listed = rows.slice(0, -1);
	expect(listed.map(({ gone }) => gone)).toEqual([...listed.map(({ gone }) => gone)].sort((a, b) => b - a));
	for (const { words, gone } of listed) {
		const [from, to] = (/([\d.]+) points would become ([\d.]+) points/.exec(words) ?? []).slice(1).map(Number);
		expect(Math.abs(gone - 100 * (1 - to / from))).toBeLessThan(2);
	}
	await app.user.click(doubt.getByText("The same as shares of the variance"));
	const table = within(doubt.getByRole("table"));
	expect(table.getAllByRole("row")).toHaveLength(rows.length + 1);
	expect(spaces(table.getAllByRole("row")[1].textContent)).toMatch(/really was\d+ %[\d.]+ points$/);
});

test("what would help is said in words, with the way to the measurements and what they are worth", async () => {
	const app = await open();
	const help = await card("What would help most");
	help.getByText(/^Test the “Flex fuel E85 \(US\)” at Harbour before you fill the next time/);
	expect(help.getByRole("link", { name: "Enter a measurement" }).getAttribute("href")).toBe("#/measure");
	expect(help.queryByText(/water test of the tank would/)).toBeNull();
	await app.user.click(help.getByText("What a measurement now is worth"));
	await help.findByText(/water test of the tank would/);
});

test("the fuel in the tank is drawn by origin, and the list says the same", async () => {
	await open();
	const origin = await card("Where the fuel in the tank comes from");
	const items = origin.getAllByRole("listitem").map(({ textContent }) => spaces(textContent));
	expect(items[0]).toMatch(/^“Gasoline E10 \(US\)” of Jun 10, 2026 at Harbour\d+ % of the fuel, [\d.]+ L, at 9\.5 %/);
	expect(items[1]).toMatch(
		/^“Flex fuel E85 \(US\)” of Jun 10, 2026 at Harbour\d+ % of the fuel.*: \d+ % of the ethanol$/,
	);
	expect(items[2]).toMatch(/^All that is older, or less\d+ % of the fuel/);
	const shares = items.map((item) => Number(/(\d+) % of the fuel/.exec(item)?.[1]));
	expect(Math.abs(shares.reduce((sum, share) => sum + share) - 100)).toBeLessThanOrEqual(1);
	const picture = origin.getByRole("img", { name: /the line across is the mix, \d+.%/ });
	const columns = [...picture.querySelectorAll("rect.ethanol")].map((rect) => ({
		width: Number(rect.getAttribute("width")) + 2,
		height: Number(rect.getAttribute("height")),
	}));
	expect(columns).toHaveLength(items.length);
	// Widths are as the shares of the fuel.
	const all = columns.reduce((sum, { width }) => sum + width, 0);
	for (const [i, { width }] of columns.entries()) expect(Math.abs((100 * width) / all - shares[i])).toBeLessThan(1.5);
	expect(columns[1].height).toBeGreaterThan(4 * columns[0].height);
});

test("stops are told as additions that end with what the tank holds, each leading to its entry", async () => {
	const app = await open();
	const stops = await card("Stop by stop");
	const parts = stops.getAllByRole("listitem").slice(1);
	const words = parts.map(({ textContent }) => spaces(textContent));
	expect(words[0]).toMatch(/^First [\d.]+ L left, at 9\.5 %/);
	expect(words[1]).toMatch(/^\+12 L of “Flex fuel E85 \(US\)”, \d+ % \(\d+–\d+ %\)$/);
	expect(words[2]).toMatch(/^\+30 L of “Gasoline E10 \(US\)”, 9\.5 %/);
	const { low, median, high } = app.model.state().now?.estimate ?? { low: 0, median: 0, high: 0 };
	const points = (content: number) => Math.round(100 * content);
	expect(words[3]).toBe(`=${points(median)} % (${points(low)}–${points(high)} %)`);
	expect(stops.getByRole("link", { name: "Jun 10, 2026 at Harbour" }).getAttribute("href")).toBe("#/entry/f1");
});

test("readings that narrow the range are told with the range without them, the others are counted", async () => {
	await open();
	const helps = await card("What already helps");
	const links = helps.getAllByRole("link");
	expect(links[0].textContent).toBe("The measurement of the tank on Jun 12, 2026");
	expect(links[0].getAttribute("href")).toBe("#/entry/r1");
	const [item] = helps.getAllByRole("listitem");
	const [without, width] = (
		/without it 9 in 10 would span ([\d.]+) points instead of ([\d.]+) points/.exec(spaces(item.textContent)) ?? []
	)
		.slice(1)
		.map(Number);
	expect(without).toBeGreaterThan(width);
	helps.getByText(/next to nothing alone/);
});

test("a log without any reading is told what one would do", async () => {
	await open([
		{ kind: "start", id: "start", at: "2026-06-01T12:00:00+02:00", contents: { range: [0, 0.15] } },
		aFill({ at: "2026-06-10T12:00:00+02:00", product: flex }),
	]);
	(await card("What already helps")).getByText(/Each of them would make the range narrower/);
});

test("a start alone has its doubt, and no fuel to be told apart", async () => {
	await open(life.slice(0, 1));
	(await card("What the doubt comes from")).getByText("What the tank held at the start, Jun 1, 2026");
	expect(screen.queryByRole("region", { name: "Stop by stop" })).toBeNull();
	expect(screen.queryByRole("region", { name: "Where the fuel in the tank comes from" })).toBeNull();
});

test("a log of nothing leads to the first fill", async () => {
	await open([]);
	await screen.findByRole("heading", { name: "Nothing is known of this tank yet" });
	expect(screen.getByRole("link", { name: "Record a fill" }).getAttribute("href")).toBe("#/fill");
});

test("what can't be reckoned is said", async () => {
	await open(life, (keeper) => ({ ...keeper, why: () => Promise.reject(new Error("no memory")) }));
	await screen.findByText(/could not be taken apart/);
});

test("what the readings do is a question of its own: without its answer the rest still stands", async () => {
	await open(life, (keeper) => ({ ...keeper, whyEvidence: () => Promise.reject(new Error("no memory")) }));
	await screen.findByText(/What the readings do could not be reckoned/);
	await card("What the doubt comes from");
});

test("an entry that comes in meanwhile is asked about anew", async () => {
	const app = await open();
	await card("What already helps");
	await app.model.append([aTankReading({ id: "r2", at: "2026-06-13T12:00:00+02:00", value: 0.25, sd: 0.02 })]);
	const helps = await card("What already helps");
	await helps.findByRole("link", { name: "The measurement of the tank on Jun 13, 2026" });
});

const f1 = life[1] as never;
const f2 = life[2] as never;
const words = (source: unknown) => spaces(sourceWords(source as Source));
const remedy = (source: unknown) => spaces(remedyWords(source as Source));

test("every source has its name and its remedy", () => {
	expect(words({ kind: "start", event: null })).toBe("What the tank held before the first entry");
	expect(words({ kind: "older", before: f1 })).toBe("What the tank held before the stop of Jun 10, 2026");
	expect(words({ kind: "heel", fills: [f1, f2] })).toBe(
		"How much was left in the tank before the stop of Jun 10, 2026",
	);
	expect(words({ kind: "area", product: flex })).toBe("How strong “Flex fuel E85 (US)” is in the area");
	expect(words({ kind: "capacity" })).toBe("How much the tank truly holds");
	expect(words({ kind: "gauge" })).toBe("How far the gauge is off");
	expect(words({ kind: "consumption" })).toBe("What the car burns");
	expect(words({ kind: "trims", calibratedFor: 0.3 })).toBe(
		"How far the fuel trims are off on the calibration for 30 %",
	);
	expect(remedy({ kind: "older", before: f1 })).toMatch(/^Measure the tank once/);
	expect(remedy({ kind: "area", product: flex })).toMatch(/^Test the “Flex fuel E85 \(US\)” at the pump/);
	expect(remedy({ kind: "consumption" })).toMatch(/^Note the odometer at every stop/);
	expect(remedy({ kind: "trims", calibratedFor: 0.3 })).toMatch(/^Take the fuel trims when/);
	expect(remedy({ kind: "gauge" })).toMatch(/^Note the gauge before you fill, and fill to/);
});

test("the heel's remedy is what was not said at that stop", () => {
	const bare = { at: "2026-06-10T12:00:00+02:00", gauge: undefined };
	const heel = (...fills: Record<string, unknown>[]) =>
		remedy({ kind: "heel", fills: fills.map((fields) => aFill(fields)) });
	expect(heel(bare)).toMatch(
		/^Note the gauge before you fill, note the odometer and fill to the nozzle’s first click:/,
	);
	expect(heel({ ...bare, gauge: 0.2 }, { ...bare, toClick: true })).toMatch(/^Note the odometer:/);
	expect(heel({ ...bare, gauge: 0.2, odometerKm: 9, toClick: true })).toMatch(/^Fill when the tank is as empty/);
});

test("contents and ranges are told as finely as they are known", () => {
	const told = (low: number, median: number, high: number) => spaces(contentWords({ low, median, high }));
	expect(told(0.66, 0.74, 0.82)).toBe("74 % (66–82 %)");
	expect(told(0.0901, 0.095, 0.0999)).toBe("9.5 % (9–10 %)");
	expect(told(0.85, 0.85, 0.85)).toBe("85 %");
	expect(spaces(knownWords(0.053, 0.011))).toBe("5.3 points would become 1.1 points");
	expect(spaces(knownWords(0.248, 0.041))).toBe("25 points would become 4 points");
	expect(knownWords(0.248, 0.2479)).toBe("next to nothing would go");
});

test("the first reason is called most of it only where it is", () => {
	const why = (width: number, ...known: number[]) =>
		reasonWords({
			width,
			sources: known.map((left) => ({ source: { kind: "capacity" }, share: 0, width: left })),
		} as never);
	expect(why(0.1, 0.04)).toMatch(/^Most of the doubt is one question: how much the tank truly holds\./);
	expect(why(0.1, 0.08)).toMatch(/^The largest part of the doubt/);
	expect(why(0.1)).toMatch(/^No single thing stands out/);
	expect(why(0.001, 0.0005)).toMatch(/^Next to nothing is left open/);
});

test("evidence is named by what it was, told apart by what it does", () => {
	const at = "2026-06-10T12:00:00+02:00";
	const named = (kind: string, event: object) => spaces(evidenceWords({ kind, event } as never));
	expect(named("reading", aPumpReading({ at, product: flex, place: "Harbour" }))).toBe(
		"The test of “Flex fuel E85 (US)” at Harbour on Jun 10, 2026",
	);
	expect(named("reading", aTrimReading({ at }))).toBe("The fuel trim read on Jun 10, 2026");
	expect(named("gauge", aLevel({ at }))).toBe("The gauge noted on Jun 10, 2026");
	expect(named("click", f1)).toBe("The nozzle’s click on Jun 10, 2026");
	expect(named("odometer", f1)).toBe("The odometer noted on Jun 10, 2026");
	const worth = (without: number) => ({ evidence: { kind: "click", event: f1 }, without }) as never;
	const found = { width: 0.1, worths: [worth(0.15), worth(0.101), worth(0.09)], untried: 0 };
	expect(tellingEvidence(found)).toEqual({ telling: [worth(0.15), worth(0.09)], silent: 1 });
	expect(spaces(effectWords(worth(0.15), 0.1))).toBe("without it 9 in 10 would span 15 points instead of 10 points");
	expect(effectWords(worth(0.09), 0.1)).toMatch(/makes the range wider$/);
	expect(silentWords(1, 2)).toMatch(/^1 more changes/);
	expect(silentWords(3, 0)).toMatch(/^3 change/);
	expect(silentWords(0, 2)).toBe("");
});
