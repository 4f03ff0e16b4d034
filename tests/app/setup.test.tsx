import { screen, waitFor, within } from "@testing-library/preact";
import { expect, test, vi } from "vitest";
import type { KeeperPort } from "../../src/app/keeperPort";
import { formatLog } from "../../src/store/backup";
import { aCar, aLog, aStart } from "../helpers/logs";
import { type RenderedApp, renderApp } from "./renderApp";

const now = Date.parse("2026-06-01T15:30:00Z");
const save = () => screen.getByRole("button", { name: "Start the account" });
const radio = (name: string | RegExp) => screen.getByRole("radio", { name });
const field = (name: string | RegExp) => screen.getByRole("textbox", { name });
const onTank = () => waitFor(() => expect(location.hash).toBe("#/tank"));

async function openSetup(): Promise<RenderedApp> {
	const app = await renderApp({ now });
	await screen.findByRole("button", { name: "Start the account" });
	return app;
}

test("the first car is set up with a start and its calibration, the calibration a second before", async () => {
	const { user, store, events } = await openSetup();
	await user.type(field("Name of the car"), "The grey one");
	await user.click(radio("Litres"));
	await user.type(field("Tank capacity, L"), "58,5");
	await user.click(radio(/^Gasoline E10 \(US\)/));
	await user.click(screen.getByRole("button", { name: "Fuel gauge now: a step less" }));
	await user.type(field("Made for, % ethanol"), "30");
	expect(field("From, %")).toHaveProperty("value", "26");
	expect(field("To, %")).toHaveProperty("value", "34");
	screen.getByText(/our assumption; ask your tuner/);
	await user.type(field("Name of the calibration"), "Stage 2");
	await user.click(save());
	await onTank();

	const [car] = await store.cars();
	expect(car).toMatchObject({ name: "The grey one", tank: { capacityL: 58.5 } });
	expect(car.tank).not.toHaveProperty("gaugeSd");
	expect(car.calibrations).toEqual([
		{ id: expect.any(String), name: "Stage 2", calibratedFor: 0.3, window: [0.26, 0.34] },
	]);
	const [flash, start, ...others] = await events();
	expect(flash).toMatchObject({ kind: "calibration", calibration: car.calibrations[0].id });
	expect(start).toMatchObject({ kind: "start", contents: { range: [0.09, 0.1] }, gauge: 0.5 });
	expect(Date.parse(start.at)).toBe(now);
	expect(Date.parse(flash.at)).toBe(now - 1000);
	expect(others).toEqual([]);
	await screen.findByRole("heading", { name: /^Boost/ });
});

test("who knows nothing may say so everywhere", async () => {
	const { user, store, events } = await openSetup();
	await user.click(screen.getByRole("button", { name: "I don’t know the capacity" }));
	screen.getByText(/leans less on the gauge and on the nozzle’s click/);
	await user.click(radio("I don’t know / none yet"));
	await user.click(save());
	await onTank();

	const [car] = await store.cars();
	expect(car).toMatchObject({
		name: "My car",
		tank: { capacityL: 80, gaugeSd: 0.15, clickSd: 0.25 },
		calibrations: [],
	});
	const [start, ...others] = await events();
	expect(start).toMatchObject({ kind: "start", contents: { range: [0, 0.85] } });
	expect(start).not.toHaveProperty("gauge");
	expect(others).toEqual([]);
});

test("gallons are stored as litres, a measured content with its spread", async () => {
	const { user, store, events } = await openSetup();
	await user.click(radio("US gallons"));
	await user.type(field("Tank capacity, gal"), "15.5");
	await user.click(radio("Measured"));
	await user.type(field("Measured, %"), "31.5");
	await user.clear(field("± points"));
	await user.type(field("± points"), "2");
	await user.click(radio("I don’t know / none yet"));
	await user.click(save());
	await onTank();

	const [car] = await store.cars();
	expect(car.tank.capacityL).toBeCloseTo(58.674, 3);
	expect(await events()).toMatchObject([{ kind: "start", contents: { value: 0.315, sd: 0.02 } }]);
	expect(await store.preference("settings")).toMatchObject({ activeCar: car.id, units: { [car.id]: "gal" } });
});

test("what is in the tank may be given between two limits", async () => {
	const { user, events } = await openSetup();
	await user.click(screen.getByRole("button", { name: "I don’t know the capacity" }));
	await user.click(radio("Between two limits"));
	await user.type(field("At least, %"), "35");
	await user.type(field("At most, %"), "25");
	await user.click(radio("I don’t know / none yet"));
	await user.click(save());
	expect(field("At most, %").getAttribute("aria-describedby")).toBeTruthy();
	expect(screen.getByText(/must not be less than the lower limit/)).toBeTruthy();
	await user.clear(field("At most, %"));
	await user.type(field("At most, %"), "40");
	await user.click(save());
	await onTank();
	expect(await events()).toMatchObject([{ contents: { range: [0.35, 0.4] } }]);
});

test("faults stand beside their fields, the first one gets the focus, and nothing is saved", async () => {
	const { user, store } = await openSetup();
	await user.click(radio("US gallons"));
	await user.type(field("Tank capacity, gal"), "58");
	await user.type(field("Made for, % ethanol"), "3o");
	await user.click(save());

	const capacity = field("Tank capacity, gal");
	await waitFor(() => expect(document.activeElement).toBe(capacity));
	expect(capacity.getAttribute("aria-invalid")).toBe("true");
	expect(descriptionOf(capacity)).toMatch(/must lie between .* check the number and the unit/);
	expect(descriptionOf(field("Made for, % ethanol"))).toMatch(/Use digits and at most one comma or point/);
	expect(await store.cars()).toEqual([]);

	await user.click(radio("Litres"));
	await user.clear(field("Made for, % ethanol"));
	await user.type(field("Made for, % ethanol"), "30");
	await user.clear(field("To, %"));
	await user.type(field("To, %"), "29");
	await user.click(save());
	expect(descriptionOf(field("Made for, % ethanol"))).toMatch(/lies outside the window/);
	await user.clear(field("To, %"));
	await user.type(field("To, %"), "36");
	await user.click(save());
	await onTank();
	expect((await store.cars())[0].calibrations[0].window).toEqual([0.26, 0.36]);
});

test("a window that was typed no longer follows what the calibration is made for", async () => {
	const { user } = await openSetup();
	await user.type(field("Made for, % ethanol"), "30");
	await user.clear(field("To, %"));
	await user.type(field("To, %"), "33");
	await user.clear(field("Made for, % ethanol"));
	await user.type(field("Made for, % ethanol"), "32");
	expect(field("To, %")).toHaveProperty("value", "33");
	expect(field("From, %")).toHaveProperty("value", "26");
	expect(screen.queryByText(/our assumption/)).toBeNull();
});

test("hit twice, the button saves once", async () => {
	const { user, store, events } = await openSetup();
	await user.click(screen.getByRole("button", { name: "I don’t know the capacity" }));
	await user.click(radio("I don’t know / none yet"));
	await user.dblClick(save());
	await onTank();
	expect(await store.cars()).toHaveLength(1);
	expect(await events()).toHaveLength(1);
});

test("a half-typed form comes back after the app was killed, and goes once it is saved", async () => {
	const app = await openSetup();
	await app.user.type(field("Name of the car"), "The grey one");
	await app.user.type(field("Made for, % ethanol"), "30");
	const { user, store } = await app.restart();
	await screen.findByDisplayValue("The grey one");
	await screen.findByRole("button", { name: "Start the account" });
	expect(field("To, %")).toHaveProperty("value", "34");
	await user.click(screen.getByRole("button", { name: "I don’t know the capacity" }));
	await user.click(save());
	await onTank();
	expect(await store.draft("setup")).toBeUndefined();
	expect((await store.cars())[0]).toMatchObject({ name: "The grey one" });
});

test("a second try after a full disk makes no second car", async () => {
	let full = true;
	const wrap = (keeper: KeeperPort): KeeperPort => ({
		...keeper,
		append: async (...args) => {
			if (full) throw new Error("This device has no room left, so nothing was saved.");
			return keeper.append(...args);
		},
	});
	const app = await renderApp({ now, wrap });
	await screen.findByRole("button", { name: "Start the account" });
	await app.user.click(screen.getByRole("button", { name: "I don’t know the capacity" }));
	await app.user.click(radio("I don’t know / none yet"));
	await app.user.click(save());
	await screen.findByText(/no room left/);
	full = false;
	location.hash = "#/setup";
	const again = await app.restart();
	await again.user.click(await screen.findByRole("button", { name: "Start the account" }));
	await onTank();
	expect(await again.store.cars()).toHaveLength(1);
	expect(await again.events()).toHaveLength(1);
});

test("another car is set up beside the first, or not after all", async () => {
	const { user, store } = await renderApp({ at: "#/setup", now, logs: [{ car: aCar(), events: [aStart()] }] });
	await user.click(await screen.findByRole("link", { name: "Back, without another car" }));
	await screen.findByRole("heading", { name: "Calibrations" });

	await user.click(screen.getByRole("link", { name: "Set up another car" }));
	await screen.findByRole("button", { name: "Start the account" });
	await user.type(field("Name of the car"), "The red one");
	await user.click(screen.getByRole("button", { name: "I don’t know the capacity" }));
	await user.click(radio("I don’t know / none yet"));
	await user.click(save());
	await onTank();
	await screen.findByRole("heading", { level: 1, name: "The red one" });
	expect((await store.cars()).map(({ name }) => name).sort()).toEqual(["The grey one", "The red one"]);
	expect(screen.queryByRole("button", { name: /invented/ })).toBeNull();
});

test("one tap opens the invented car, and the app says that it is invented", async () => {
	const { user, store } = await openSetup();
	await user.click(screen.getByRole("button", { name: "Look around with an invented car first" }));
	await onTank();
	const banner = screen.getByRole("banner");
	await within(banner).findByText("Invented hatchback");
	within(banner).getByText("invented");
	expect((await store.cars()).map(({ id }) => id)).toEqual(["invented-1"]);
	expect((await store.events("invented-1")).length).toBeGreaterThan(30);
});

test("a backup opens from here; a file that is none is refused with a reason", async () => {
	const { user, store } = await openSetup();
	const input = screen.getByLabelText("I have a backup file");
	await user.upload(input, new File(["nonsense"], "notes.txt", { type: "text/plain" }));
	expect((await screen.findByText(/a log begins with \{/)).textContent).toContain("Nothing was changed.");
	expect(await store.cars()).toEqual([]);

	await user.upload(input, new File([new Uint8Array([0xff, 0xfe])], "odd.json", { type: "application/json" }));
	await screen.findByText(/not UTF-8 text/);

	const log = aLog();
	await user.upload(input, new File([formatLog(log)], "heeltap.json", { type: "application/json" }));
	await onTank();
	expect((await store.events("car")).length).toBe(log.events.length);
	await screen.findByText(`“The grey one” is here now: ${log.events.length} new entries, 0 known already.`);
});

test("the cautions are told in short before anything is asked of the car", async () => {
	vi.spyOn(navigator, "language", "get").mockReturnValue("de-DE");
	await openSetup();
	const cautions = screen.getByText("Cautions, in short").closest("details");
	expect(cautions?.textContent).toContain("This is an estimate.");
	expect(cautions?.textContent).toContain("Your tuner’s limits come first, then the car maker’s.");
	screen.getByText(/Nothing you type leaves this phone/);
	expect(radio("Litres")).toHaveProperty("checked", true);
	vi.restoreAllMocks();
});

function descriptionOf(element: HTMLElement): string {
	const ids = element.getAttribute("aria-describedby")?.split(" ") ?? [];
	return ids.map((id) => document.getElementById(id)?.textContent ?? "").join(" ");
}
