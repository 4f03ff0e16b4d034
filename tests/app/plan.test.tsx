import { screen, waitFor, within } from "@testing-library/preact";
import { expect, test } from "vitest";
import type { KeeperPort } from "../../src/app/keeperPort";
import type { Calibration, Car } from "../../src/domain/vehicle";
import type { PlanAnswer, PlanAsk } from "../../src/keeper/view";
import { aCalibration, aCar, aFill, aStart } from "../helpers/logs";
import { type RenderedApp, renderApp } from "./renderApp";

const flex = { id: "flex-51-83", range: [0.51, 0.83] };
const e10 = { id: "gasoline-e10", range: [0.09, 0.1] };
const blend: Calibration = aCalibration({ name: "Blend 30" });
const weak: Calibration = aCalibration({ id: "weak", name: "Pump gasoline", calibratedFor: 0.1, window: [0, 0.15] });
const car = aCar({ calibrations: [blend, weak], currency: "EUR" });
const life = [
	aStart({ at: "2026-05-01T12:00:00+02:00", contents: { range: [0.09, 0.1] }, gauge: 0.25 }),
	aFill({
		id: "f1",
		stop: "s1",
		at: "2026-05-02T12:00:00+02:00",
		product: flex,
		litres: 12,
		place: "Harbour",
		pricePerLitre: 0.9,
		odometerKm: 84000,
	}),
	aFill({ id: "f2", stop: "s1", at: "2026-05-02T12:01:00+02:00", product: e10, litres: 20, place: "Harbour" }),
	aFill({ id: "f0", stop: "s0", at: "2026-05-01T18:00:00+02:00", product: e10, litres: 5, place: "Mill Road" }),
];

const plan = {
	pours: [
		{ product: e10, litres: 12.5, toClick: false },
		{ product: flex, litres: 9.04, toClick: true },
	],
	chances: { below: 0.1, inside: 0.86, above: 0.04 },
	content: { median: 0.3, low: 0.26, high: 0.33 },
	cost: 31.4,
	swapped: { below: 0.1, inside: 0.7, above: 0.2 },
};
const planned = (value: Record<string, unknown> = {}) => ({
	ok: true,
	value: { plan, verdict: "inside", reach: [0.15, 0.6], ...value },
});
const answer = (fields: Record<string, unknown> = {}): PlanAnswer =>
	({
		planned: planned(),
		calibration: blend,
		dots: Array.from({ length: 20 }, (_, i) => 0.265 + i * 0.003),
		otherwise: null,
		...fields,
	}) as never;

interface Planning extends RenderedApp {
	/** Questions so far. */
	readonly asks: PlanAsk[];
}

/** Opens the plan on a keeper that answers as told; without a word, on the real one. */
async function openPlan(
	reply: ((ask: PlanAsk) => PlanAnswer | null) | null,
	options: { readonly car?: Car; readonly at?: string; readonly logs?: typeof life } = {},
): Promise<Planning> {
	const asks: PlanAsk[] = [];
	const wrap = (keeper: KeeperPort): KeeperPort => ({
		...keeper,
		plan: async (carId, ask) => {
			asks.push(ask);
			return reply ? reply(ask) : keeper.plan(carId, ask);
		},
	});
	const app = await renderApp({
		at: options.at ?? "#/plan",
		logs: [{ car: options.car ?? car, events: options.logs ?? life }],
		wrap,
	});
	return { ...app, asks };
}

const plain = (text: string | null | undefined) => text?.replaceAll("\u00a0", " ") ?? "";
const region = (name: string) => screen.findByRole("region", { name });
const pump = () => screen.findByRole("button", { name: /^Pump this/ });
const lines = async () =>
	within(await region("What to pump"))
		.getAllByRole("listitem")
		.map((item) => plain(item.textContent));

test("the plan asks with what the log knows, and is there without a tap", async () => {
	const app = await openPlan(() => answer());
	expect(await lines()).toEqual(["12.5 L of Gasoline E10 (US)", "then Flex fuel E85 (US) to the click, about 9.0 L"]);
	screen.getByText("Inside: 17 in 20.");
	screen.getByText(/Too much: 1 in 20, too little: 2 in 20/);
	screen.getByText(/It costs about €31.40/);
	screen.getByText(/^Gasoline E10 \(US\) first: if the nozzle clicks early/);
	screen.getByRole("img", { name: /^Twenty equally likely/ });
	screen.getByText(/^For “Blend 30”, window 26–34/);
	expect(app.asks[0]).toMatchObject({
		visit: { place: "Harbour" },
		offers: [{ product: e10 }, { product: flex, pricePerLitre: 0.9 }],
		fullness: { kind: "click" },
		poured: [],
		targetCalibration: null,
	});
	expect(app.asks[0].visit).not.toHaveProperty("gauge");
});

test("it follows what is changed: products, place, gauge, odometer, fullness, target and step", async () => {
	const app = await openPlan(() => answer());
	await pump();
	const latest = async (expected: Record<string, unknown>) =>
		waitFor(() => expect(app.asks.at(-1)).toMatchObject(expected));
	await app.user.click(screen.getByRole("checkbox", { name: /^Flex fuel/ }));
	await latest({ offers: [{ product: e10 }] });
	await app.user.click(screen.getByRole("button", { name: "Another product" }));
	await app.user.click(screen.getByRole("button", { name: /^Gasoline E15/ }));
	await latest({ offers: [{ product: e10 }, { product: { id: "gasoline-e15" } }] });
	await app.user.click(screen.getByRole("button", { name: "Fuel gauge now: a step less" }));
	await latest({ visit: { gauge: 0.5 } });
	await app.user.type(screen.getByRole("textbox", { name: "Odometer, km" }), "83000");
	screen.getByText(/Less than the last time/);
	await latest({ visit: { odometerKm: 83000 } });
	await app.user.click(screen.getByRole("radio", { name: "An amount" }));
	screen.getByText("How much in all? Type it below.");
	await app.user.type(screen.getByRole("textbox", { name: "In all, L" }), "20");
	await latest({ fullness: { kind: "litres", litres: 20 } });
	await app.user.click(screen.getByRole("radio", { name: "For a sum of money" }));
	await app.user.type(screen.getByRole("textbox", { name: "For how much, EUR" }), "40");
	await app.user.type(screen.getByRole("textbox", { name: "Gasoline E10 (US), price per L, EUR" }), "1.7");
	await latest({ fullness: { kind: "money", amount: 40 }, offers: [{ product: e10, pricePerLitre: 1.7 }, {}] });
	await app.user.click(screen.getByRole("radio", { name: /^Pump gasoline/ }));
	await latest({ targetCalibration: "weak" });
	const step = screen.getByRole("textbox", { name: "Amounts in steps of, L" });
	await app.user.clear(step);
	await app.user.type(step, "1");
	await latest({ handling: { step: 1 } });
	await app.user.click(screen.getByRole("button", { name: "Mill Road" }));
	await latest({ visit: { place: "Mill Road" } });
});

test("a form that is half filled in is there again after the app was killed, the same stop", async () => {
	let app: RenderedApp = await openPlan(() => answer());
	await pump();
	await app.user.click(screen.getByRole("radio", { name: "An amount" }));
	await app.user.type(screen.getByRole("textbox", { name: "In all, L" }), "17");
	await app.user.click(screen.getByRole("button", { name: "Fuel gauge now: a step less" }));
	const stop = (draft: unknown) => (draft as { stop: string }).stop;
	const before = stop(await app.store.draft("car/plan"));
	app = await app.restart();
	expect(((await screen.findByRole("textbox", { name: "In all, L" })) as HTMLInputElement).value).toBe("17");
	screen.getByText(/^Gauge now: ½/);
	expect(stop(await app.store.draft("car/plan"))).toBe(before);
	expect(stop(await app.store.draft("car/fill"))).toBe(before);
});

test("where no plan does it, that is said first, and what else could be done is reckoned when it is asked for", async () => {
	const stage = { visit: { stop: "a" }, planned: { plan, verdict: "knock", reach: [0.1, 0.6] } };
	const last = { visit: { stop: "b" }, planned: { plan, verdict: "inside", reach: [0.1, 0.6] } };
	const otherwise = { burnFirst: 8, burnKm: 104, stages: [stage, last], drive: { gauge: 0.25, days: 7 } };
	const app = await openPlan((ask) =>
		answer({ planned: planned({ verdict: "knock" }), otherwise: ask.otherwise ? otherwise : null }),
	);
	const told = within(await region("No plan does it"));
	told.getByRole("heading", { name: "Likely inside, not as surely as you asked" });
	await screen.findByRole("button", { name: "Pump this all the same" });
	expect(app.asks.some((ask) => ask.otherwise)).toBe(false);
	await app.user.click(screen.getByText("What else could be done"));
	const details = screen.getByText("What else could be done").closest("details") as HTMLDetailsElement;
	// jsdom opens it without telling.
	details.open = true;
	details.dispatchEvent(new Event("toggle"));
	expect(plain((await screen.findByText(/^Burn about/)).textContent)).toMatch(/8.0 L first, some 100 km/);
	screen.getByText(/^In 2 stops it comes inside/);
	expect(within(details).getAllByRole("listitem")).toHaveLength(2);
	// What would help most is one tap away.
	await app.user.click(told.getByRole("button", { name: "Note the gauge" }));
	expect(document.activeElement).toBe(screen.getByRole("slider", { name: "Fuel gauge now" }));
	await app.user.click(screen.getByRole("button", { name: "Fuel gauge now: a step less" }));
	await waitFor(() => expect(screen.queryByRole("button", { name: "Note the gauge" })).toBeNull());
});

test("a lean risk that no plan takes away is told with what else could be done, unasked", async () => {
	const otherwise = { burnFirst: null, burnKm: null, stages: [], drive: { gauge: 0.25, days: 7 } };
	const app = await openPlan((ask) =>
		answer({ planned: planned({ verdict: "lean" }), otherwise: ask.otherwise ? otherwise : null }),
	);
	await screen.findByRole("heading", { name: "No plan keeps the lean risk as low as you asked" });
	await screen.findByText(/^How much to drive off first can be said once the gauge is noted/);
	expect(app.asks.at(-1)?.otherwise).toBe(true);
	await app.user.click(screen.getByRole("button", { name: "Fuel gauge now: a step less" }));
	await screen.findByText(/even with a nearly empty tank no plan comes inside/);
});

test("a window out of reach is told with the product it would take, and the gauge is not asked for in vain", async () => {
	await openPlan(() => answer({ planned: planned({ verdict: "knock", reach: [0.1, 0.2] }) }));
	await screen.findByRole("heading", { name: "Out of reach with these products" });
	screen.getByText(/It takes a product with more ethanol/);
	expect(screen.queryByRole("button", { name: "Note the gauge" })).toBeNull();
});

test("what can't be planned is said with what to change, and nothing typed is lost", async () => {
	let error: unknown = { code: "nothingOnSale" };
	const app = await openPlan(() => answer({ planned: { ok: false, error }, dots: null }));
	await screen.findByText("Tick at least one product that is on sale here.");
	expect(screen.queryByRole("button", { name: /^Pump/ })).toBeNull();
	error = { code: "doesNotFit", room: 12.34 };
	await app.user.click(screen.getByRole("radio", { name: "An amount" }));
	await app.user.type(screen.getByRole("textbox", { name: "In all, L" }), "50");
	await screen.findByText(/12.3.L surely do/);
	expect((screen.getByRole("textbox", { name: "In all, L" }) as HTMLInputElement).value).toBe("50");
});

test("an answer that does not come is said, and the form stays", async () => {
	await openPlan(() => {
		throw new Error("the worker died");
	});
	await screen.findByText(/^The plan could not be reckoned/);
	screen.getByRole("checkbox", { name: /^Flex fuel/ });
});

test("a number that can't be read is said beside its field and above, and nothing is asked with it", async () => {
	const app = await openPlan(() => answer());
	await pump();
	const before = app.asks.length;
	await app.user.type(screen.getByRole("textbox", { name: "Least that the dispenser sells, L" }), "x");
	screen.getByText("Mend what is marked below.");
	screen.getByText(/Use digits and at most one comma/);
	expect(app.asks).toHaveLength(before);
});

test("the fold of details stays open while a number in it becomes one", async () => {
	const app = await openPlan(() => answer());
	await pump();
	const step = screen.getByRole("textbox", { name: "Amounts in steps of, L" });
	await app.user.clear(step);
	const fold = step.closest("details") as HTMLDetailsElement;
	await waitFor(() => expect(fold.open).toBe(true));
	await app.user.type(step, "1");
	await pump();
	expect(fold.open).toBe(true);
});

test("prices and ticks of the driver stay when the place is named", async () => {
	const app = await openPlan(() => answer());
	await pump();
	const price = screen.getByRole("textbox", { name: "Flex fuel E85 (US), price per L, EUR" });
	await app.user.clear(price);
	await app.user.type(price, "0.95");
	await app.user.click(screen.getByRole("button", { name: "Mill Road" }));
	await waitFor(() => expect(app.asks.at(-1)?.visit.place).toBe("Mill Road"));
	expect(app.asks.at(-1)?.offers).toMatchObject([{ product: e10 }, { product: flex, pricePerLitre: 0.95 }]);
});

test("an answer to what was asked before says so in words, and can't be pumped", async () => {
	let release = () => {};
	const app = await openPlan(() => answer());
	await pump();
	const ask = app.model.plan;
	const waiting = new Promise<void>((done) => {
		release = done;
	});
	app.model.plan = async (carId, asked) => waiting.then(() => ask(carId, asked));
	await app.user.click(screen.getByRole("button", { name: "Fuel gauge now: a step less" }));
	await screen.findByRole("heading", { name: "What to pump: reckoning…" });
	for (const name of ["What to pump", "What it leads to"]) {
		expect((await region(name)).getAttribute("aria-busy")).toBe("true");
	}
	release();
	await screen.findByRole("heading", { name: "What to pump" });
	expect((await region("What it leads to")).getAttribute("aria-busy")).toBe("false");
});

test("the odometer and a price typed before go into the stop that is pumped, and pumping is undone with a tap", async () => {
	const app = await openPlan(() => answer(), { at: "#/fill" });
	await app.user.type(await screen.findByRole("textbox", { name: "Price per L, EUR" }), "0.89");
	location.hash = "#/plan";
	await pump();
	await app.user.type(screen.getByRole("textbox", { name: "Odometer, km" }), "84321");
	await waitFor(() => expect(app.asks.at(-1)?.visit.odometerKm).toBe(84321));
	const before = await app.store.draft("car/fill");
	await app.user.click(await pump());
	await screen.findByRole("heading", { name: /^First: 12.5.L of Gasoline E10/ });
	expect((screen.getByRole("textbox", { name: "Odometer, km" }) as HTMLInputElement).value).toBe("84321");
	expect(screen.queryByText(/^Planned before/)).toBeNull();
	await app.user.click(screen.getByRole("button", { name: "Undo" }));
	await pump();
	expect(location.hash).toBe("#/plan");
	expect(await app.store.draft("car/fill")).toEqual(before);
});

test("what the fill form holds already is planned around, and pumping the plan keeps it", async () => {
	const app = await openPlan(() => answer(), { at: "#/fill" });
	await screen.findByRole("textbox", { name: /^Amount/ });
	await app.user.click(screen.getByRole("button", { name: "3" }));
	await app.user.click(screen.getByRole("link", { name: "How much of each?" }));
	const already = within(await region("Poured already"));
	already.getByText(/3.L of Flex fuel E85/);
	await app.user.click(await pump());
	expect(app.asks.at(-1)?.poured).toMatchObject([{ litres: 3, product: flex }]);
	await screen.findByRole("heading", { name: /^First: 12.5.L of Gasoline E10/ });
	screen.getByText(/^1\. 3.L of “Flex fuel/);
});

test("a car without a calibration is led to entering one", async () => {
	await openPlan(null, { car: aCar({ calibrations: [] }) });
	expect((await screen.findByRole("link", { name: "Enter the calibration" })).getAttribute("href")).toBe(
		"#/calibration",
	);
});

test("the tank leads to the plan, and the real keeper answers it", async () => {
	const app = await openPlan(null, { at: "#/tank" });
	await app.user.click(await screen.findByRole("link", { name: "What to pump" }));
	await pump();
	expect((await lines()).length).toBeGreaterThan(0);
	expect(app.asks).toHaveLength(1);
});
