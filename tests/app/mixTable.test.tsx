import { screen, waitFor, within } from "@testing-library/preact";
import fc from "fast-check";
import { afterEach, expect, test, vi } from "vitest";
import { mixGridFor } from "../../src/app/mixGrid";
import { gridPicture, type Item, sheetPicture } from "../../src/app/mixPicture";
import { cellSentence, cellWords, mixFinding } from "../../src/app/mixWords";
import { readTable } from "../../src/app/tableDraft";
import { mixesWords } from "../../src/app/words/mixes";
import type { MixCell, MixTable } from "../../src/domain/plan/mixTable";
import { litresPer, type VolumeUnit } from "../../src/domain/units";
import { aCalibration, aCar, aFill, aStart } from "../helpers/logs";
import { type RenderedApp, renderApp } from "./renderApp";

const now = Date.parse("2026-06-20T15:30:00Z");
const flex = { id: "flex-51-83", range: [0.51, 0.83] };
const e10 = { id: "gasoline-e10", range: [0.09, 0.1] };
const car = aCar({ tank: { capacityL: 50 }, calibrations: [aCalibration({ name: "Blend 30" })] });
const at = "2026-06-19T12:00:00+02:00";
const life = [
	aStart({ at: "2026-06-18T12:00:00+02:00", contents: { range: [0.09, 0.1] }, gauge: 0.125 }),
	aFill({ id: "f1", stop: "s1", at, product: flex, litres: 12, place: "Harbour" }),
	aFill({ id: "f2", stop: "s1", at: "2026-06-19T12:01:00+02:00", product: e10, litres: 28, place: "Harbour" }),
];
const spaces = (text: string | null | undefined) => text?.replaceAll("\u00a0", " ") ?? "";

afterEach(() => {
	vi.restoreAllMocks();
	vi.unstubAllGlobals();
	for (const name of ["canShare", "share"]) Reflect.deleteProperty(navigator, name);
	for (const name of ["createObjectURL", "revokeObjectURL"]) Reflect.deleteProperty(URL, name);
});

async function openTable(events: readonly unknown[] = life, which = car): Promise<RenderedApp> {
	return renderApp({ at: "#/table", now, logs: [{ car: which, events: events as never }] });
}
const shown = async () => within(await screen.findByRole("region", { name: "Table of mixes" }));
const inWords = async () => {
	const table = await shown();
	table.getByText("The same in words").click();
	return within(table.getByRole("table"));
};
async function lookAtGauge(app: RenderedApp, stepsDown: number): Promise<void> {
	const less = screen.getByRole("button", { name: "Fuel gauge now: a step less", hidden: true });
	for (let i = 0; i < stepsDown; i++) await app.user.click(less);
}

test("the table tells for the last two fuels what their amounts make of this tank, and what it takes the tank to be", async () => {
	const app = await openTable();
	await shown();
	await lookAtGauge(app, 5);
	const table = await shown();
	await waitFor(() =>
		expect(spaces(table.getByText(/^In the tank/).textContent)).toMatch(/gauge ¼ .25 %., about 12\.5 L of 50\.0 L/),
	);
	expect(spaces(table.getByText(/^In the tank/).textContent)).toMatch(/about 2\d % ethanol, 9 in 10: \d+–\d+ %/);
	table.getByText(/^Flex fuel E85 .US.: 51–83.%. Gasoline E10 .US.: 9–10.%. Bought at Harbour\.$/);
	table.getByText(/^Window of “Blend 30”: 26–34.%\. Accepted: too much 1 in 20, too little 1 in 20\.$/);
	table.getByText(mixesWords().caution);
	table.getByRole("img", {
		name: /^What amounts of “Flex fuel E85 .US.” and then “Gasoline E10 .US.” make of this tank/,
	});
	for (const sign of [/inside the window/, /too much ethanol: lean/, /too little ethanol: knock/])
		expect(table.getAllByText(sign).length).toBeGreaterThan(0);

	const words = await inWords();
	const rows = words.getAllByRole("row");
	const heads = within(rows[0])
		.getAllByRole("columnheader")
		.map(({ textContent }) => spaces(textContent));
	expect(heads[0]).toBe("Flex fuel E85 (US), then Gasoline E10 (US)");
	expect(heads.slice(1)).toEqual(["0 L", "10 L", "20 L", "30 L", "to the click"]);
	expect(within(rows[1]).getByRole("rowheader").textContent).toMatch(/^0.L$/);
	// More flex fuel, more ethanol; none of it and full of gasoline is too little.
	const click = rows.slice(1).map((row) => spaces(within(row).getAllByRole("cell").at(-1)?.textContent));
	expect(click[0]).toMatch(/knock .about 3\d\.\d L.$/);
	const lows = click.flatMap((cell) => (/^(\d+)/.exec(cell) ?? []).slice(1).map(Number));
	expect(lows.length).toBeGreaterThan(5);
	expect(lows).toEqual([...lows].sort((a, b) => a - b));
});

test("without a look at the gauge the level is said to be open, and the ranges are wider", async () => {
	const app = await openTable();
	const table = await shown();
	expect(spaces(table.getByText(/^In the tank/).textContent)).toMatch(
		/Level: anything from empty to \d+\.\d L, for nobody looked at the gauge\.$/,
	);
	const width = async () => {
		const row = (await inWords()).getAllByRole("row")[1];
		const [, low, high] = /^(\d+)–(\d+) %/.exec(spaces(within(row).getAllByRole("cell").at(-1)?.textContent)) ?? [];
		return Number(high) - Number(low);
	};
	const open = await width();
	await lookAtGauge(app, 5);
	await waitFor(async () => expect(await width()).toBeLessThan(open));
});

test("a full tank leaves nothing to mix, and that is said", async () => {
	const app = await openTable();
	await shown();
	const more = screen.getByRole("button", { name: "Fuel gauge now: a step more", hidden: true });
	for (let i = 0; i < 9; i++) await app.user.click(more);
	await screen.findByText(/^The gauge says full/);
	expect(screen.queryByRole("region", { name: "Table of mixes" })).toBeNull();
});

test("amounts of which none fits are said not to fit", async () => {
	const cell: MixCell = { fits: 0, mix: null };
	await renderApp({
		at: "#/table",
		now,
		logs: [{ car, events: life as never }],
		wrap: (keeper) => ({
			...keeper,
			table: async (_car, _ask, grid) => ({
				grid,
				rows: grid.first.map((first) => ({
					first,
					cells: grid.second.map(() => cell),
					toClick: { ...cell, litres: 0 as never },
				})),
			}),
		}),
	});
	await screen.findByText(/^None of these amounts fits/);
});

test("an account that has not begun has no table", async () => {
	await openTable([]);
	await screen.findByRole("heading", { name: "Nothing is known of this tank yet" });
});

test("a table that can't be reckoned says so", async () => {
	await renderApp({
		at: "#/table",
		now,
		logs: [{ car, events: life as never }],
		wrap: (keeper) => ({ ...keeper, table: () => Promise.reject(new Error("no memory")) }),
	});
	await screen.findByText(/^The table could not be reckoned/);
});

test("without a calibration the table shows contents and no signs", async () => {
	await openTable(life, aCar({ tank: { capacityL: 50 }, calibrations: [] }));
	const table = await shown();
	table.getByText(/No calibration is entered/);
	expect(table.queryByText(/too much ethanol/)).toBeNull();
	expect((await inWords()).queryByText(/lean|knock|inside/)).toBeNull();
});

test("other fuels and another place are chosen, and the same fuel twice swaps them", async () => {
	const app = await openTable();
	await shown();
	const select = (name: string) => screen.getByRole("combobox", { name, hidden: true });
	const option = (name: string, within_: HTMLElement) => within(within_).getByRole("option", { name, hidden: true });
	await app.user.selectOptions(
		select("Then"),
		option("Gasoline, no ethanol: 0–0.8 %".replace(" %", "\u00a0%"), select("Then")),
	);
	const table = await shown();
	await table.findByText(/Gasoline, no ethanol: 0–0\.8.%/);
	await app.user.selectOptions(
		select("First fuel"),
		option("Gasoline, no ethanol: 0–0.8 %".replace(" %", "\u00a0%"), select("First fuel")),
	);
	await screen.findByText(/^Gasoline, no ethanol, then Flex fuel E85/, { selector: "summary" });
	await app.user.selectOptions(select("Bought at"), "");
	await waitFor(() => expect(screen.queryByText(/Bought at Harbour/)).toBeNull());
	await app.user.click(screen.getByRole("button", { name: "The other way round", hidden: true }));
	await screen.findByText(/^Flex fuel E85 .US., then Gasoline, no ethanol/, { selector: "summary" });
});

test("choices are there again after the app was killed; an old look at the gauge is not", async () => {
	let app = await openTable();
	await shown();
	await lookAtGauge(app, 3);
	await screen.findByText(/^Gauge now: ⅜/);
	await app.user.click(screen.getByRole("button", { name: "The other way round", hidden: true }));
	await screen.findByText(/^Gasoline E10 .US., then/, { selector: "summary" });
	app = await app.restart();
	await screen.findByText(/^Gauge now: ⅜/);
	await screen.findByText(/^Gasoline E10 .US., then/, { selector: "summary" });
	app.clock.now += 4 * 3_600_000;
	await app.restart();
	await screen.findByText("Gauge now: not looked");
	screen.getByText(/^Gasoline E10 .US., then/, { selector: "summary" });
	expect(readTable({ first: 1 }, now)).toBeNull();
});

/** A canvas that remembers what was written on it. */
function stubCanvas() {
	const written: string[] = [];
	const context = { fillText: (text: string) => written.push(text) };
	const quiet = new Proxy(context, { get: (of, name) => Reflect.get(of, name) ?? (() => {}), set: () => true });
	vi.spyOn(HTMLCanvasElement.prototype, "getContext").mockReturnValue(quiet as never);
	vi.spyOn(HTMLCanvasElement.prototype, "toBlob").mockImplementation((done) =>
		done(new Blob(["png"], { type: "image/png" })),
	);
	vi.stubGlobal("Path2D", class {});
	return written;
}

test("the table is handed on as a picture that says what it assumes and that it is an estimate", async () => {
	const written = stubCanvas();
	const files: File[] = [];
	Object.assign(navigator, {
		canShare: () => true,
		share: async (data: ShareData) => void files.push(...(data.files ?? [])),
	});
	const app = await openTable();
	await app.user.click((await shown()).getByRole("button", { name: "Send as a picture" }));
	await waitFor(() => expect(files).toHaveLength(1));
	expect(files[0]).toMatchObject({ type: "image/png", name: "heeltap-mixes-the-grey-one-2026-06-20.png" });
	const text = spaces(written.join(" "));
	expect(text).toContain("What a mix makes of this tank");
	expect(text).toMatch(/The grey one, Jun 20, 2026/);
	expect(text).toMatch(/In the tank: about 2\d % ethanol/);
	expect(text).toMatch(/Window of “Blend 30”: 26–34 %/);
	expect(text).toContain(mixesWords().caution);
});

test("where nothing can be shared, or the sharing fails, the picture is saved", async () => {
	stubCanvas();
	const saved: string[] = [];
	Object.assign(URL, { createObjectURL: () => "blob:picture", revokeObjectURL: () => {} });
	vi.spyOn(HTMLAnchorElement.prototype, "click").mockImplementation(function (this: HTMLAnchorElement) {
		saved.push(this.download);
	});
	const app = await openTable();
	await app.user.click((await shown()).getByRole("button", { name: "Save as a picture" }));
	await screen.findByText("Saved as heeltap-mixes-the-grey-one-2026-06-20.png.");
	expect(saved).toEqual(["heeltap-mixes-the-grey-one-2026-06-20.png"]);
	Object.assign(navigator, {
		canShare: () => true,
		share: () => Promise.reject(new DOMException("no", "NotAllowedError")),
	});
	await app.user.click((await shown()).getByRole("button", { name: /as a picture/ }));
	await waitFor(() => expect(saved).toHaveLength(2));
	// Whoever thinks better of it wants no file instead.
	Object.assign(navigator, { share: () => Promise.reject(new DOMException("no", "AbortError")) });
	await app.user.click((await shown()).getByRole("button", { name: /as a picture/ }));
	await new Promise((later) => setTimeout(later, 50));
	expect(saved).toHaveLength(2);
});

test("a browser that draws no pictures is told of, and printing goes on", async () => {
	vi.spyOn(HTMLCanvasElement.prototype, "getContext").mockReturnValue(null);
	const print = vi.fn();
	vi.stubGlobal("print", print);
	const app = await openTable();
	await app.user.click((await shown()).getByRole("button", { name: "Save as a picture" }));
	await screen.findByText(/could not make a picture/);
	await app.user.click((await shown()).getByRole("button", { name: "Print it" }));
	expect(print).toHaveBeenCalledOnce();
	expect(document.documentElement.dataset.prints).toBe("sheet");
	location.hash = "#/car";
	await screen.findByRole("heading", { name: "Calibrations" });
	await waitFor(() => expect(document.documentElement.dataset.prints).toBeUndefined());
});

const units = fc.constantFrom<VolumeUnit>("L", "gal", "imp gal");

test("mixGridFor() gives a few round amounts in the driver's unit, from nothing to what may fit", () => {
	fc.assert(
		fc.property(fc.double({ min: 1, max: 250, noNaN: true }), units, (room, unit) => {
			const { first, second } = mixGridFor(room, unit);
			expect(first.length).toBeLessThanOrEqual(20);
			expect(second.length).toBeLessThanOrEqual(6);
			for (const amounts of [first, second]) {
				expect(amounts[0]).toBe(0);
				expect(amounts.length).toBeGreaterThan(1);
				expect(amounts.at(-1)).toBeLessThanOrEqual(room * (1 + 1e-9));
				const step = amounts[1] / litresPer[unit];
				const digits = step / 10 ** Math.floor(Math.log10(step) + 1e-9);
				expect([1, 2, 5].some((digit) => Math.abs(digit - digits) < 1e-6)).toBe(true);
				// The next amount would not fit.
				expect(amounts.length * step * litresPer[unit]).toBeGreaterThan(room * (1 - 1e-9));
			}
		}),
	);
});

/** No fuel that is sold holds more. */
const content = fc.double({ min: 0, max: 0.98, noNaN: true });
const cells = fc.record({
	fits: fc.double({ min: 0, max: 1, noNaN: true }),
	mix: fc.option(
		fc.tuple(content, content).map(([a, b]) => ({
			low: Math.min(a, b),
			median: (a + b) / 2,
			high: Math.max(a, b),
			judged: { chances: {}, verdict: (["inside", "lean", "knock"] as const)[Math.round(a * 2)] },
		})),
	),
});
const tables = fc.tuple(fc.double({ min: 5, max: 120, noNaN: true }), units).chain(([room, unit]) => {
	const grid = mixGridFor(room, unit);
	const row = fc.record({
		cells: fc.array(cells, { minLength: grid.second.length, maxLength: grid.second.length }),
		toClick: fc
			.tuple(cells, fc.double({ min: 0, max: room, noNaN: true }))
			.map(([cell, litres]) => ({ ...cell, litres })),
	});
	return fc.array(row, { minLength: grid.first.length, maxLength: grid.first.length }).map((rows) => ({
		unit,
		table: { grid, rows: rows.map((each, i) => ({ ...each, first: grid.first[i] })) } as unknown as MixTable,
	}));
});

test("a drawn table keeps its letters apart and on its paper, on any phone and with any size of letters", () => {
	const names = ["Bioethanolkraftstoff mit Jahreszeitenanpassung", "Gasoline E10 (US)"] as const;
	const papers = fc.record({ width: fc.integer({ min: 240, max: 800 }), text: fc.integer({ min: 11, max: 34 }) });
	fc.assert(
		fc.property(tables, papers, ({ table, unit }, paper) => {
			const { width, height, items } = gridPicture({ table, names, unit }, paper);
			const texts = items.filter((item): item is Extract<Item, { kind: "text" }> => item.kind === "text");
			const boxes = texts.map(({ x, y, text, size, anchor }) => {
				const wide = text.length * size * 0.55;
				const left = anchor === "start" ? x : anchor === "end" ? x - wide : x - wide / 2;
				return { left, right: left + wide, top: y - size * 0.8, bottom: y + size * 0.1, text };
			});
			const inside = boxes.filter(({ text }) => !names.some((name) => name.includes(text.slice(-8))));
			for (const { left, right, bottom } of inside) {
				expect(left).toBeGreaterThanOrEqual(-1);
				expect(right).toBeLessThanOrEqual(width + 1);
				expect(bottom).toBeLessThanOrEqual(height);
			}
			for (const [i, a] of boxes.entries())
				for (const b of boxes.slice(i + 1)) {
					const apart = a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
					if (!apart) throw new Error(`“${a.text}” and “${b.text}” overlap on ${JSON.stringify(paper)}`);
				}
			// Wider than the phone only where not even one column and the click fit.
			if (paper.width >= 320 && paper.text <= 16) expect(width).toBe(paper.width);
			// Every row has its amount, and the column of the click is always there.
			expect(texts.filter(({ anchor }) => anchor === "end")).toHaveLength(table.rows.length);
			expect(texts.filter(({ text }) => text === "click")).toHaveLength(1);
		}),
	);
});

test("a sheet holds the heading, every line and the caution, word for word", () => {
	fc.assert(
		fc.property(tables, ({ table, unit }) => {
			const lines = ["The grey one, Jun 20, 2026", "In the tank: about 29 % ethanol, 9 in 10: 27–31 %."];
			const sheet = sheetPicture({ table, names: ["A", "B"], unit }, "A heading", lines, { width: 600, text: 15 });
			const words = sheet.items.flatMap((item) => (item.kind === "text" ? [item.text] : [])).join(" ");
			for (const text of ["A heading", ...lines, mixesWords().caution]) expect(words).toContain(text);
			for (const item of sheet.items) if (item.kind === "text") expect(item.y).toBeLessThan(sheet.height);
		}),
		{ numRuns: 30 },
	);
});

test("a cell says its range, its side, and whether the nozzle may click before", () => {
	const mix = (verdict: string) => ({ median: 0.3, low: 0.26, high: 0.33, judged: { chances: {}, verdict } });
	const cell = (fits: number, verdict = "inside") => ({ fits, mix: mix(verdict) }) as unknown as MixCell;
	expect([cell(1), cell(0.5), { fits: 0, mix: null }].map(cellWords)).toEqual(["26–33", "26–33*", "–"]);
	expect([cell(1), cell(0.5, "lean"), { fits: 0, mix: null }].map((each) => spaces(cellSentence(each)))).toEqual([
		"26–33 %, inside",
		"26–33 %, lean, goes in 10 in 20",
		"hardly fits",
	]);
});

test("the finding names the first stretch of amounts that ends inside, or says that there is none", () => {
	const table = (verdicts: readonly (string | null)[]) =>
		({
			rows: verdicts.map((verdict, i) => ({
				first: i * 5,
				cells: [],
				toClick: { fits: 1, litres: 1, mix: verdict && { judged: { verdict } } },
			})),
		}) as unknown as MixTable;
	const finding = (...verdicts: (string | null)[]) => spaces(mixFinding(table(verdicts), ["A", "B"], "L"));
	expect(finding("knock", "inside", "inside", "lean", "inside")).toBe(
		"Filled up with “B”, 5 L to 10 L of “A” before it ends inside the window as surely as asked.",
	);
	expect(finding("knock", "inside", "lean")).toMatch(/^Filled up with “B”, 5 L of “A” before it/);
	expect(finding("inside", "inside", null)).toMatch(/, 0 L to 5 L of/);
	expect(finding("knock", "lean")).toMatch(/no amount of “A” in this table ends inside/);
	expect(finding(null)).toBe("");
});
