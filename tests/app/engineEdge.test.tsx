/** The lean edge on its way from the fuel system into the calibration's form. */
import { screen, waitFor } from "@testing-library/preact";
import { expect, test } from "vitest";
import { againstWindow } from "../../src/app/fuelSystemWords";
import { aCalibration, aCar, aFlash, aStart } from "../helpers/logs";
import { type RenderedApp, renderApp } from "./renderApp";

const now = Date.parse("2026-06-10T15:30:00Z");
const sure = aStart({ contents: { value: 0.3, sd: 0.01 } });
const fuelSystem = { commandedLambda: 0.82, leanestLambda: 0.851 };
const gasoline = aCalibration({ id: "e10", name: "Pump gasoline", calibratedFor: 0.1, window: [0, 0.15] });
const propose = () => screen.findByRole("button", { name: /^Use 31.% as the window’s upper edge$/ });
const to = () => screen.findByLabelText("To, %");

async function open(car: object = {}, events: readonly object[] = [sure]): Promise<RenderedApp> {
	return renderApp({ at: "#/engine", now, logs: [{ car: aCar({ fuelSystem, ...car }), events: events as never }] });
}

test("the edge is proposed in the form of the calibration in force, and saved only there", async () => {
	const app = await open({}, [sure, aFlash()]);
	await propose();
	screen.getByText(/window goes on to 34.%, further than the fuel system surely does/);
	await app.user.click(await propose());
	expect(await to()).toHaveProperty("value", "31");
	expect(location.hash).toBe("#/calibration/e30");
	expect(screen.getByLabelText("Made for, % ethanol")).toHaveProperty("value", "30");
	expect(screen.getByLabelText("From, %")).toHaveProperty("value", "26");
	expect(screen.getByRole("note").textContent).toMatch(/31.% as the upper edge is proposed.*not saved yet: your tuner/);
	expect((await app.store.cars())[0].calibrations).toEqual([aCalibration()]);

	await app.user.click(screen.getByRole("button", { name: "Save the calibration" }));
	await waitFor(() => expect(location.hash).toBe("#/car"));
	const [car] = await app.store.cars();
	expect(car.calibrations[0]).toEqual(aCalibration());
	expect(car.calibrations[1]).toMatchObject({ calibratedFor: 0.3, window: [0.26, 0.31] });
	expect(car.fuelSystem).toEqual(fuelSystem);

	location.hash = "#/engine";
	await screen.findByText(/window ends at 31.% too: it is as wide as the fuel system surely allows/);
	expect(screen.queryByRole("button", { name: /as the window’s upper edge/ })).toBeNull();
	expect(screen.queryByText(/before the fuel system does|further than the fuel system/)).toBeNull();
});

test("an edge is the window’s own in every tenth of a percent, however the two were divided", () => {
	for (let tenths = 0; tenths <= 1000; tenths++) {
		const typed = tenths / 10 / 100;
		expect(againstWindow(tenths / 1000, typed)).toMatch(/ too: it is as wide/);
		expect(againstWindow((tenths - 1) / 1000, typed)).toMatch(/further than/);
		expect(againstWindow((tenths + 1) / 1000, typed)).toMatch(/before the fuel system does/);
	}
});

test("a proposal that is typed over is no proposal any more, and left alone it changes nothing", async () => {
	const app = await open();
	await app.user.click(await propose());
	await app.user.clear(await to());
	await app.user.type(await to(), "32");
	expect(screen.queryByRole("note")).toBeNull();
	await app.user.click(screen.getByRole("button", { name: "Leave it as it was" }));
	await waitFor(() => expect(location.hash).toBe("#/car"));
	expect((await app.store.cars())[0].calibrations).toEqual([aCalibration()]);
});

test("what is half-typed for the same calibration stays, but for the upper edge", async () => {
	const app = await open();
	await propose();
	location.hash = "#/calibration/e30";
	await app.user.type(await screen.findByLabelText("Name of the calibration"), " b");
	location.hash = "#/engine";
	await app.user.click(await propose());
	expect(await to()).toHaveProperty("value", "31");
	expect(screen.getByLabelText("Name of the calibration")).toHaveProperty("value", "Stage 2, E30 b");
});

test("what is half-typed for another calibration is asked about first", async () => {
	const app = await open({ calibrations: [aCalibration(), gasoline] });
	await propose();
	location.hash = "#/calibration/e10";
	await app.user.type(await screen.findByLabelText("Name of the calibration"), " b");
	location.hash = "#/engine";
	await app.user.click(await propose());
	await screen.findByText(/Another calibration is half-typed, and its form would be emptied/);
	expect(location.hash).toBe("#/engine");
	expect(await app.store.draft("car/calibration")).toMatchObject({ of: "e10" });
	await app.user.click(screen.getByRole("button", { name: "Go on without the half-typed one" }));
	expect(await to()).toHaveProperty("value", "31");
	expect(location.hash).toBe("#/calibration/e30");
});

test("without a calibration the edge is proposed in the form of a new one", async () => {
	const app = await open({
		calibrations: [],
		fuelSystem: { pumpFlowLPerH: 125, powerKW: 185, consumptionGPerKWh: 345 },
	});
	const button = await screen.findByRole("button", { name: /as the window’s upper edge$/ });
	const edge = /Use ([\d.]+)/.exec(button.textContent ?? "")?.[1];
	await app.user.click(button);
	expect(await to()).toHaveProperty("value", edge);
	expect(location.hash).toBe("#/calibration");
	await app.user.type(screen.getByLabelText("Made for, % ethanol"), "30");
	await app.user.type(screen.getByLabelText("From, %"), "26");
	expect(await to()).toHaveProperty("value", edge);
	await app.user.click(screen.getByRole("button", { name: "Save the calibration" }));
	await waitFor(() => expect(location.hash).toBe("#/car"));
	expect((await app.store.cars())[0].calibrations[0].window).toEqual([0.26, Number(edge) / 100]);
});
