import { screen, waitFor, within } from "@testing-library/preact";
import { beforeEach, expect, test, vi } from "vitest";
import type { TrimReading } from "../../src/domain/event";
import { csvOf } from "../helpers/logCsv";
import { aCar, aFlash } from "../helpers/logs";
import { reader } from "./dataLogReader";
import {
	car,
	choose,
	drive,
	life,
	logFile,
	openScreen,
	readings,
	recorded,
	region,
	spaces,
	text,
} from "./dataLogScreen";
import { renderApp } from "./renderApp";

vi.mock("../../src/app/logReader", () => import("./dataLogReader"));
beforeEach(() => {
	reader.hold = null;
});

test("a log becomes a picture, a value and, with one tap, a reading that can be taken back", async () => {
	const app = await openScreen();
	await choose(app, logFile());
	const steady = await region("Fuel trim of steady driving");
	const picture = await steady.findByRole("img", {
		name: /^Fuel trims over 10.min\..* Steady for .* in \d+ stretches, median there/,
	});
	expect(picture.querySelector(".bar")?.getAttribute("d")?.match(/M/g)?.length).toBeGreaterThan(3);
	expect(await text("Fuel trim of steady driving")).toMatch(/\+[56]\.?\d? % fuel, give or take 3(\.\d)? %/);
	expect(await text("Fuel trim of steady driving")).toMatch(/would be 4\d % ethanol.*on “Blend 30”, made for 30 %/);
	expect(await readings(app)).toEqual([]);

	await app.user.click(await screen.findByRole("button", { name: /^Save \+[56]/ }));
	await screen.findByText(/^Saved\./);
	const [reading, ...others] = (await readings(app)) as TrimReading[];
	expect(others).toEqual([]);
	expect(reading).toMatchObject({ of: "trim", method: "data log", calibratedFor: 0.3 });
	expect(Math.abs(reading.value - 0.06)).toBeLessThan(0.015);
	expect(reading.sd).toBeGreaterThan(0.03);
	expect(reading.sd).toBeLessThan(0.04);
	expect(Date.parse(reading.at)).toBe(recorded);
	await screen.findByText("It is in the account.");
	await app.user.click(screen.getByRole("button", { name: "Undo" }));
	await screen.findByRole("button", { name: /^Save \+[56]/ });
	expect((await app.events("car")).filter(({ kind }) => kind === "void")).toHaveLength(1);
});

test("the stretches can be read as a table", async () => {
	const app = await openScreen();
	await choose(app, logFile());
	await app.user.click(await screen.findByText("The steady stretches in numbers"));
	const table = within(await screen.findByRole("table", { name: "The longest stretches first" }));
	expect(table.getAllByRole("columnheader").map(({ textContent }) => textContent)).toEqual(["From", "Length", "Trim"]);
	expect(table.getAllByRole("row").length).toBeGreaterThan(3);
});

test("a reading counts for the calibration that was flashed when the log was recorded", async () => {
	const flash = aFlash({ at: "2026-05-15T12:00:00+02:00", calibration: "e50" });
	const app = await openScreen({ logs: [{ car, events: [...life, flash] }] });
	await choose(app, logFile());
	await app.user.click(await screen.findByRole("button", { name: /^Save \+/ }));
	await screen.findByText(/^Saved\./);
	expect(await readings(app)).toMatchObject([{ calibratedFor: 0.5 }]);
	await app.user.click(screen.getByRole("button", { name: "Another log" }));
	await choose(app, logFile({ seed: "earlier" }, {}, Date.parse("2026-05-10T10:00:00Z")));
	expect(await text("Fuel trim of steady driving")).toContain("on “Blend 30”");
});

test("lambda under load stands beside the trim as a reading of its own", async () => {
	const app = await openScreen();
	await choose(app, logFile({ pulls: true, seconds: 900 }));
	expect(await text("Lambda under load")).toMatch(/\+[5-7]\.?\d? % against what is commanded/);
	expect(await text("Lambda under load")).toContain("It says the same as the trims");
	expect(await text("Lambda under load")).toContain("stay out of boost");
	await app.user.click(await screen.findByRole("radio", { name: /^Lambda under load/ }));
	await app.user.click(await screen.findByRole("button", { name: /^Save \+/ }));
	await screen.findByText(/^Saved\./);
	await app.user.click(await screen.findByRole("radio", { name: /^Fuel trim of steady driving/ }));
	await screen.findByText(/counts the same drive twice/);
	expect(await readings(app)).toMatchObject([{ of: "trim", method: "data log, lambda under load" }]);
});

test("where the trims are carried into open loop, lambda under load is shown but not offered", async () => {
	const app = await openScreen();
	await choose(app, logFile({ pulls: true, carried: true, trim: 0.1, seconds: 900 }));
	expect(await text("Lambda under load")).toContain("says nothing about the fuel");
	await screen.findByRole("button", { name: /^Save \+(9|10)/ });
	expect(screen.queryByRole("radio", { name: /^Lambda under load/ })).toBeNull();
});

test("the content that the car reports is offered as a reading of the tank", async () => {
	const app = await openScreen();
	await choose(app, logFile({ ethanol: 0.42, restless: true }, { without: [] }));
	expect(await text("Fuel trim of steady driving")).toMatch(/No stretch of this log is warm.*steady speed/);
	expect(await text("The car’s own report")).toContain("42 % ethanol");
	await app.user.click(await screen.findByRole("radio", { name: /^From a sensor/ }));
	await app.user.click(await screen.findByRole("button", { name: /^Save 42/ }));
	await screen.findByText(/^Saved\./);
	expect(await readings(app)).toMatchObject([{ of: "tank", value: 0.42, sd: 0.03 }]);
});

test("columns that nobody knows are told once, survive a killed app, and are known the next time", async () => {
	const headers = {
		"Short Term Fuel Trim Bank 1 (%)": "Korrektur kurz",
		"Long Term Fuel Trim Bank 1 (%)": "Korrektur lang",
	};
	const without = [
		"Lambda measured",
		"Lambda commanded",
		"Ethanol Fuel (%)",
		"Short Term Fuel Trim Bank 2 (%)",
		"Long Term Fuel Trim Bank 2 (%)",
	];
	const file = () => logFile({}, { headers, without });
	const app = await openScreen();
	await choose(app, file());
	const mapping = await region("What is in the columns?");
	mapping.getByText(/still missing: short-term and long-term fuel trim of one bank/);
	expect(await mapping.findByRole("combobox", { name: /^It is.*Engine Speed/ })).toHaveProperty("value", "rpm");
	mapping.getAllByText(/^Such as 0\.00 · 0\.50/);
	expect(mapping.getByRole("button", { name: "Read the log like this" })).toHaveProperty("disabled", true);
	await app.user.selectOptions(await mapping.findByRole("combobox", { name: /^It is.*Korrektur kurz/ }), "short1");

	const again = await app.restart();
	await screen.findByLabelText("Choose a data log");
	await choose(again, file());
	const resumed = await region("What is in the columns?");
	expect(await resumed.findByRole("combobox", { name: /^It is.*Korrektur kurz/ })).toHaveProperty("value", "short1");
	await again.user.selectOptions(await resumed.findByRole("combobox", { name: /^It is.*Korrektur lang/ }), "long1");
	resumed.getByText("All that is needed is there.");
	await again.user.click(resumed.getByRole("button", { name: "Read the log like this" }));
	expect(await text("Fuel trim of steady driving")).toMatch(/\+[56]/);

	await again.user.click(screen.getByRole("button", { name: "Another log" }));
	await choose(again, logFile({ seed: "another" }, { headers, without }));
	expect(await text("Fuel trim of steady driving")).toMatch(/\+[4-7]/);
});

test("a column can be told only one thing", async () => {
	const app = await openScreen();
	await choose(app, logFile());
	await screen.findByRole("region", { name: "The log" });
	await app.user.click(screen.getByText("How the columns were read"));
	await app.user.click(screen.getByRole("button", { name: "Tell what the columns are" }));
	const mapping = await region("What is in the columns?");
	await app.user.selectOptions(await mapping.findByRole("combobox", { name: /^It is.*Calculated Load/ }), "throttle");
	await mapping.findByText(/“Throttle Position \(%\)” is no longer read as Throttle\./);
	expect(await mapping.findByRole("combobox", { name: /^It is.*Throttle Position/ })).toHaveProperty("value", "");
});

test("what is skipped is counted, with the reason and the first line", async () => {
	const lines = csvOf(drive).trimEnd().split("\n");
	lines.splice(40, 0, "lap 1", "lap 2", lines[39].replace(/^[^,]*/, "later"));
	const app = await openScreen();
	await choose(app, new File([lines.join("\n")], "drive.csv", { lastModified: recorded }));
	const told = await text("The log");
	expect(told).toContain("Skipped3 rows");
	expect(told).toContain("2 rows with more or fewer fields than the header, the first in line 41");
	expect(told).toContain("1 row without a time that can be read, the first in line 43");
});

test("what is no log is refused with what it is and how to mend it, and nothing changes", async () => {
	const app = await openScreen();
	const bad: readonly (readonly [BlobPart, RegExp])[] = [
		["", /nothing in this file.*export the log once more/],
		[Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a), /This is a picture/],
		['{"format":"heeltap-log"}', /This is JSON.*opened under Car/],
		["one\ntwo\n", /Only one column.*comma, semicolon or tab/],
	];
	for (const [contents, words] of bad) {
		await choose(app, new File([contents], "something"));
		await waitFor(() => expect(spaces(screen.getByRole("alert").textContent)).toMatch(words));
	}
	expect(await app.events("car")).toHaveLength(life.length);
	await choose(app, logFile());
	await screen.findByRole("region", { name: "The log" });
});

test("reading can be stopped, and leaving the screen stops it", async () => {
	let go = () => {};
	reader.hold = new Promise((done) => {
		go = done;
	});
	const app = await openScreen();
	await choose(app, logFile());
	const progress = await screen.findByRole("progressbar", { name: "Share of the log that is read" });
	await waitFor(() => expect(progress).toHaveProperty("value", 0.5));
	const closed = reader.closed;
	await app.user.click(screen.getByRole("button", { name: "Stop" }));
	expect(await screen.findByLabelText("Choose a data log")).toBeTruthy();
	await waitFor(() => expect(reader.closed).toBe(closed + 1));
	go();
	await new Promise((done) => setTimeout(done, 50));
	expect(screen.queryByRole("region", { name: "The log" })).toBeNull();

	reader.hold = new Promise(() => {});
	await choose(app, logFile());
	await screen.findByRole("progressbar");
	location.hash = "#/log";
	await waitFor(() => expect(reader.closed).toBe(reader.opened));
});

test("the ways of measuring lead here, and back", async () => {
	const app = await renderApp({ at: "#/measure", logs: [{ car, events: life }] });
	await app.user.click(await screen.findByRole("link", { name: /^A data log/ }));
	await app.user.click(await screen.findByRole("link", { name: "Other ways to measure" }));
	await screen.findByRole("link", { name: /^A data log/ });
});

test("without a calibration a trim tells nothing, and the way to enter one is shown", async () => {
	const app = await openScreen({ logs: [{ car: aCar({ calibrations: [] }), events: life }] });
	await choose(app, logFile());
	await screen.findByRole("link", { name: "Enter the calibration" });
	expect(screen.queryByRole("button", { name: /^Save/ })).toBeNull();
});
