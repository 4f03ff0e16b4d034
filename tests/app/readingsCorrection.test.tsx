import { screen, waitFor } from "@testing-library/preact";
import { expect, test } from "vitest";
import { countingEvents, type LogEvent } from "../../src/domain/event";
import { aCar, aFill, aLevel, aPumpReading, aStart, aTankReading, aTrimReading } from "../helpers/logs";
import { type RenderedApp, renderApp } from "./renderApp";

const car = aCar();
const day = (date: string) => `2026-${date}T12:00:00+02:00`;
const start = aStart({ at: day("04-10"), contents: { range: [0.09, 0.1] }, gauge: 0.25 });
const fill = aFill({ id: "f1", at: day("04-20"), litres: 15, place: "Corner station" });

async function correcting(event: LogEvent, called: string): Promise<RenderedApp> {
	const app = await renderApp({ at: `#/entry/${event.id}`, logs: [{ car, events: [start, fill, event] }] });
	await app.user.click(await screen.findByRole("button", { name: `Correct this ${called}` }));
	await screen.findByRole("button", { name: "Save the correction" });
	return app;
}
const box = (name: string) => screen.getByRole("textbox", { name });
const button = (name: string | RegExp) => screen.getByRole("button", { name });

async function type(app: RenderedApp, name: string, typed: string): Promise<void> {
	await app.user.clear(box(name));
	if (typed !== "") await app.user.type(box(name), typed);
}
/** The event that counts in the place of the old one. */
async function corrected(app: RenderedApp, old: LogEvent): Promise<LogEvent> {
	await app.user.click(button("Save the correction"));
	await screen.findByText(/^The .+ is corrected\.$/);
	const events = await app.events();
	const counting = countingEvents(events).filter(({ id }) => id !== "start" && id !== "f1");
	expect(counting).toHaveLength(1);
	expect(events.map(({ id }) => id)).toContain(old.id);
	expect(counting[0].id).not.toBe(old.id);
	await waitFor(() => expect(location.hash).toBe(`#/entry/${encodeURIComponent(counting[0].id)}`));
	return counting[0];
}

test("a reading of the tank is corrected in its place, and what was not touched stays exact", async () => {
	const old = aTankReading({ at: day("05-02"), value: 0.31234, sd: 0.0254321, method: "water tube" });
	const app = await correcting(old, "reading");
	expect(box("Measured, % ethanol")).toHaveProperty("value", "31.2");
	await type(app, "Measured, % ethanol", "131");
	await app.user.click(button("Save the correction"));
	screen.getByText(/^It must lie between 0 and 100 %/);
	expect((await app.events()).some(({ kind }) => kind === "void")).toBe(false);
	await type(app, "Measured, % ethanol", "21,4");
	expect(await corrected(app, old)).toEqual({ ...old, id: expect.any(String), value: 0.214 });
	await app.user.click(button("Undo"));
	await screen.findByText("As it was before.");
	expect(countingEvents(await app.events()).map(({ id }) => id)).toEqual(["start", "f1", old.id]);
});

test("a reading may turn out to be surer, of another day, and by no known method", async () => {
	const old = aTankReading({ at: day("05-02"), value: 0.31234, method: "water tube" });
	const app = await correcting(old, "reading");
	await type(app, "Give or take, points", "1");
	await type(app, "How it was measured", "");
	const when = screen.getByLabelText("When");
	await app.user.clear(when);
	await app.user.type(when, "2026-05-12T20:00");
	when.dispatchEvent(new Event("change", { bubbles: true }));
	const event = await corrected(app, old);
	expect(event).toMatchObject({ value: 0.31234, sd: 0.01 });
	expect(event).not.toHaveProperty("method");
	expect(event.at.slice(0, 10)).toBe("2026-05-12");
});

test("a fuel trim is corrected with its sign and the calibration it was on", async () => {
	const old = aTrimReading({ at: day("05-02") });
	const app = await correcting(old, "reading");
	expect(box("Fuel trim, %")).toHaveProperty("value", "2");
	await type(app, "Fuel trim, %", "-3.5");
	await type(app, "Calibrated for, % ethanol", "10");
	expect(await corrected(app, old)).toEqual({ ...old, id: expect.any(String), value: -0.035, calibratedFor: 0.1 });
});

test("a half-typed correction comes back after the app was killed, and is gone once it is saved or left alone", async () => {
	const old = aTrimReading({ at: day("05-02"), calibratedFor: 0.30123 });
	const app = await correcting(old, "reading");
	expect(box("Calibrated for, % ethanol")).toHaveProperty("value", "30.1");
	await type(app, "Fuel trim, %", "-3,");
	const again = await app.restart();
	const reopen = async () => again.user.click(await screen.findByRole("button", { name: "Correct this reading" }));
	await reopen();
	expect(await screen.findByRole("textbox", { name: "Fuel trim, %" })).toHaveProperty("value", "-3,");
	await again.user.click(button("Leave it as it was"));
	await reopen();
	expect(await screen.findByRole("textbox", { name: "Fuel trim, %" })).toHaveProperty("value", "2");
	await type(again, "Fuel trim, %", "-3,5");
	// What the field shows rounded stays exact where it was not touched.
	expect(await corrected(again, old)).toEqual({ ...old, id: expect.any(String), value: -0.035 });
	await waitFor(async () => expect(await again.store.draft("car/correct reading/trim")).toBeUndefined());
});

test("a sample from a pump may have been of another place and another fuel", async () => {
	const old = aPumpReading({ at: day("05-02") });
	const app = await correcting(old, "reading");
	await app.user.click(button("Not named"));
	await app.user.click(button("Save the correction"));
	const fault = screen.getByText("Name the place where it was taken.");
	await waitFor(() => expect(document.activeElement).toBe(fault));
	await app.user.type(box("A new place"), "Mill Road");
	await app.user.click(button("Use it"));
	await app.user.click(button(/^Flex fuel E85/));
	expect(await corrected(app, old)).toEqual({
		...old,
		id: expect.any(String),
		place: "Mill Road",
		product: { id: "flex-51-83", range: [0.51, 0.83] },
	});
});

test("a gauge note is corrected, and its odometer stays exact where it was not touched", async () => {
	const old = aLevel({ at: day("05-02"), odometerKm: 84210.123 });
	const app = await correcting(old, "gauge note");
	expect(box("Odometer, km")).toHaveProperty("value", "84210.1");
	await app.user.click(button("Fuel gauge then: a step less"));
	expect(await corrected(app, old)).toEqual({ ...old, id: expect.any(String), gauge: 0.4375 });
});

test("a gauge note may turn out to have no odometer", async () => {
	const old = aLevel({ at: day("05-02"), odometerKm: 84210 });
	const app = await correcting(old, "gauge note");
	screen.getByText(/^84210\skm$/, { selector: "dd" });
	await type(app, "Odometer, km", "");
	expect(await corrected(app, old)).not.toHaveProperty("odometerKm");
});
