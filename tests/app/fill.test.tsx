import { screen, waitFor, within } from "@testing-library/preact";
import { expect, test } from "vitest";
import type { KeeperPort } from "../../src/app/keeperPort";
import type { FillEvent, LogEvent } from "../../src/domain/event";
import { aCalibration, aCar, aFill, aStart } from "../helpers/logs";
import { answerQuestion } from "./answerQuestion";
import { type RenderedApp, renderApp } from "./renderApp";

const car = aCar({ calibrations: [aCalibration({ name: "Blend 30" })] });
const flex = { id: "flex-51-83", range: [0.51, 0.83] };
const e10 = { id: "gasoline-e10", range: [0.09, 0.1] };
const life = [
	aStart({ at: "2026-05-01T12:00:00+02:00", contents: { range: [0.09, 0.1] }, gauge: 0.25 }),
	aFill({ id: "f1", stop: "s1", at: "2026-05-02T12:00:00+02:00", product: flex, litres: 12, place: "Harbour" }),
	aFill({ id: "f2", stop: "s1", at: "2026-05-02T12:01:00+02:00", product: e10, litres: 20, place: "Harbour" }),
];

async function openFill(
	options: { at?: string; wrap?: (keeper: KeeperPort) => KeeperPort } = {},
): Promise<RenderedApp> {
	const app = await renderApp({ at: "#/fill", logs: [{ car, events: life }], ...options });
	await screen.findByRole("textbox", { name: /^Amount/ });
	return app;
}
const button = (name: string | RegExp) =>
	screen.getByRole("button", { name: typeof name === "string" ? (heard) => spaces(heard) === name : name });
const amount = () => screen.getByRole("textbox", { name: /^Amount/ }) as HTMLInputElement;
const preview = async () => within(await screen.findByRole("region", { name: "What this leads to" }));
const spaces = (text: string | null | undefined) => text?.replaceAll("\u00a0", " ");
const fillsIn = (events: readonly LogEvent[]) =>
	events.filter((event): event is FillEvent => event.kind === "fill" && !["f1", "f2"].includes(event.id));

async function press(app: RenderedApp, digits: string): Promise<void> {
	for (const key of digits) await app.user.click(button(key === "." ? "decimal" : key));
}

test("a stop of two products is tapped in at the place used last, and saved with its gauge and its click", async () => {
	const app = await openFill();
	screen.getByText("Harbour", { selector: "summary" });
	expect(button(/^Flex fuel E85/).getAttribute("aria-pressed")).toBe("true");
	await press(app, "10.5");
	await (await preview()).findByText(/^After /);
	await app.user.click(button("A second product at this stop"));
	expect(button(/^Gasoline E10/).getAttribute("aria-pressed")).toBe("true");
	await press(app, "22");
	await app.user.click(button("Filled to the first click?"));
	await app.user.click(button("Fuel gauge before filling: a step less"));
	await app.user.click(button("Save 10.5 L + 22 L"));
	await waitFor(() => expect(location.hash).toBe("#/tank"));

	const [first, second, ...others] = fillsIn(await app.events("car"));
	expect(first).toMatchObject({ product: flex, litres: 10.5, place: "Harbour", gauge: 0.5 });
	expect(first).not.toHaveProperty("toClick");
	expect(second).toMatchObject({ product: e10, litres: 22, place: "Harbour", toClick: true, stop: first.stop });
	expect(second).not.toHaveProperty("gauge");
	expect(Date.parse(second.at) - Date.parse(first.at)).toBe(1000);
	expect(others).toEqual([]);
});

test("the dots move as the amount is typed, and the lean limit is marked before it is reached", async () => {
	const app = await openFill();
	const words = async () => spaces((await (await preview()).findByText(/^(After|Before this stop)/)).textContent) ?? "";
	const median = async () => Number(/about (\d+) %/.exec(await words())?.[1]);
	expect(await words()).toMatch(/^Before this stop/);
	const before = await median();
	await screen.findByText(/Past the lean limit from/);
	await press(app, "9");
	await (await preview()).findByText(/^After /);
	const after9 = await median();
	expect(after9).toBeGreaterThan(before);
	await press(app, "0");
	await screen.findByText(/This tank cannot hold more than/);
	await app.user.click(button("delete the last digit"));
	await app.user.click(button("delete the last digit"));
	await press(app, "30");
	await waitFor(async () => expect(await median()).toBeGreaterThan(after9));
});

test("a stop right after one of two products comes after both, in the preview as in the log", async () => {
	const app = await openFill();
	await press(app, "5");
	await app.user.click(button("A second product at this stop"));
	await press(app, "20");
	await app.user.click(button("Save 5 L + 20 L"));
	await screen.findByRole("heading", { name: /^Boost/ });
	const tank = Math.round((app.model.state().now?.estimate.median ?? 0) * 100);
	// The clock of the test stands still: the second product lies a second ahead of it.
	location.hash = "#/fill";
	const before = spaces((await (await preview()).findByText(/^Before this stop/)).textContent);
	expect(Math.abs(Number(/about (\d+) %/.exec(before ?? "")?.[1]) - tank)).toBeLessThanOrEqual(1);
	await app.user.click(button(/^Gasoline E10/));
	await press(app, "3");
	await app.user.click(button("Save 3 L"));
	await waitFor(async () => expect(fillsIn(await app.events("car"))).toHaveLength(3));
	const times = fillsIn(await app.events("car")).map(({ litres, at }) => [Date.parse(at), litres]);
	expect(times.sort(([a], [b]) => a - b).map(([, litres]) => litres)).toEqual([5, 20, 3]);
	expect(new Set(times.map(([at]) => at)).size).toBe(3);
});

test("what is shown before saving is what is shown after", async () => {
	const app = await openFill();
	await press(app, "12");
	const shown = spaces((await (await preview()).findByText(/^After 12.L/)).textContent);
	const [, median] = /about (\d+) %/.exec(shown ?? "") ?? [];
	await app.user.click(button("Save 12 L"));
	await answerQuestion(app);
	const after = app.model.state().now?.estimate.median ?? 0;
	// A young account is kept with more particles than the preview draws.
	expect(Math.abs(after * 100 - Number(median))).toBeLessThan(1);
});

test("past the lean limit the app asks before it saves, says the risk and the remedy, and going back keeps all", async () => {
	const app = await openFill();
	await press(app, "30");
	await app.user.click(button("Save 30 L"));
	const dialog = within(await screen.findByRole("dialog", { name: "This goes past the lean limit" }));
	dialog.getByText(/the injectors deliver too little fuel/i);
	dialog.getByText(/What would mend it|What would help|would help: burn/);
	expect(fillsIn(await app.events("car"))).toEqual([]);
	await app.user.click(dialog.getByRole("button", { name: "Go back" }));
	await waitFor(() => expect(screen.queryByRole("dialog")).toBeNull());
	expect(amount().value).toBe("30");
	// It is pumped an hour later after all, and that is its time.
	app.clock.now += 3_600_000;
	await app.user.click(button("Save 30 L"));
	await app.user.click(await screen.findByRole("button", { name: "Save it, it is in the tank" }));
	await waitFor(async () => expect(fillsIn(await app.events("car"))).toHaveLength(1));
	const [fill] = fillsIn(await app.events("car"));
	expect(Math.abs(Date.parse(fill.at) - app.clock.now)).toBeLessThan(2000);
});

test("saving can be undone, by voids and not by forgetting", async () => {
	const app = await openFill();
	await app.user.click(button(/^Gasoline E10/));
	await press(app, "20");
	await app.user.click(button("Save 20 L"));
	await app.user.click(await screen.findByRole("button", { name: "Undo" }));
	await waitFor(async () => expect((await app.events("car")).filter(({ kind }) => kind === "void")).toHaveLength(1));
	expect(fillsIn(await app.events("car"))).toHaveLength(1);
});

test("two taps on Save make one stop", async () => {
	const app = await openFill();
	await app.user.click(button(/^Gasoline E10/));
	await press(app, "20");
	await app.user.dblClick(button("Save 20 L"));
	await waitFor(() => expect(location.hash).toBe("#/tank"));
	expect(fillsIn(await app.events("car"))).toHaveLength(1);
});

test("a half-typed stop is there again after the app was killed", async () => {
	let app = await openFill();
	await press(app, "7.5");
	await app.user.click(button("Filled to the first click?"));
	app = await app.restart();
	await screen.findByRole("textbox", { name: /^Amount/ });
	expect(amount().value).toBe("7.5");
	expect(button("✓ Filled to the first click").getAttribute("aria-pressed")).toBe("true");
	await app.user.click(button("Start this form over"));
	expect(amount().value).toBe("");
});

test("an amount that is none is refused in words, and nothing is saved", async () => {
	const app = await openFill();
	await app.user.click(button("Save"));
	screen.getByText("How much was pumped? Type the amount as the pump shows it.");
	expect(amount().getAttribute("aria-invalid")).toBe("true");
	await app.user.type(amount(), "1e3");
	await app.user.click(button("Save"));
	screen.getByText(/This is not a number/);
	expect(fillsIn(await app.events("car"))).toEqual([]);
});

test("a disk that fails keeps the form and says so; the next try saves the stop once", async () => {
	let fail = true;
	const app = await openFill({
		wrap: (keeper) => ({
			...keeper,
			append: async (...args) => {
				if (fail) throw new Error("This device has no room left, so nothing was saved: free some space and try again.");
				return keeper.append(...args);
			},
		}),
	});
	await app.user.click(button(/^Gasoline E10/));
	await press(app, "20");
	await app.user.click(button("Save 20 L"));
	await screen.findByText(/no room left/);
	expect(amount().value).toBe("20");
	fail = false;
	await app.user.click(await waitFor(() => button("Save 20 L")));
	await waitFor(async () => expect(fillsIn(await app.events("car"))).toHaveLength(1));
});

test("correcting a stop voids it and puts the new one at the old time", async () => {
	const app = await openFill({ at: "#/correct/f2" });
	screen.getByText(/You are correcting the stop of/);
	expect(amount().value).toBe("20");
	await app.user.clear(amount());
	await app.user.type(amount(), "26");
	await app.user.click(button("Save 12 L + 26 L"));
	await waitFor(() => expect(location.hash).toBe("#/log"));
	const events = await app.events("car");
	const voids = events.flatMap((event) => (event.kind === "void" ? [event.target] : []));
	expect(new Set(voids)).toEqual(new Set(["f1", "f2"]));
	const [first, second] = fillsIn(events).sort((a, b) => a.litres - b.litres);
	expect(first).toMatchObject({ litres: 12, at: "2026-05-02T12:00:00+02:00", place: "Harbour" });
	expect(second).toMatchObject({ litres: 26, product: e10 });
	// Whoever goes back comes to a stop that is void.
	await screen.findByRole("heading", { name: /2026/ });
	location.hash = "#/correct/f2";
	await screen.findByText(/^This stop was corrected already\./);
});

test("any fuel can be chosen: from the list, by its label, or as one's own", async () => {
	const app = await openFill();
	await app.user.click(button("Another fuel"));
	await app.user.type(screen.getByRole("textbox", { name: "Flex fuel labelled with a percentage" }), "60");
	await app.user.click(button("Take it"));
	expect(spaces(button(/^Flex fuel “60.%”/).textContent)).toContain("55–65 %");
	await app.user.click(button("Another fuel"));
	await app.user.type(screen.getByRole("textbox", { name: "Name" }), "Drum");
	await app.user.type(screen.getByRole("textbox", { name: "From, % ethanol" }), "80");
	await app.user.type(screen.getByRole("textbox", { name: "To, % ethanol" }), "70");
	screen.getByText(/swap them/);
	await app.user.clear(screen.getByRole("textbox", { name: "To, % ethanol" }));
	await app.user.type(screen.getByRole("textbox", { name: "To, % ethanol" }), "90");
	await app.user.click(button("Use this fuel"));
	expect(button(/^Drum/).getAttribute("aria-pressed")).toBe("true");
});
