import { screen } from "@testing-library/preact";
import { expect, test } from "vitest";
import type { LogEvent } from "../../src/domain/event";
import { aCalibration, aCar, aFill, aStart, aTankReading } from "../helpers/logs";
import { renderApp } from "./renderApp";

const car = aCar({ calibrations: [aCalibration({ name: "Blend 30" })] });
const flex = { id: "flex-51-83", range: [0.51, 0.83] };
const start = (fields: Record<string, unknown>) => aStart({ at: "2026-05-30T12:00:00+02:00", ...fields });
const open = (events: readonly LogEvent[], withCar = car) =>
	renderApp({ at: "#/tank", logs: [{ car: withCar, events }] });
const spaces = (text: string | null | undefined) => text?.replaceAll("\u00a0", " ") ?? "";
const main = () => spaces(screen.getByRole("main").textContent);

test("a blend inside the window is said to be so in words, dots and figures", async () => {
	await open([start({ contents: { value: 0.3, sd: 0.01 } })]);
	await screen.findByRole("heading", { name: "Boost: yes" });
	const dots = spaces(screen.getByRole("img").getAttribute("aria-label"));
	expect(dots).toBe(
		"Twenty equally likely ethanol contents from 28 % to 32 %. 20 of them lie inside the window of 26–34 %, 0 above and 0 below.",
	);
	expect(main()).toMatch(/Most likely about30 %9 in 1028–32 %/);
	expect(screen.queryByText("NOTICE")).toBeNull();
});

test("too much ethanol is called lean, as strongly as it is likely, with what to do and why one is told", async () => {
	await open([
		start({ contents: { range: [0.09, 0.1] }, gauge: 0.2 }),
		aFill({ at: "2026-06-01T10:00:00Z", product: flex, litres: 40 }),
	]);
	const alert = await screen.findByRole("alert", { name: "Too much ethanol: lean under boost" });
	screen.getByRole("heading", { name: "Boost: no" });
	const words = spaces(alert.textContent);
	expect(words).toMatch(/^NOTICE/);
	expect(words).toMatch(/Chance of being above the window: (20|more than 19|19) in 20 \(\d+ %\), accepted are 5 %/);
	expect(words).toMatch(/Stay out of boost/);
	expect(words).toMatch(/13 of 25 cars/);
	expect(words).toMatch(/Why am I told/);
});

test("too little ethanol is called by its own name", async () => {
	await open([start({ contents: { range: [0.24, 0.3] } })]);
	await screen.findByRole("group", { name: "Maybe too little ethanol" });
	screen.getByRole("heading", { name: "Boost: not now" });
});

test("after a fill the app says what it was, what it did, and when the engine gets it", async () => {
	const app = await open([
		start({ contents: { range: [0.09, 0.1] }, gauge: 0.2 }),
		aFill({ at: "2026-06-01T12:30:00Z", product: flex, litres: 12, place: "Harbour" }),
	]);
	await screen.findByRole("heading", { name: "Last change" });
	expect(main()).toMatch(/today: 12 L of “Flex fuel E85 \(US\)” at Harbour\. About 9 % became about \d+ %\./);
	expect(main()).toMatch(/0\.3–1\.0 L or some 3 to 10 km/);
	await app.model.saveSettings({ units: { [car.id]: "gal" } });
	await screen.findByText(/0\.1–0\.3\sgal or some 2 to 6\smi,/);
});

test("the lawful range is behind a tap", async () => {
	const { user } = await open([start({ contents: { range: [0.2, 0.4] } })]);
	const summary = await screen.findByText("What the labels allow");
	expect(summary.closest("details")?.open).toBe(false);
	await user.click(summary);
	expect(main()).toMatch(/20–40 %, if every pump kept to its label/);
});

test("without a calibration there is no verdict, and a way to enter one", async () => {
	await open([start({ contents: { range: [0.2, 0.4] } })], aCar({ calibrations: [] }));
	await screen.findByRole("heading", { name: "Boost: unknown" });
	expect(screen.getByRole("link", { name: "Enter the calibration" }).getAttribute("href")).toBe("#/calibration");
});

test("a reading that does not fit the account is called out by name", async () => {
	await open([start({ contents: { value: 0.1, sd: 0.01 } }), aTankReading({ at: "2026-06-01T10:00:00Z", value: 0.6 })]);
	const words = await screen.findByRole("group", { name: "The last reading does not fit the account" });
	expect(spaces(words.textContent)).toMatch(/Measure again/);
});
