/** A log that was saved before, a reader that fails, and units. */
import { screen } from "@testing-library/preact";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { csvOf } from "../helpers/logCsv";
import { reader } from "./dataLogReader";
import { choose, drive, logFile, openScreen, readings, recorded, region, spaces, text } from "./dataLogScreen";

vi.mock("../../src/app/logReader", () => import("./dataLogReader"));
beforeEach(() => {
	reader.fault = null;
});
afterEach(() => {
	vi.unstubAllGlobals();
});

test("a log that was saved before says so under any name, even after a killed app, and is not saved twice", async () => {
	const app = await openScreen();
	await choose(app, logFile());
	expect(await text("The log")).toContain("Nothing is saved yet.");
	await app.user.click(await screen.findByRole("button", { name: /^Save \+[56]/ }));
	await screen.findByText(/^Saved\./);
	await app.user.click(screen.getByRole("button", { name: "Another log" }));
	await choose(app, logFile({ seed: "another" }));
	await screen.findByRole("button", { name: /^Save \+/ });
	expect(await text("The log")).toContain("Nothing is saved yet.");

	const again = await app.restart();
	await screen.findByLabelText("Choose a data log");
	await choose(again, new File([csvOf(drive)], "copy of drive.csv", { lastModified: recorded + 1000 }));
	await screen.findByText(/^This log already counts: it was saved before/);
	expect(await text("The log")).toContain("This log already counts");
	expect(screen.queryByRole("button", { name: /^Save/ })).toBeNull();
	const [reading, ...others] = await readings(again);
	expect(others).toEqual([]);
	expect(screen.getByRole("link", { name: "To its entry" }).getAttribute("href")).toBe(
		`#/entry/${encodeURIComponent(reading.id)}`,
	);

	await again.model.takeBack([reading.id], "2026-06-01T15:31:00Z");
	await again.user.click(await screen.findByRole("button", { name: /^Save \+[56]/ }));
	await screen.findByText(/^Saved\./);
	expect(await readings(again)).toHaveLength(2);
});

test("a log whose reading was corrected warns before it is counted again", async () => {
	const app = await openScreen();
	await choose(app, logFile());
	await app.user.click(await screen.findByRole("button", { name: /^Save \+[56]/ }));
	await screen.findByText(/^Saved\./);
	const [reading] = await readings(app);
	await app.user.click(screen.getByRole("button", { name: "Undo" }));
	await screen.findByRole("button", { name: /^Save \+[56]/ });
	expect(screen.queryByText(/If it was corrected/)).toBeNull();
	await app.model.append([{ ...reading, id: "corrected", sd: 0.05 }]);
	await screen.findByText(/If it was corrected in the log, the correction counts/);
});

test("a driver who counts in gallons reads the limit of idle in miles per hour", async () => {
	const app = await openScreen();
	await app.model.saveSettings({ units: { car: "gal" } });
	await choose(app, logFile({ restless: true }));
	const steady = await region("Fuel trim of steady driving");
	await app.user.click(await steady.findByText("What did not count"));
	expect(await text("Fuel trim of steady driving")).toContain("idle, or slower than 9 mph");
	await app.model.saveSettings({ units: { car: "L" } });
	await steady.findByText(/idle, or slower than 15.km\/h/);
});

test.each(["NotReadableError", "NotFoundError"])(
	"a file that the phone takes away (%s) is no fault of the app",
	async (name) => {
		const report = vi.fn();
		vi.stubGlobal("reportError", report);
		reader.fault = new DOMException("gone", name);
		const app = await openScreen();
		await choose(app, logFile());
		expect(spaces((await screen.findByRole("alert")).textContent)).toMatch(/The phone would not give the file/);
		expect(report).not.toHaveBeenCalled();
	},
);

test("a fault of the app is not blamed on the phone, and is reported", async () => {
	const report = vi.fn();
	vi.stubGlobal("reportError", report);
	reader.fault = new RangeError("out of bounds");
	const app = await openScreen();
	await choose(app, logFile());
	expect(spaces((await screen.findByRole("alert")).textContent)).toMatch(/The app could not read it\. Reload the app/);
	expect(report.mock.calls).toEqual([[reader.fault]]);
});
