import { screen, waitFor, within } from "@testing-library/preact";
import { expect, test } from "vitest";
import { limitsOf } from "../../src/domain/engine/limits";
import { fraction } from "../../src/domain/quantity";
import { aCalibration, aCar, aStart } from "../helpers/logs";
import { type RenderedApp, renderApp } from "./renderApp";

const now = Date.parse("2026-06-10T15:30:00Z");
const sure = aStart({ contents: { value: 0.3, sd: 0.01 } });
/** Large enough for pure ethanol, but for its lambda. */
const card = {
	injectorFlowCcPerMin: 900,
	injectorCount: 4,
	pumpFlowLPerH: 250,
	powerKW: 185,
	consumptionGPerKWh: 345,
	trimAuthority: 0.9,
	commandedLambda: 0.82,
	leanestLambda: 0.9,
};
const field = (name: string | RegExp) => screen.getByLabelText(name, { selector: "input" });
const unit = (name: string) => screen.getByRole("combobox", { name: `Unit of “${name}”` });
const limits = () => within(screen.getByRole("region", { name: "Limits of the fuel system" }));
const limit = (name: string) => limits().getByText(`${name}:`).closest("li") as HTMLElement;
const save = () => screen.getByRole("button", { name: "Save the card" });
const saved = () => screen.findByText("The fuel-system card is saved.");
const propose = () => screen.getByRole("button", { name: /as the window’s upper edge/ });
const stored = async ({ store }: RenderedApp) => (await store.cars())[0].fuelSystem;

async function open(fuelSystem?: object, car: object = {}): Promise<RenderedApp> {
	const app = await renderApp({
		at: "#/engine",
		now,
		logs: [{ car: aCar({ ...car, ...(fuelSystem ? { fuelSystem } : {}) }), events: [sure] }],
	});
	await screen.findByRole("heading", { name: "Limits of the fuel system" });
	return app;
}

async function type(app: RenderedApp, typed: Record<string, string>): Promise<void> {
	for (const [name, text] of Object.entries(typed)) {
		const input = field(name);
		await app.user.clear(input);
		if (text !== "") await app.user.type(input, text);
	}
}

test("an empty card sets no limit, says so, and may be saved empty", async () => {
	const app = await open();
	screen.getByRole("heading", { name: "Fuel-system card: empty" });
	limits().getByText(/Too little is known for any limit/);
	limits().getByText(/Your tuner decides, then the car’s maker. Local law applies/);
	limits().getByText(/Nothing is known of injectors and pump/);
	limits().getByText(/The lambdas of full load are not on the card/);
	expect(limits().queryByRole("button")).toBeNull();
	await app.user.click(save());
	await saved();
	expect((await app.store.cars())[0]).toEqual(aCar());
});

test("a partial card sets the limits that it can and names what the others lack", async () => {
	const app = await open();
	await type(app, { "How far the trims can enrich, %": "25", "Number of injectors": "4" });
	// 25 % of trim on an E30 calibration reach as far as E82.
	expect(limit("Fuel trims").textContent).toMatch(/about 82.% \(71–92.%\)Binds/);
	expect(limit("Injectors").textContent).toMatch(
		/not known: “Flow of one injector”, “Largest power”, “Brake-specific consumption on gasoline” missing/,
	);
	expect(limit("Leanest lambda").textContent).toMatch(/“Lambda commanded at full load”, “Leanest lambda/);
	await app.user.click(save());
	await saved();
	expect(await stored(app)).toEqual({ trimAuthority: 0.25, injectorCount: 4 });
	screen.getByRole("heading", { name: "Fuel-system card: 2 of 18 entered" });
});

test("trims and lambda set no limit without a calibration, and say what they lack", async () => {
	await open({ trimAuthority: 0.25 }, { calibrations: [] });
	limits().getByText(/Too little is known/);
});

test("the limit that binds is named with its reason, and each limit’s spread is drawn", async () => {
	await open(card);
	expect(limit("Leanest lambda").textContent).toMatch(/Binds/);
	for (const name of ["Injectors", "Fuel pump", "Fuel trims"]) expect(limit(name).textContent).not.toMatch(/Binds/);
	limits().getByText(/The leanest lambda comes first.*with a chance of 1 in 20/);
	const drawn = limit("Leanest lambda").querySelector(".span");
	const [low, high] = (/\((\d+)–(\d+)/.exec(limit("Leanest lambda").textContent ?? "") ?? []).slice(1).map(Number);
	expect(Math.round(Number(drawn?.getAttribute("x")))).toBe(low);
	expect(Math.round(Number(drawn?.getAttribute("x")) + Number(drawn?.getAttribute("width")))).toBe(high);
	expect(high).toBeGreaterThan(low + 5);
	expect(limit("Tank now").textContent).toMatch(/about 30.% \(28–32.%\)/);
});

test("the limits follow what is typed, before it is saved", async () => {
	const app = await open(card);
	const before = propose().textContent;
	await type(app, { "Leanest lambda the tuner accepts there": "0,95" });
	expect(propose().textContent).not.toBe(before);
	expect(await stored(app)).toEqual(card);
});

test("the chance that the calibration accepts of too much ethanol is that of the edge", async () => {
	await open(card, { calibrations: [aCalibration({ leanBudget: 0.01 })] });
	const strict = limitsOf(card, fraction(0.3), 0.01).leanEdge?.content ?? 1;
	expect(strict).toBeLessThan((limitsOf(card, fraction(0.3)).leanEdge?.content ?? 0) - 0.02);
	const edge = Number(/Use ([\d.]+)/.exec(propose().textContent ?? "")?.[1]);
	expect(edge).toBeCloseTo(Math.floor(strict * 1000) / 10, 9);
	limits().getByText(/with a chance of 1 in 100/);
});

test("a fuel system that falls short of the calibration proposes no edge", async () => {
	await open({ ...card, injectorFlowCcPerMin: 500 });
	limits().getByText(/That is less than the calibration was made for: stay out of boost/);
	expect(screen.queryByRole("button", { name: /upper edge/ })).toBeNull();
});

test("a fuel system that is enough for pure ethanol sets no edge", async () => {
	await open({ pumpFlowLPerH: 900, powerKW: 185, consumptionGPerKWh: 345 });
	limits().getByText("Nothing that is known here sets a limit below pure ethanol.");
	expect(limit("Fuel pump").textContent).toMatch(/none, it is enough for pure ethanol/);
});

test("a tank that reaches past the edge is said to", async () => {
	// Full load runs as lean as the tuner accepts at 31 %, surely enough.
	await open({ commandedLambda: 0.82, leanestLambda: 0.851 });
	limits().getByText(/^Use 31.% as/);
	limits().getByText(/The tank’s range, 28–32.%, reaches past it: stay out of boost/);
});

test("units are those of the trade, and the car keeps the core’s", async () => {
	const app = await open();
	// In American English these are the first; the pump's flow goes by L/h even there.
	for (const [name, chosen] of [
		["Flow of one injector", "lb/h"],
		["Pressure at which that flow is stated", "psi"],
		["Largest power", "hp"],
		["Brake-specific consumption on gasoline", "lb/hp·h"],
		["Pump flow at full load", "L/h"],
	])
		expect(unit(name)).toHaveProperty("value", chosen);
	await app.user.selectOptions(unit("Pump flow at full load"), "gal/h");
	await type(app, {
		"Flow of one injector, lb/h": "60",
		"Pressure at which that flow is stated, psi": "43.5",
		"Pressure across the injector at full load, psi": "58",
		"Number of injectors": "4",
		"Largest injector duty, %": "85",
		"Pump flow at full load, gal/h": "60",
		"Largest power, hp": "250",
		"Brake-specific consumption on gasoline, lb/hp·h": "0.6",
	});
	await app.user.click(save());
	await saved();
	const { fuelSystem } = (await app.store.cars())[0];
	expect(fuelSystem?.injectorFlowCcPerMin).toBeCloseTo(630, 6);
	expect(fuelSystem?.injectorRatedKPa).toBeCloseTo(299.92, 2);
	expect(fuelSystem?.injectorFullLoadKPa).toBeCloseTo(399.9, 1);
	expect(fuelSystem?.dutyLimit).toBeCloseTo(0.85, 9);
	expect(fuelSystem?.pumpFlowLPerH).toBeCloseTo(227.12, 2);
	expect(fuelSystem?.powerKW).toBeCloseTo(186.42, 2);
	expect(fuelSystem?.consumptionGPerKWh).toBeCloseTo(364.97, 2);

	const again = await app.restart();
	await again.user.click(await screen.findByRole("heading", { name: "Fuel-system card: 8 of 18 entered" }));
	expect(field("Flow of one injector, lb/h")).toHaveProperty("value", "60");
	expect(unit("Pump flow at full load")).toHaveProperty("value", "gal/h");
	await again.user.selectOptions(unit("Largest power"), "PS");
	expect(field("Largest power, PS")).toHaveProperty("value", "253.47");
	await again.user.selectOptions(unit("Pressure at which that flow is stated"), "bar");
	expect(field("Pressure across the injector at full load, bar")).toHaveProperty("value", "3.999");
});

test("a typed number stays as typed in another unit, a stored one is shown in it and stays exact", async () => {
	const app = await open({ powerKW: 185.4321, pumpFlowLPerH: 155 });
	await app.user.click(screen.getByRole("heading", { name: /^Fuel-system card/ }));
	await type(app, { "Pump flow at full load, L/h": "60" });
	await app.user.selectOptions(unit("Pump flow at full load"), "gal/h");
	expect(field("Pump flow at full load, gal/h")).toHaveProperty("value", "60");
	expect(field("Largest power, hp")).toHaveProperty("value", "248.67");
	await app.user.selectOptions(unit("Largest power"), "kW");
	expect(field("Largest power, kW")).toHaveProperty("value", "185.43");
	await app.user.click(save());
	await saved();
	expect((await stored(app))?.powerKW).toBe(185.4321);
	expect((await stored(app))?.pumpFlowLPerH).toBeCloseTo(227.12, 2);
});

test("what can’t be is said beside its field, in its unit, and nothing is saved or reckoned", async () => {
	const app = await open();
	await type(app, {
		"Flow of one injector, lb/h": "5500",
		"Number of injectors": "4.5",
		"Largest power, hp": "lots",
		"Lambda commanded at full load": "0.86",
		"Leanest lambda the tuner accepts there": "0.8",
	});
	limits().getByText(/can’t be used as it stands, so no limit is reckoned/);
	expect(field("Number of injectors").getAttribute("aria-invalid")).toBeNull();
	await app.user.click(save());
	expect(descriptionOf(field("Flow of one injector, lb/h"))).toMatch(
		/must lie between 4\.7619 and 476\.19.lb\/h: check the number and the unit/,
	);
	expect(descriptionOf(field("Number of injectors"))).toMatch(/a whole number, such as 4/);
	expect(descriptionOf(field("Largest power, hp"))).toMatch(/Use digits/);
	expect(descriptionOf(field("Leanest lambda the tuner accepts there"))).toMatch(/not be less than.*0\.86/);
	await waitFor(() => expect(document.activeElement).toBe(field("Flow of one injector, lb/h")));
	expect(await stored(app)).toBeUndefined();
});

test("a fault among the doubts opens them, and doubts that are stated count", async () => {
	const app = await open(card);
	await app.user.click(screen.getByRole("heading", { name: /^Fuel-system card/ }));
	const usual = limit("Leanest lambda").textContent;
	const doubts = screen.getByText("How sure these numbers are", { selector: "summary" });
	await app.user.click(doubts);
	await type(app, { "Doubt of the lambda, %": "80" });
	await app.user.click(doubts);
	await app.user.click(save());
	await waitFor(() => expect(document.activeElement).toBe(field("Doubt of the lambda, %")));
	expect(descriptionOf(field("Doubt of the lambda, %"))).toMatch(/Empty counts as 2.%.*between 0\.1 and 50.%/);
	await type(app, { "Doubt of the lambda, %": "1" });
	expect(limit("Leanest lambda").textContent).not.toBe(usual);
	await app.user.click(save());
	await saved();
	expect(await stored(app)).toEqual({ ...card, spreads: { lambda: 0.01 } });
});

test("a half-typed card comes back after the app was killed", async () => {
	const app = await open(card);
	await app.user.click(screen.getByRole("heading", { name: /^Fuel-system card/ }));
	await app.user.selectOptions(unit("Largest power"), "PS");
	await type(app, { "Largest power, PS": "3", "Number of injectors": "" });
	const again = await app.restart();
	// Open at once, for something waits in it.
	expect(await screen.findByLabelText("Largest power, PS")).toHaveProperty("value", "3");
	expect(field("Number of injectors")).toHaveProperty("value", "");
	expect(await stored(again)).toEqual(card);
	await type(again, { "Largest power, PS": "300" });
	await again.user.click(save());
	await saved();
	const { injectorCount: _, ...rest } = card;
	expect(await stored(again)).toMatchObject({ ...rest, powerKW: expect.closeTo(220.65, 2) });
	expect(await stored(again)).not.toHaveProperty("injectorCount");
	expect(await again.store.draft("car/fuelSystem")).toBeUndefined();
});

test("an emptied card is taken off the car", async () => {
	const app = await open({ trimAuthority: 0.25 });
	await app.user.click(screen.getByRole("heading", { name: /^Fuel-system card/ }));
	await type(app, { "How far the trims can enrich, %": "" });
	await app.user.click(save());
	await saved();
	// When it was taken off is noted: another phone that still has it is to lose it, too.
	expect((await app.store.cars())[0]).toEqual({ ...aCar(), changed: { fuelSystem: expect.any(String) } });
});

test("fields of a newer version do no harm and stay on the card", async () => {
	const app = await open({ ...card, note: "mine", spreads: { lambda: 0.01, future: "x" } });
	await app.user.click(screen.getByRole("heading", { name: /^Fuel-system card/ }));
	await type(app, { "How far the trims can enrich, %": "20" });
	await app.user.click(save());
	await saved();
	expect(await stored(app)).toEqual({
		...card,
		trimAuthority: 0.2,
		note: "mine",
		spreads: { lambda: 0.01, future: "x" },
	});
});

function descriptionOf(element: HTMLElement): string {
	const ids = element.getAttribute("aria-describedby")?.split(" ") ?? [];
	return ids.map((id) => document.getElementById(id)?.textContent ?? "").join(" ");
}
