import { screen, waitFor, within } from "@testing-library/preact";
import { expect, test } from "vitest";
import { aCalibration, aCar, aFlash, aStart } from "../helpers/logs";
import { type RenderedApp, renderApp } from "./renderApp";

const now = Date.parse("2026-06-10T15:30:00Z");
const gasoline = aCalibration({ id: "e10", name: "Pump gasoline", calibratedFor: 0.1, window: [0, 0.15] });
const blend = aCalibration();
const field = (name: string | RegExp) => screen.getByRole("textbox", { name });
const accepted = (side: "much" | "little") =>
	within(screen.getByRole("group", { name: new RegExp(`Accepted chance of too ${side}`) }));
const save = () => screen.getByRole("button", { name: "Save the calibration" });
const onCar = () => waitFor(() => expect(location.hash).toBe("#/car"));

async function open(
	at: string,
	car = aCar({ calibrations: [gasoline, blend] }),
	events = [aStart()],
): Promise<RenderedApp> {
	const app = await renderApp({ at, now, logs: [{ car, events }] });
	await screen.findByRole("button", { name: "Save the calibration" });
	return app;
}

async function retype(app: RenderedApp, name: string, typed: string): Promise<void> {
	await app.user.clear(field(name));
	await app.user.type(field(name), typed);
}

test("a new calibration is added, and flashed only if that is said", async () => {
	const app = await open("#/calibration");
	expect(screen.getByRole("checkbox", { name: /It is flashed now/ })).toHaveProperty("checked", false);
	await app.user.type(field("Made for, % ethanol"), "50");
	await retype(app, "From, %", "45,5");
	await app.user.click(accepted("much").getByRole("radio", { name: "1 in 100" }));
	await app.user.click(save());
	await onCar();
	const [car] = await app.store.cars();
	expect(car.calibrations.map(({ id }) => id).slice(0, 2)).toEqual(["e10", "e30"]);
	expect(car.calibrations[2]).toMatchObject({
		name: "Blend 50",
		calibratedFor: 0.5,
		window: [0.455, 0.54],
		leanBudget: 0.01,
		knockBudget: 0.05,
	});
	expect(await app.events()).toHaveLength(1);
});

test("a new calibration that is flashed now is in force from now on", async () => {
	const app = await open("#/calibration");
	await app.user.type(field("Made for, % ethanol"), "50");
	await app.user.click(screen.getByRole("checkbox", { name: /It is flashed now/ }));
	await app.user.click(save());
	await onCar();
	const [car] = await app.store.cars();
	expect((await app.events()).at(-1)).toMatchObject({ kind: "calibration", calibration: car.calibrations[2].id });
	await screen.findByRole("heading", { name: "Calibrations" });
	within(screen.getByRole("listitem", { name: "Blend 50" })).getByText("Flashed now");
});

test("the first calibration of a car counts as flashed", async () => {
	const app = await open("#/calibration", aCar({ calibrations: [] }));
	screen.getByText(/As the first one it counts as flashed/);
	await app.user.type(field("Made for, % ethanol"), "30");
	await app.user.click(save());
	await onCar();
	const [car] = await app.store.cars();
	expect(car.calibrations).toHaveLength(1);
	expect((await app.events()).at(-1)).toMatchObject({ kind: "calibration", calibration: car.calibrations[0].id });
});

test("a calibration in force is never changed: a new version is flashed and the log keeps the old window", async () => {
	const app = await open("#/calibration/e30", undefined, [aStart(), aFlash()] as never);
	screen.getByText(/What you save here is a new version, flashed from now on/);
	expect(field("To, %")).toHaveProperty("value", "34");
	await retype(app, "To, %", "36");
	await app.user.click(save());
	await onCar();
	const [car] = await app.store.cars();
	expect(car.calibrations.slice(0, 2)).toEqual([gasoline, blend]);
	expect(car.calibrations[2]).toMatchObject({ name: "Stage 2, E30", window: [0.26, 0.36] });
	expect(car.calibrations[2].id).not.toBe("e30");
	expect((await app.events()).at(-1)).toMatchObject({ kind: "calibration", calibration: car.calibrations[2].id });
});

test("a calibration that was in force before gets a new version that is not flashed", async () => {
	const events = [aStart(), aFlash(), aFlash({ id: "back", at: "2026-06-05T12:00:00Z", calibration: "e10" })];
	const app = await open("#/calibration/e30", undefined, events as never);
	screen.getByText(/added to the list as a new version/);
	await retype(app, "To, %", "36");
	await app.user.click(save());
	await onCar();
	expect((await app.store.cars())[0].calibrations).toHaveLength(3);
	expect(await app.events()).toHaveLength(3);
});

test("a calibration that never was in force is changed where it stands", async () => {
	const app = await open("#/calibration/e30");
	await retype(app, "Name of the calibration", "Stage 3");
	await app.user.click(save());
	await onCar();
	const [car] = await app.store.cars();
	expect(car.calibrations.map(({ name }) => name)).toEqual(["Pump gasoline", "Stage 3"]);
	// Under an id of its own, or a backup with the older one could not be opened any more.
	expect(car.calibrations[1].id).not.toBe("e30");
	expect(await app.events()).toHaveLength(1);
});

test("a window that can’t be is refused beside its field, and nothing is saved", async () => {
	const app = await open("#/calibration");
	await app.user.click(save());
	expect(descriptionOf(field("Made for, % ethanol"))).toMatch(/Type a number here, such as 30/);
	await app.user.type(field("Made for, % ethanol"), "30");
	await retype(app, "From, %", "34");
	expect(descriptionOf(field("To, %"))).toMatch(/must end above its beginning, 34.%/);
	await retype(app, "To, %", "101");
	expect(descriptionOf(field("To, %"))).toMatch(/between 0 and 100 %/);
	await retype(app, "To, %", "40");
	expect(descriptionOf(field("Made for, % ethanol"))).toMatch(/30.%, lies outside the window of 34–40.%/);
	await app.user.click(save());
	await waitFor(() => expect(document.activeElement).toBe(field("Made for, % ethanol")));
	expect((await app.store.cars())[0].calibrations).toEqual([gasoline, blend]);
});

test("hit twice, the button adds one calibration", async () => {
	const app = await open("#/calibration");
	await app.user.type(field("Made for, % ethanol"), "30");
	await app.user.click(screen.getByRole("checkbox", { name: /It is flashed now/ }));
	await app.user.dblClick(save());
	await onCar();
	expect((await app.store.cars())[0].calibrations).toHaveLength(3);
	expect(await app.events()).toHaveLength(2);
});

test("a half-typed calibration comes back after the app was killed, and is thrown away when left", async () => {
	const app = await open("#/calibration");
	await app.user.type(field("Name of the calibration"), "Stage 3");
	const again = await app.restart();
	await screen.findByDisplayValue("Stage 3");
	await again.user.click(screen.getByRole("button", { name: "Back, without a new one" }));
	await onCar();
	expect(await again.store.draft("car/calibration")).toBeUndefined();
	expect((await again.store.cars())[0].calibrations).toHaveLength(2);
});

test("what was typed for one calibration does not show up in another", async () => {
	const app = await open("#/calibration/e30");
	await retype(app, "Name of the calibration", "Stage 3");
	location.hash = "#/calibration/e10";
	await screen.findByRole("heading", { name: "Change “Pump gasoline”" });
	expect(field("Name of the calibration")).toHaveProperty("value", "Pump gasoline");
});

test("an accepted chance that is none of the usual ones stays", async () => {
	const car = aCar({ calibrations: [gasoline, aCalibration({ leanBudget: 0.03 })] });
	const app = await open("#/calibration/e30", car);
	expect(accepted("much").getByRole("radio", { name: /^3.%/ })).toHaveProperty("checked", true);
	await retype(app, "Name of the calibration", "Stage 3");
	await app.user.click(save());
	await onCar();
	expect((await app.store.cars())[0].calibrations[1]).toMatchObject({ leanBudget: 0.03 });
});

test("a calibration that is not there is said not to be there", async () => {
	await renderApp({ at: "#/calibration/none", now, logs: [{ car: aCar(), events: [aStart()] }] });
	await screen.findByRole("heading", { name: "No such calibration" });
	expect(screen.getByRole("link", { name: "To the list" }).getAttribute("href")).toBe("#/car");
});

function descriptionOf(element: HTMLElement): string {
	const ids = element.getAttribute("aria-describedby")?.split(" ") ?? [];
	return ids.map((id) => document.getElementById(id)?.textContent ?? "").join(" ");
}
