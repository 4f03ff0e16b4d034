import { screen, waitFor, within } from "@testing-library/preact";
import { expect, test } from "vitest";
import type { LogEvent } from "../../src/domain/event";
import { countingEvents } from "../../src/domain/event";
import { aCalibration, aCar, aFill, aFlash, aLevel, aStart, aTankReading, aVoid } from "../helpers/logs";
import { renderApp } from "./renderApp";

const car = aCar({
	calibrations: [
		aCalibration({ name: "Blend 30" }),
		aCalibration({ id: "e40", name: "Blend 40", window: [0.35, 0.45] }),
	],
});
const day = (date: string, minute = "00") => `2026-${date}T12:${minute}:00+02:00`;
const start = aStart({ at: day("04-10"), contents: { range: [0.09, 0.1] }, gauge: 0.25 });
const stop = [
	aFill({
		id: "f1",
		at: day("04-20"),
		product: { id: "flex-51-83", range: [0.51, 0.83] },
		litres: 15.1416,
		place: "Corner",
	}),
	aFill({
		id: "f2",
		at: day("04-20", "01"),
		product: { id: "gasoline-e10", range: [0.09, 0.1] },
		litres: 20,
		place: "Corner",
		toClick: true,
	}),
];

const open = async (id: string, events: readonly LogEvent[] = [start, ...stop]) => {
	const app = await renderApp({ at: `#/entry/${id}`, logs: [{ car, events }] });
	await screen.findByRole("link", { name: "Back to the log" });
	const counting = async () => countingEvents(await app.events()).map((event) => event.id);
	return { ...app, counting };
};
/** The terms and what they are, of a part of the screen. */
function facts(part: string): Record<string, string> {
	const terms = within(screen.getByRole("region", { name: part })).getAllByRole("term");
	const is = (term: HTMLElement) => term.nextElementSibling?.textContent?.replaceAll("\u00a0", " ") ?? "";
	return Object.fromEntries(terms.map((term) => [term.textContent ?? "", is(term)]));
}
const button = (name: string) => screen.getByRole("button", { name });

test("a stop tells all its fills, whichever of them the address names", async () => {
	await open("f2");
	expect(
		screen.getByRole("heading", { level: 2, name: /^15.142\sL of “Flex fuel.+, filled to the click$/ }),
	).toBeTruthy();
	expect(facts("What it says")).toMatchObject({
		Place: "Corner",
		"Gauge before": "not looked",
		Filled: "to the nozzle’s first click",
	});
	const region = within(screen.getByRole("region", { name: "What it says" }));
	region.getByText(/^15.142\sL \(exactly 15.1416\sL\)$/);
	region.getByText(/^20\sL$/);
	region.getByText(/^51–83\s%$/);
	region.getByText("Ids: f1, f2");
	expect(region.getAllByText(/^about \d+\s%$/)).toHaveLength(2);
});

test("a stop tells its odometer, and a fill what a unit of it cost, as this car counts them", async () => {
	const [first, second] = stop;
	const priced = { ...first, odometerKm: 16093.44, pricePerLitre: 1.0567 };
	const app = await renderApp({
		at: "#/entry/f1",
		logs: [{ car: { ...car, currency: "EUR" }, events: [start, priced, second] }],
	});
	await screen.findByRole("link", { name: "Back to the log" });
	expect(facts("What it says")).toMatchObject({ Odometer: "16093.4 km", Price: "€1.057 per L" });
	expect(screen.getAllByText("Price", { selector: "dt" })).toHaveLength(1);
	await app.model.saveSettings({ units: { [car.id]: "gal" } });
	await waitFor(() => expect(facts("What it says")).toMatchObject({ Odometer: "10000 mi", Price: "€4.000 per gal" }));
});

test("it says what the entry did: medians, ranges, chances, what labels allow", async () => {
	await open("f1");
	const said = facts("What it did");
	expect(said["Most likely"]).toMatch(/^(9|10) % →became \d\d %$/);
	expect(said["9 in 10"]).toMatch(/^9–10 % →became \d\d–\d\d %$/);
	expect(said["Above the window"]).toMatch(/^(still )?almost none/);
	expect(said["Below the window"]).toMatch(/^20 in 20 →became/);
	expect(said["Labels allow"]).toMatch(/^9–10 % →became \d\d–\d\d %$/);
});

test("at the beginning nothing was known before", async () => {
	await open("start");
	expect(facts("What it did")).toMatchObject({
		"Most likely": expect.stringMatching(/^(9|10) %$/),
		"9 in 10": "9–10 %",
	});
	expect(facts("What it says")).toMatchObject({ "In the tank": "9–10 % ethanol", Gauge: "25 % of the tank" });
});

test("a reading that does not fit is called out, with why", async () => {
	await open("tank", [start, ...stop, aTankReading({ at: day("05-02"), value: 0.8, method: "water tube" })]);
	screen.getByRole("heading", { name: "Does not fit the account" });
	screen.getByText(/^A reading that far out had a chance of less than 1 in 10,000\. Either this reading is wrong/);
	expect(facts("What it says")).toMatchObject({ Measured: "80 % ± 2 %", How: "water tube" });
	screen.getByText(/^Without it, the estimate goes by the fills and the other readings alone\./);
});

test("a stop is corrected on the fill screen", async () => {
	await open("f2");
	expect(screen.getByRole("link", { name: "Correct this stop" }).getAttribute("href")).toBe("#/correct/f1");
});

test("voiding a stop voids all its fills, leads back to the log, and can be undone", async () => {
	const { user, counting, events } = await open("f1");
	await user.click(button("Void this stop"));
	await screen.findByText("The stop is void.");
	await waitFor(() => expect(location.hash).toBe("#/log"));
	expect(await counting()).toEqual(["start"]);
	expect((await events()).filter(({ kind }) => kind === "fill")).toHaveLength(2);
	await user.click(button("Undo"));
	await screen.findByText("As it was before.");
	expect(await counting()).toEqual(["start", "f1", "f2"]);
});

test("a void stop says so and can be brought back", async () => {
	const voids = stop.map(({ id }) => aVoid({ id: `no ${id}`, target: id, at: day("04-21") }));
	const { user, counting } = await open("f1", [start, ...stop, ...voids]);
	const says = screen.getByRole("region", { name: "What it says" });
	expect(says.textContent).toMatch(/^void since/);
	expect(says.querySelector("h2 s")).toBeTruthy();
	expect(screen.queryByRole("region", { name: "What it did" })).toBeNull();
	expect(screen.queryByRole("link", { name: "Correct this stop" })).toBeNull();
	await user.click(button("Bring back"));
	await screen.findByRole("button", { name: "Void this stop" });
	expect(location.hash).toBe("#/entry/f1");
	expect(await counting()).toEqual(["start", "f1", "f2"]);
});

test("a void entry with a correction in its place says so, and changes places with it", async () => {
	const better = aLevel({ id: "better", at: day("05-02"), gauge: 0.75 });
	const old = aLevel({ at: day("05-02") });
	const { user, counting } = await open("level", [start, old, better, aVoid({ at: day("05-03") })]);
	expect(screen.getByRole("link", { name: "See the corrected gauge note" }).getAttribute("href")).toBe(
		"#/entry/better",
	);
	await user.click(button("Bring back"));
	await screen.findByRole("button", { name: "Void this gauge note" });
	expect(await counting()).toEqual(["start", "level"]);
});

test("before the only start is voided, it says what that means", async () => {
	const { user, counting } = await open("start");
	screen.getByText(/the contents count as unknown, 0–85\s%, until fills and readings narrow them down\./);
	await user.click(button("Void this start"));
	await screen.findByText("The start is void.");
	expect(await counting()).toEqual(["f1", "f2"]);
});

test("a later start, a gauge note and a flash say what voiding them means", async () => {
	const events = [
		start,
		...stop,
		aLevel({ at: day("05-01") }),
		aStart({ id: "again", at: day("05-02") }),
		aFlash({ at: day("05-03"), calibration: "e40" }),
	];
	const meaning: Record<string, RegExp> = {
		again: /goes on from what came before/,
		level: /the fuel left at that time is less well known/,
		flash: /the window of “Blend 30” stays in force until the next flash/,
	};
	await open("again", events);
	for (const [id, words] of Object.entries(meaning)) {
		location.hash = `#/entry/${id}`;
		await screen.findByText(words);
	}
	expect(facts("What it says")).toMatchObject({ Calibration: "Blend 40", Window: "35–45 %" });
	expect(screen.queryByRole("region", { name: "What it did" })).toBeNull();
});

test("a start is corrected in its place, and that can be undone", async () => {
	const { user, counting, events } = await open("start");
	await user.click(button("Correct this start"));
	const most = screen.getByRole("textbox", { name: "At most, % ethanol" });
	expect(most).toHaveProperty("value", "10");
	await user.clear(most);
	await user.type(most, "5");
	await user.click(button("Save the correction"));
	await screen.findByText(/swap them/);
	expect(await counting()).toContain("start");

	await user.clear(most);
	await user.type(most, "15,5");
	await user.click(button("Save the correction"));
	await screen.findByText("The start is corrected.");
	const added = (await events()).find(({ id, kind }) => kind === "start" && id !== "start");
	expect(added).toMatchObject({ at: start.at, contents: { range: [0.09, 0.155] }, gauge: 0.25 });
	expect(await counting()).toEqual([added?.id, "f1", "f2"]);
	await waitFor(() => expect(location.hash).toBe(`#/entry/${encodeURIComponent(added?.id ?? "")}`));
	await waitFor(() => expect(facts("What it says")).toMatchObject({ "In the tank": "9–15.5 % ethanol" }));

	await user.click(button("Undo"));
	await screen.findByText("As it was before.");
	expect(await counting()).toEqual(["start", "f1", "f2"]);
});

test("a start may turn out to have been measured, and the gauge not looked at", async () => {
	const { user, events } = await open("start");
	await user.click(button("Correct this start"));
	await user.click(screen.getByRole("radio", { name: "Measured" }));
	await user.type(screen.getByRole("textbox", { name: "Measured, % ethanol" }), "12");
	await user.click(button("Not looked"));
	await user.click(button("Save the correction"));
	await screen.findByText("The start is corrected.");
	const added = (await events()).find(({ id, kind }) => kind === "start" && id !== "start");
	expect(added).toMatchObject({ contents: { value: 0.12, sd: 0.025 } });
	expect(added).not.toHaveProperty("gauge");
});

test("a gauge note is corrected, or left as it was", async () => {
	const { user, events, counting } = await open("level", [start, aLevel({ at: day("05-02") })]);
	await user.click(button("Correct this gauge note"));
	await user.click(button("Leave it as it was"));
	await user.click(button("Correct this gauge note"));
	await user.click(button("Not looked"));
	await user.click(button("Save the correction"));
	await screen.findByText("Say where the gauge stood, or void the note.");
	await user.click(button("Fuel gauge then: a step less"));
	await user.click(button("Fuel gauge then: a step less"));
	await user.click(button("Save the correction"));
	await screen.findByText("The gauge note is corrected.");
	const added = (await events()).find(({ id, kind }) => kind === "level" && id !== "level");
	expect(added).toMatchObject({ at: day("05-02"), gauge: 0.4375 });
	expect(await counting()).toEqual(["start", added?.id]);
});

test("who has gone elsewhere meanwhile is not called back", async () => {
	const { user } = await open("f1");
	const voiding = user.click(button("Void this stop"));
	await voiding;
	location.hash = "#/tank";
	await screen.findByText("The stop is void.");
	expect(location.hash).toBe("#/tank");
});

test("an unknown entry is said to be none, with a way back", async () => {
	await open("nothing");
	screen.getByText("This entry is not in the log of “The grey one”.");
	expect(screen.getByRole("link", { name: "Back to the log" }).getAttribute("href")).toBe("#/log");
});

test("a failed write voids nothing and says so", async () => {
	const app = await renderApp({
		at: "#/entry/f1",
		logs: [{ car, events: [start, ...stop] }],
		wrap: (keeper) => ({ ...keeper, append: () => Promise.reject(new Error("The phone is full.")) }),
	});
	await screen.findByRole("button", { name: "Void this stop" });
	await app.user.click(button("Void this stop"));
	await screen.findByText("The phone is full.");
	expect(location.hash).toBe("#/entry/f1");
	expect(screen.queryByText("The stop is void.")).toBeNull();
	expect(button("Void this stop")).toHaveProperty("disabled", false);
});
