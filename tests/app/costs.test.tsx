import { screen, waitFor, within } from "@testing-library/preact";
import { afterEach, expect, test, vi } from "vitest";
import { demoLog } from "../../src/app/demo";
import { costDistance, likelyCurrency, money, unitPrice } from "../../src/app/money";
import { aCar, aFill, aStart, aVoid } from "../helpers/logs";
import { type RenderedApp, renderApp } from "./renderApp";

const now = Date.parse("2026-06-30T15:30:00Z");
const car = aCar({ currency: "EUR" });
const flex = { id: "flex-51-83", range: [0.51, 0.83] };
const e10 = { id: "gasoline-e10", range: [0.09, 0.1] };
const start = aStart({ at: "2026-05-01T12:00:00+02:00", contents: { range: [0.09, 0.1] }, gauge: 0.25 });
const spaces = (text: string | null | undefined) => text?.replaceAll("\u00a0", " ") ?? "";

afterEach(() => vi.unstubAllGlobals());

/** A stop filled up to the click on a day of May or June. */
function stop(month: 5 | 6, day: number, fields: Record<string, unknown> = {}) {
	const id = `${month}-${day}`;
	const at = `2026-0${month}-${String(day).padStart(2, "0")}T12:00:00+02:00`;
	return aFill({ id, stop: id, at, product: e10, litres: 40, toClick: true, place: "Harbour", ...fields });
}

async function openCosts(events: readonly unknown[], which = car): Promise<RenderedApp> {
	return renderApp({ at: "#/costs", now, logs: [{ car: which, events: events as never }] });
}
const card = async (name: string) => within(await screen.findByRole("region", { name }));

test("Costs tells months, totals, and how many fills have no price", async () => {
	const app = await openCosts([
		start,
		stop(5, 2, { pricePerLitre: 1.5 }),
		stop(6, 3, { pricePerLitre: 1.75 }),
		stop(6, 10),
		stop(6, 20, { pricePerLitre: 1.75, litres: 20 }),
	]);
	const bought = await card("Fuel bought");
	const months = within(bought.getByRole("list", { name: "Cost of each month" })).getAllByRole("listitem");
	expect(months.map(({ textContent }) => spaces(textContent))).toEqual([
		"June 2026€105.00No price was entered for 1 of 3 fills: they are not in the sum.",
		"May 2026€60.00",
	]);
	bought.getByText("€165.00");
	bought.getByText("No price was entered for 1 of 4 fills: they are not in the sum.");
	expect(bought.queryByText(/plain numbers/)).toBeNull();
	// The stop without a price says so; each leads to its entry.
	const stops = within(await screen.findByRole("region", { name: "Stop by stop" })).getAllByRole("link");
	expect(stops.map(({ textContent }) => spaces(textContent)).join("|")).toMatch(
		/€35\.00.*\|.*40\.0 L.*no price entered\|.*€70\.00\|.*€60\.00/,
	);
	await app.user.click(stops[1]);
	await waitFor(() => expect(location.hash).toBe("#/entry/6-10"));
});

test("the bar of a month is as long as its cost is of the dearest month's", async () => {
	await openCosts([start, stop(5, 2, { pricePerLitre: 1 }), stop(6, 3, { pricePerLitre: 2 })]);
	const bought = await card("Fuel bought");
	const bars = bought.getAllByRole("listitem").map((item) => item.querySelector("rect.bar")?.getAttribute("width"));
	expect(bars).toEqual(["100", "50"]);
});

test("what the ethanol cost is told against the gasoline that it is held against", async () => {
	await openCosts([
		start,
		stop(6, 2, { pricePerLitre: 1.8 }),
		stop(6, 9, { id: "f", product: flex, litres: 10, pricePerLitre: 1.2, toClick: false }),
		stop(6, 9, { id: "g", litres: 20, pricePerLitre: 1.8, at: "2026-06-09T12:01:00+02:00" }),
		stop(6, 20, { product: flex, litres: 10 }),
	]);
	const ethanol = await card("What the ethanol cost");
	const words = spaces(ethanol.getByText(/^The blend of one stop/).textContent);
	// 10 L at 67 % hold 249.3 MJ; as E10 of 31.31 MJ/L at 1.80 that is 14.33: 2.33 more than the 12 paid.
	expect(words).toContain("cost about €2.33 less than the same heat bought as gasoline");
	expect(words).toMatch(/from €3\.\d\d less to €1\.\d\d less/);
	expect(words).toContain("One more stop does not tell: a price is missing, or no gasoline was bought yet.");
	expect(spaces(ethanol.getByText(/^At the last such stop/).textContent)).toMatch(
		/its heat bought as “Gasoline E10 .US.” at €1\.800 per L .Harbour, Jun 9, 2026.\./,
	);
});

test("only gasoline has no ethanol to be told apart", async () => {
	await openCosts([start, stop(6, 2, { pricePerLitre: 1.8 })]);
	(await card("What the ethanol cost")).getByText(/Nothing but gasoline was bought/);
});

test("odometers at two stops to the click tell the cost of the distance and what the car burns", async () => {
	await openCosts([
		start,
		stop(6, 2, { pricePerLitre: 1.5, odometerKm: 10_000 }),
		stop(6, 9, { pricePerLitre: 1.5, odometerKm: 10_500, litres: 40 }),
		stop(6, 16, { pricePerLitre: 1.5, odometerKm: 11_000, litres: 40 }),
	]);
	const distance = await card("What the distance cost");
	distance.getByText("€12.00");
	expect(spaces(distance.getByText(/^Over/).textContent)).toMatch(
		/^Over 1,000 km, Jun 2, 2026 to Jun 16, 2026, from one filling to the click to another, 9 in 10: €11\.\d\d to €12\.\d\d per 100 km\.$/,
	);
	const running = await card("Consumption and range");
	const burns = spaces((await running.findByText(/L\/100 km/)).textContent);
	const [median, low, high] = (/about ([\d.]+) L\/100 km, 9 in 10: ([\d.]+)–([\d.]+)/.exec(burns) ?? [])
		.slice(1)
		.map(Number);
	expect(low).toBeLessThan(8);
	expect(high).toBeGreaterThan(8);
	expect(Math.abs(median - 8)).toBeLessThan(1);
	running.getByText("Until empty");
});

test("who counts in gallons reads miles", async () => {
	const app = await openCosts([
		start,
		stop(6, 2, { pricePerLitre: 1, odometerKm: 10_000 }),
		stop(6, 9, { pricePerLitre: 1, odometerKm: 10_500 }),
	]);
	await app.model.saveSettings({ units: { car: "gal" } });
	const distance = await card("What the distance cost");
	await distance.findByText("Per mile, about");
	distance.getByText("€0.129");
	const running = await card("Consumption and range");
	await running.findByText(/miles per gal/);
	running.getByText("It goes");
});

test.each([
	["no odometer", [stop(6, 2), stop(6, 9)], /no stop has it yet/],
	["one odometer", [stop(6, 2, { odometerKm: 5 }), stop(6, 9)], /so far one has it/],
	["no prices", [stop(6, 2, { odometerKm: 5 }), stop(6, 9, { odometerKm: 500 })], /every fill has a price/],
	[
		"an odometer that runs backwards",
		[stop(6, 2, { odometerKm: 500, pricePerLitre: 1 }), stop(6, 9, { odometerKm: 5, pricePerLitre: 1 })],
		/no car burns that little or that much/,
	],
	[
		"little poured and no click",
		[
			stop(6, 2, { odometerKm: 5, pricePerLitre: 1, litres: 5, toClick: false }),
			stop(6, 9, { odometerKm: 80, pricePerLitre: 1, litres: 5, toClick: false }),
		],
		/Fill to the nozzle’s click twice/,
	],
])("with %s the cost of the distance says what is missing", async (_name, events, words) => {
	await openCosts([start, ...events]);
	(await card("What the distance cost")).getByText(words);
});

test("without an odometer nothing is made up about consumption", async () => {
	await openCosts([start, stop(6, 2)]);
	await (await card("Consumption and range")).findByText(/learned from the odometer at two stops/);
});

test("without any price or any fill a clear sentence stands in place of the figures", async () => {
	await openCosts([start, stop(6, 2), stop(6, 9)]);
	(await card("Fuel bought")).getByText("No price was entered for any of the 2 fills.");
});

test("a log without fuel leads to the fill form", async () => {
	await openCosts([start, stop(6, 2), aVoid({ target: "6-2", at: "2026-06-03T12:00:00Z" })]);
	await screen.findByRole("heading", { name: "No fuel is in the log yet" });
	expect(screen.getByRole("link", { name: "Record a fill" }).getAttribute("href")).toBe("#/fill");
});

test("without a currency amounts are plain numbers, and the way to choose one is shown", async () => {
	await openCosts([start, stop(6, 2, { pricePerLitre: 1.5 })], aCar());
	const bought = await card("Fuel bought");
	expect(bought.getAllByText("60.00").length).toBeGreaterThan(1);
	expect(bought.getByRole("link", { name: "Choose it under Car" }).getAttribute("href")).toBe("#/car");
});

test("many months and stops are told in portions", async () => {
	const events = Array.from({ length: 30 }, (_, i) => {
		const at = new Date(Date.parse("2025-01-10T12:00:00Z") + i * 17 * 86_400_000).toISOString();
		return aFill({ id: `f${i}`, stop: `s${i}`, at, product: e10, litres: 10, pricePerLitre: 1 });
	});
	const app = await openCosts(events);
	const bought = await card("Fuel bought");
	expect(bought.getAllByRole("listitem")).toHaveLength(6);
	await app.user.click(bought.getByRole("button", { name: /^Older months/ }));
	expect(bought.getAllByRole("listitem")).toHaveLength(12);
	const stops = await card("Stop by stop");
	await app.user.click(stops.getByRole("button", { name: "Older stops (18)" }));
	expect(stops.getAllByRole("listitem")).toHaveLength(24);
});

test("the invented car shows costs of every kind, some of them with something missing", {
	timeout: 60_000,
}, async () => {
	await openCosts(demoLog(now).events, demoLog(now).car);
	const bought = await card("Fuel bought");
	expect(bought.getAllByText(/^No price was entered for \d of \d+ fills/).length).toBeGreaterThan(0);
	expect(spaces((await card("What the ethanol cost")).getByText(/^The blends of/).textContent)).toMatch(/about \$/);
	(await card("What the distance cost")).getByText(/^Over/);
	await (await card("Consumption and range")).findByText("Until empty");
});

test("Costs is linked from Car and from the log", async () => {
	const app = await renderApp({ at: "#/car", now, logs: [{ car, events: [start, stop(6, 2)] }] });
	await app.user.click(await screen.findByRole("link", { name: "Costs and consumption" }));
	await card("Fuel bought");
	location.hash = "#/log";
	expect((await screen.findByRole("link", { name: "What it cost" })).getAttribute("href")).toBe("#/costs");
});

test("the currency is picked under Car, and taken away again", async () => {
	const app = await renderApp({ at: "#/car", now, logs: [{ car: aCar(), events: [start] }] });
	const select = await screen.findByRole("combobox", { name: "Fuel is paid in" });
	await app.user.selectOptions(select, "CHF");
	await app.user.click(screen.getByRole("button", { name: "Save the car" }));
	await waitFor(async () => expect((await app.store.cars())[0].currency).toBe("CHF"));
	await app.user.selectOptions(select, "");
	await app.user.click(screen.getByRole("button", { name: "Save the car" }));
	await waitFor(async () => expect((await app.store.cars())[0]).not.toHaveProperty("currency"));
});

test("the phone's country only suggests a currency", async () => {
	vi.stubGlobal("navigator", Object.create(navigator, { language: { value: "de-AT" } }));
	const app = await renderApp({ at: "#/car", now, logs: [{ car: aCar(), events: [start] }] });
	const select = (await screen.findByRole("combobox", { name: "Fuel is paid in" })) as HTMLSelectElement;
	expect(select.value).toBe("");
	await app.user.click(screen.getByRole("button", { name: "Take Euro (EUR)" }));
	expect(select.value).toBe("EUR");
	expect((await app.store.cars())[0]).not.toHaveProperty("currency");
	expect(screen.queryByRole("button", { name: /^Take/ })).toBeNull();
});

test("where the browser knows no currencies, three letters are typed", async () => {
	vi.stubGlobal("Intl", Object.create(Intl, { supportedValuesOf: { value: undefined } }));
	const app = await renderApp({ at: "#/car", now, logs: [{ car: aCar(), events: [start] }] });
	const field = await screen.findByRole("textbox", { name: "Fuel is paid in" });
	await app.user.type(field, "eu");
	await app.user.click(screen.getByRole("button", { name: "Save the car" }));
	await screen.findByText(/^Three letters/);
	expect((await app.store.cars())[0]).not.toHaveProperty("currency");
	await app.user.type(field, "r");
	await app.user.click(screen.getByRole("button", { name: "Save the car" }));
	await waitFor(async () => expect((await app.store.cars())[0].currency).toBe("EUR"));
});

test("money is written in its currency and never as less than nothing where it is nothing", () => {
	expect(money(1234.5, "USD")).toBe("$1,234.50");
	expect(money(1234.5, undefined)).toBe("1,234.50");
	expect(money(-0.001, undefined)).toBe("0.00");
	expect(money(123456.7, "JPY")).toBe("¥123,457");
	expect(spaces(unitPrice(1.7999, "L", "EUR"))).toBe("€1.800 per L");
	expect(spaces(unitPrice(3.459 / 3.785411784, "gal", "USD"))).toBe("$3.459 per gal");
	expect(spaces(unitPrice(175, "L", "JPY"))).toBe("¥175 per L");
	expect([costDistance("L").km, costDistance("gal").km]).toEqual([100, 1.609344]);
});

test("likelyCurrency() goes by the country and keeps silent where it says nothing", () => {
	expect(["en-US", "de-DE", "de-CH", "pt-BR", "de", "eo", "", undefined, "not a language"].map(likelyCurrency)).toEqual(
		["USD", "EUR", "CHF", "BRL", "EUR", null, null, null, null],
	);
});
