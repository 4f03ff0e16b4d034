import { screen, waitFor, within } from "@testing-library/preact";
import { expect, test } from "vitest";
import { type FillDraft, newDraft } from "../../src/app/fillDraft";
import { withPlan } from "../../src/app/fillPlan";
import type { KeeperPort } from "../../src/app/keeperPort";
import type { FillEvent } from "../../src/domain/event";
import type { PlanAnswer, PlanAsk } from "../../src/keeper/view";
import { aCalibration, aCar, aFill, aStart } from "../helpers/logs";
import { answerQuestion } from "./answerQuestion";
import { type RenderedApp, renderApp } from "./renderApp";

const car = aCar({ calibrations: [aCalibration({ name: "Blend 30" })], currency: "EUR" });
const flex = { id: "flex-51-83", range: [0.51, 0.83] } as never;
const e10 = { id: "gasoline-e10", range: [0.09, 0.1] } as never;
const life = [
	aStart({ at: "2026-05-01T12:00:00+02:00", contents: { range: [0.25, 0.33] }, gauge: 0.25 }),
	aFill({
		id: "f1",
		stop: "s1",
		at: "2026-05-02T12:00:00+02:00",
		product: e10,
		litres: 3,
		place: "Harbour",
		odometerKm: 84000,
		pricePerLitre: 1.7,
	}),
];
const now = Date.parse("2026-06-01T15:30:00Z");
const at = "2026-06-01T15:30:00+00:00";

const pours = [
	{ product: e10, litres: 12.5, toClick: false },
	{ product: flex, litres: 9.04, toClick: true },
];
const made = {
	pours,
	chances: { below: 0.1, inside: 0.86, above: 0.04 },
	content: { median: 0.3, low: 0.26, high: 0.33 },
	cost: null,
	swapped: { below: 0.1, inside: 0.7, above: 0.2 },
} as never;
const ask = {
	visit: { stop: "guided", at },
	poured: [],
	instead: [],
	offers: [{ product: e10 }, { product: flex }],
	fullness: { kind: "click" },
	targetCalibration: null,
	handling: { step: 0.5, minimum: 0 },
	ids: ["one", "two"],
} as unknown as PlanAsk;
const empty = newDraft(() => "guided", e10, "Harbour", "L");
const started = withPlan(empty, ask, made, now);
const second = (litres: number, verdict = "inside"): PlanAnswer =>
	({
		planned: {
			ok: true,
			value: { plan: { ...(made as object), pours: [{ ...pours[1], litres }] }, verdict, reach: [0.1, 0.6] },
		},
		calibration: car.calibrations[0],
		dots: null,
		otherwise: null,
	}) as never;

interface Guided extends RenderedApp {
	readonly asks: PlanAsk[];
}

/** The fill form with a plan in it, on a keeper that plans the rest as told. */
async function openGuided(reply: () => Promise<PlanAnswer | null>, draft: FillDraft = started): Promise<Guided> {
	const asks: PlanAsk[] = [];
	const wrap = (keeper: KeeperPort): KeeperPort => ({
		...keeper,
		plan: (_, asked) => {
			asks.push(asked);
			return reply();
		},
	});
	const app = await renderApp({ logs: [{ car, events: life }], wrap, now });
	await app.store.saveDraft("car/fill", draft);
	location.hash = "#/fill";
	await screen.findByRole("textbox", { name: /^Amount/ });
	return { ...app, asks };
}

const spaces = (text: string | null | undefined) => text?.replaceAll("\u00a0", " ") ?? "";
const button = (name: string | RegExp) =>
	screen.getByRole("button", { name: typeof name === "string" ? (heard) => spaces(heard) === name : name });
const theplan = () => within(screen.getByRole("region", { name: "The plan" }));
const heading = async (name: RegExp) => screen.findByRole("heading", { name });
const amount = () => screen.getByRole("textbox", { name: /^Amount/ }) as HTMLInputElement;
const saved = async (app: RenderedApp) =>
	(await app.events("car")).filter((event): event is FillEvent => event.kind === "fill" && event.id !== "f1");

async function press(app: RenderedApp, digits: string): Promise<void> {
	for (const key of digits) await app.user.click(button(key === "." ? "decimal" : key));
}

async function save(app: RenderedApp, name: string): Promise<void> {
	await app.user.click(button(name));
	await answerQuestion(app);
}

test("a plan leads through the stop: as planned, then the second anew, then saved under the planned ids", async () => {
	const app = await openGuided(async () => second(9.04));
	await heading(/^First: 12.5.L of Gasoline E10/);
	theplan().getByText(/^Then Flex fuel E85 \(US\) to the click, about 9.0.L/);
	theplan().getByText(/^Gasoline E10 \(US\) first: if the nozzle clicks early/);
	expect(screen.queryByText("What are you pumping?")).toBeNull();
	await screen.findByText(/^After 12.5.L \+ 9.L about/);
	await app.user.click(button("12.5 L, as planned"));
	expect(amount().value).toBe("12.5");
	expect(button("✓ 12.5 L, as planned").getAttribute("aria-pressed")).toBe("true");
	await app.user.click(button(/^Next product: Flex fuel/));
	await heading(/^Then: Flex fuel E85 \(US\) to the click, about 9.0.L/);
	expect(app.asks).toMatchObject([
		{ poured: [{ id: "one", litres: 12.5 }], offers: [{ product: flex }], ids: ["two"], fullness: { kind: "click" } },
	]);
	expect(theplan().queryByText(/Planned/)).toBeNull();
	expect(button("✓ Filled to the first click").getAttribute("aria-pressed")).toBe("true");
	await press(app, "8.7");
	await save(app, "Save 12.5 L + 8.7 L");
	expect(await saved(app)).toMatchObject([
		{ id: "one", stop: "guided", product: e10, litres: 12.5, place: "Harbour" },
		{ id: "two", stop: "guided", product: flex, litres: 8.7, toClick: true },
	]);
	expect((await saved(app))[0]).not.toHaveProperty("pricePerLitre");
	expect(await app.store.draft("car/fill")).toBeUndefined();
});

test("what really went in changes the second amount, says why, and survives a killed app", async () => {
	let app: RenderedApp = await openGuided(async () => second(7.4));
	await press(app, "14");
	await app.user.click(button(/^Next product/));
	const words = "Planned 9.0 L, now 7.4 L, because the first came out larger, 14 L instead of 12.5 L.";
	expect(spaces((await screen.findByText(/^Planned 9.0/)).textContent)).toBe(words);
	app = await app.restart();
	await heading(/^Then: Flex fuel E85 \(US\) to the click, about 7.4.L/);
	expect(spaces(screen.getByText(/^Planned 9.0/).textContent)).toBe(words);
	// A slip of the finger in the first is mended by going back to it.
	await app.user.click(button("Change"));
	await heading(/^First: 12.5.L/);
	expect(amount().value).toBe("14");
	await app.user.click(button("Undo"));
	await heading(/^Then: Flex fuel/);
});

test("a first product that clicked early is explained, and the stop is saved as it is unless it was foam", async () => {
	const app = await openGuided(async () => second(9));
	await press(app, "8");
	expect(theplan().queryByText(/^It clicked/)).toBeNull();
	await app.user.click(button("Filled to the first click?"));
	expect(spaces(theplan().getByText(/^It clicked/).textContent)).toMatch(/^It clicked 4.5 L early.*seat it anew/);
	expect(screen.queryByRole("button", { name: /^Next product/ })).toBeNull();
	await screen.findByText(/^After 8.L about/);
	// It was foam: the click is taken back, and the rest is open again.
	await app.user.click(button("✓ Filled to the first click"));
	button(/^Next product/);
	await app.user.click(button("Filled to the first click?"));
	await save(app, "Save 8 L");
	expect(await saved(app)).toMatchObject([{ id: "one", litres: 8, toClick: true }]);
	expect(app.asks).toEqual([]);
});

test("where nothing more fits the stop is saved as it is, and another amount opens the rest again", async () => {
	const app = await openGuided(async () => second(0.1));
	await press(app, "18");
	await app.user.click(button(/^Next product/));
	await theplan().findByText(/^Nothing more fits/);
	expect(screen.queryByRole("button", { name: /^Next product/ })).toBeNull();
	await app.user.click(button("delete the last digit"));
	button(/^Next product/);
});

test("a rest that can't be reckoned leaves the plan as it was made, and says so", async () => {
	const app = await openGuided(async () => null);
	await press(app, "14");
	await app.user.click(button(/^Next product/));
	await heading(/^Then: Flex fuel E85 \(US\) to the click, about 9.0.L/);
	theplan().getByText(/could not be reckoned anew/);
});

test("a rest that no amount makes safe is called out", async () => {
	const app = await openGuided(async () => second(3, "lean"));
	await press(app, "14");
	await app.user.click(button(/^Next product/));
	await theplan().findByText(/^No amount keeps the lean risk as low as asked any more/);
});

test("the next product waits for an amount, and for one tap only", async () => {
	let answer = (_: PlanAnswer) => {};
	const app = await openGuided(() => new Promise((done) => (answer = done)));
	await app.user.click(button(/^Next product/));
	screen.getByText("How much was pumped? Type the amount as the pump shows it.");
	expect(app.asks).toEqual([]);
	await press(app, "12");
	await app.user.dblClick(button(/^Next product/));
	button("Reckoning…");
	answer(second(9.5));
	await heading(/^Then:/);
	expect(app.asks).toHaveLength(1);
	expect(screen.getAllByRole("button", { name: "Change" })).toHaveLength(1);
});

test("an amount that is changed while the rest is reckoned counts, not the answer", async () => {
	let answer = (_: PlanAnswer) => {};
	const app = await openGuided(() => new Promise((done) => (answer = done)));
	await press(app, "1");
	await app.user.click(button(/^Next product/));
	await press(app, "2");
	answer(second(9.5));
	await waitFor(() => expect(screen.queryByRole("button", { name: "Reckoning…" })).toBeNull());
	expect(amount().value).toBe("12");
	await heading(/^First:/);
});

test("a plan that no longer rests on what is noted says so, and leads to planning anew", async () => {
	const app = await openGuided(async () => second(8.1));
	await heading(/^First: 12.5.L/);
	await app.user.click(button("Fuel gauge before filling: a step less"));
	await heading(/^First: Gasoline E10 \(US\)$/);
	const words =
		"Planned before you changed the gauge: 12.5 L of Gasoline E10 (US), then Flex fuel E85 (US) to the click, about 9.0 L.";
	expect(spaces(theplan().getByRole("status").textContent)).toBe(words);
	expect(screen.queryByRole("button", { name: /as planned$/ })).toBeNull();
	expect(theplan().getByRole("link", { name: "Plan it anew" }).getAttribute("href")).toBe("#/plan");
	// What goes in all the same is followed by a second pour that knows of it.
	await press(app, "12");
	await app.user.click(button(/^Next product/));
	await heading(/^Then: Flex fuel E85 \(US\) to the click, about 8.1.L/);
	expect(app.asks[0].visit).toHaveProperty("gauge");
	await app.user.type(screen.getByRole("textbox", { name: "Odometer, km" }), "84100");
	await theplan().findByText(/^Planned before you changed the odometer/);
});

test("a strong product that is pumped first must be followed before driving, and only then", async () => {
	const strongFirst = {
		...(made as object),
		pours: [
			{ ...pours[1], toClick: false },
			{ ...pours[0], toClick: true },
		],
	};
	const reply = { ...strongFirst, pours: [{ ...pours[0], toClick: true }] } as never;
	const planned = { ok: true, value: { plan: reply, verdict: "inside", reach: [0.1, 0.6] } };
	const app = await openGuided(
		async () => ({ ...second(1), planned }) as never,
		withPlan(empty, ask, strongFirst as never, now),
	);
	const words = /^Gasoline E10 \(US\) belongs in before you drive: until then the blend may be past the lean limit/;
	await theplan().findByText(words);
	await press(app, "9");
	await app.user.click(button(/^Next product/));
	await heading(/^Then: Gasoline E10/);
	theplan().getByText(words);
});

test("the weaker product first needs no hurry", async () => {
	await openGuided(async () => second(9.04));
	await heading(/^First: 12.5.L/);
	expect(theplan().queryByText(/belongs in before you drive/)).toBeNull();
});

test("the fold of odometer and price opens on a number that can't be saved, and stays open once it can", async () => {
	const app = await openGuided(async () => null, empty);
	const field = screen.getByRole("textbox", { name: "Price per L, EUR" });
	const fold = field.closest("details") as HTMLDetailsElement;
	expect(fold.open).toBe(false);
	await app.user.type(field, "0.");
	await waitFor(() => expect(fold.open).toBe(true));
	await app.user.type(field, "8");
	await waitFor(() => expect(field.getAttribute("aria-invalid")).not.toBe("true"));
	expect(fold.open).toBe(true);
});

test("the plan can be left at any time; what is poured stays, and it can be taken up again", async () => {
	const app = await openGuided(async () => second(9.04));
	await press(app, "12");
	await app.user.click(button("Leave the plan"));
	expect(amount().value).toBe("12");
	expect(screen.queryByRole("region", { name: "The plan" })).toBeNull();
	screen.getByText("What are you pumping?");
	screen.getByRole("link", { name: "How much of each?" });
	button("A second product at this stop");
	await app.user.click(button("Undo"));
	await heading(/^First:/);
	expect(amount().value).toBe("12");
});

test("a plan of one product needs no order and no next product", async () => {
	const single = { ...(made as object), pours: [{ ...pours[0], litres: 20 }], swapped: null } as never;
	const app = await openGuided(async () => null, withPlan(empty, ask, single, now));
	await heading(/^Now: 20.L of Gasoline E10/);
	expect(screen.queryByRole("button", { name: /^Next product/ })).toBeNull();
	await app.user.click(button("20 L, as planned"));
	await save(app, "Save 20 L");
	expect(await saved(app)).toMatchObject([{ id: "one", litres: 20 }]);
});

test("a plan that was not pumped in time is no longer held out", async () => {
	const app = await openGuided(async () => null, { ...started, notedAt: now - 3 * 3_600_000, gauge: 0.5 });
	expect(screen.queryByRole("region", { name: "The plan" })).toBeNull();
	screen.getByText("Gauge before filling: not looked");
	expect(app.asks).toEqual([]);
});

test("odometer and prices are noted with the stop, kept through a killed app, and refused where they are none", async () => {
	let app: RenderedApp = await openGuided(async () => null, empty);
	await press(app, "20");
	await app.user.type(screen.getByRole("textbox", { name: "Odometer, km" }), "83990");
	screen.getByText(/Less than the last time/);
	screen.getByText(/it stood at 84000/);
	await app.user.type(screen.getByRole("textbox", { name: "Price per L, EUR" }), "1,7x");
	app = await app.restart();
	await screen.findByRole("textbox", { name: /^Amount/ });
	await app.user.click(button("Save 20 L"));
	screen.getByText(/^The odometer or a price above can’t be saved/);
	expect(await saved(app)).toEqual([]);
	const price = screen.getByRole("textbox", { name: "Price per L, EUR" });
	await app.user.clear(price);
	await app.user.type(price, "1,749");
	await save(app, "Save 20 L");
	expect(await saved(app)).toMatchObject([{ litres: 20, odometerKm: 83990, pricePerLitre: 1.749 }]);
});

test("a stop that is corrected brings its odometer and price along, and knows no plan", async () => {
	const app = await openGuided(async () => null);
	location.hash = "#/correct/f1";
	await screen.findByText(/^You are correcting/);
	expect((screen.getByRole("textbox", { name: "Odometer, km" }) as HTMLInputElement).value).toBe("84000");
	expect((screen.getByRole("textbox", { name: "Price per L, EUR" }) as HTMLInputElement).value).toBe("1.7");
	expect(screen.queryByText(/it stood at/)).toBeNull();
	expect(screen.queryByRole("link", { name: "How much of each?" })).toBeNull();
	expect(app.asks).toEqual([]);
});
