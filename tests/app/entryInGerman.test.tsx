/** The log, and an entry put right, for a driver who reads German. */
import { screen, waitFor, within } from "@testing-library/preact";
import { beforeAll, expect, test, vi } from "vitest";
import { findingOf, historyOf, shownOf } from "../../src/app/historyView";
import type { LogItem } from "../../src/app/logView";
import { wordsReady } from "../../src/app/words/language";
import { countingEvents, type LogEvent } from "../../src/domain/event";
import { aCalibration, aCar, aFill, aLevel, aPumpReading, aStart, aTankReading } from "../helpers/logs";
import { type RenderedApp, renderApp } from "./renderApp";

// Chosen before any code of the app runs, as on a phone.
vi.hoisted(() => localStorage.setItem("heeltap-language", "de"));
beforeAll(wordsReady);

const car = aCar({ name: "Der Graue", calibrations: [aCalibration({ name: "Gemisch 30" })] });
const day = (date: string, minute = "00") => `2026-${date}T12:${minute}:00+02:00`;
const start = aStart({ at: day("04-10"), contents: { range: [0.09, 0.1] }, gauge: 0.25 });
const stop = [
	aFill({
		id: "f1",
		at: day("04-20"),
		product: { id: "flex-51-83", range: [0.51, 0.83] },
		litres: 15.1416,
		place: "Hafen",
		pricePerLitre: 1.199,
	}),
	aFill({
		id: "f2",
		at: day("04-20", "01"),
		product: { id: "gasoline-e10", range: [0.09, 0.1] },
		litres: 20,
		place: "Hafen",
		toClick: true,
	}),
];
const spaces = (text: string | null | undefined) => text?.replaceAll("\u00a0", " ") ?? "";
const button = (name: string | RegExp) => screen.getByRole("button", { name });

async function open(at: string, more: readonly LogEvent[] = []): Promise<RenderedApp> {
	return renderApp({ at, logs: [{ car, events: [start, ...stop, ...more] }] });
}

async function type(app: RenderedApp, name: string, typed: string): Promise<void> {
	const box = screen.getByRole("textbox", { name });
	await app.user.clear(box);
	await app.user.type(box, typed);
}

/** The terms and what they are, of a part of the screen. */
function facts(part: string): Record<string, string> {
	const terms = within(screen.getByRole("region", { name: part })).getAllByRole("term");
	return Object.fromEntries(
		terms.map((term) => [term.textContent ?? "", spaces(term.nextElementSibling?.textContent)]),
	);
}

test("the log tells stops, months and effects", async () => {
	await open("#/log");
	const april = within(await screen.findByRole("region", { name: "April 2026" }));
	const rows = april.getAllByRole("listitem").map(({ textContent }) => spaces(textContent));
	expect(rows[0]).toMatch(
		/^20\.04\.2026, \d\d:0015,142 L „Flexfuel E85 .USA.“ und 20 L „Benzin E10 .USA.“, Hafen, bis zum Abschalten/,
	);
	expect(rows[0]).toMatch(/→wurde zu \d+ %, 9 von 10: \d+–\d+ %▼ Unter dem Fenster: \d+ von 20$/);
	expect(rows[1]).toMatch(/Die Rechnung begann mit 9–10 % Ethanol im Tank/);
	screen.getByRole("button", { name: "Letzte 10 Stopps", pressed: true });
	screen.getByRole("img", { name: /^Das ganze Logbuch, 10\.04\.2026 bis .*: Der wahrscheinlichste Gehalt liegt/ });
});

test("the finding of the chart counts entries in their own case", () => {
	const figures = { median: 0.3, low: 0.28, high: 0.32 } as never;
	const item = (id: string, at: string, median: number): LogItem =>
		({
			id,
			at: day(at),
			events: [aFill({ id, at: day(at) })],
			before: null,
			after: { ...(figures as object), median },
			surprise: null,
			calibration: car.calibrations[0],
			isVoid: false,
		}) as never;
	const finding = (...items: LogItem[]) => {
		const shown = shownOf(historyOf(car, items), "all", Date.parse(day("06-01")));
		return shown && spaces(findingOf(shown));
	};
	expect(finding(item("a", "05-01", 0.3))).toMatch(/etwa 30 %\. Er liegt im Fenster\.$/);
	expect(finding(item("a", "05-01", 0.3), item("b", "05-02", 0.31))).toMatch(/Alle 2 Einträge liegen im Fenster\.$/);
	expect(finding(item("a", "05-01", 0.4))).toMatch(/0 von 1 Eintrag im Fenster, 1 darüber\.$/);
	expect(finding(item("a", "05-01", 0.3), item("b", "05-02", 0.4), item("c", "05-03", 0.2))).toMatch(
		/zwischen 20 % und 40 %, am Ende bei etwa 20 %\. 1 von 3 Einträgen im Fenster, 1 darüber, 1 darunter\.$/,
	);
});

test("a stop tells its facts, goes void and counts again", async () => {
	const app = await open("#/entry/f1");
	await screen.findByRole("link", { name: "Zurück zum Logbuch" });
	expect(facts("Was darin steht")).toMatchObject({ Ort: "Hafen", "Tankanzeige vorher": "nicht abgelesen" });
	const says = within(screen.getByRole("region", { name: "Was darin steht" }));
	says.getByText(/^15,142\sL \(genau 15,1416\sL\)$/);
	says.getByText(/^1,199 pro\sL$/);
	says.getByText("bis zum ersten Abschalten der Zapfpistole");
	expect(facts("Was der Eintrag bewirkt hat")["Am ehesten"]).toMatch(/^\d+ % →wurde zu \d+ %$/);
	screen.getByText(/^Ohne ihn gilt dieser Kraftstoff als nie getankt.* Er bleibt im Logbuch und kann später/);

	await app.user.click(button("Diesen Tankstopp stornieren"));
	await screen.findByText("Der Tankstopp ist storniert.");
	await waitFor(() => expect(location.hash).toBe("#/log"));
	await app.user.click(await screen.findByRole("button", { name: "Stornierte Einträge zeigen (1)" }));
	await app.user.click(button(/^Wieder gelten lassen: 15,142\sL „Flexfuel E85/));
	await screen.findByText("Der Tankstopp zählt wieder.");
	expect(countingEvents(await app.events()).map(({ id }) => id)).toEqual(["start", "f1", "f2"]);
});

test("a reading is corrected with a comma, and what is wrong is said beside its field", async () => {
	const old = aTankReading({ id: "r1", at: day("05-02"), value: 0.275, sd: 0.025, method: "ethanol sensor" });
	const app = await open("#/entry/r1", [old]);
	await app.user.click(await screen.findByRole("button", { name: "Diese Messung korrigieren" }));
	expect(await screen.findByRole("textbox", { name: "Gemessen, % Ethanol" })).toHaveProperty("value", "27,5");
	await type(app, "Gemessen, % Ethanol", "130");
	await app.user.click(button("Korrektur speichern"));
	screen.getByText("Der Wert muss zwischen 0 und 100 % liegen: Prüfen Sie die Zahl.");
	await type(app, "Gemessen, % Ethanol", "31,5");
	await app.user.click(button("Korrektur speichern"));
	await screen.findByText("Die Messung ist korrigiert.");
	expect(countingEvents(await app.events()).at(-1)).toMatchObject({
		value: 0.315,
		sd: 0.025,
		method: "ethanol sensor",
	});
	await screen.findByRole("heading", { name: /^Messung im Tank .Ethanolsensor.: 31,5\s%$/ });

	location.hash = "#/entry/r1";
	await screen.findByText(/^Eine korrigierte Messung zählt an dieser Stelle\. .*wird der andere storniert\.$/);
	screen.getByRole("link", { name: "Korrektur ansehen" });
});

test("a start and a note of the gauge are corrected", async () => {
	const app = await open("#/entry/start", [aLevel({ id: "l1", at: day("05-02"), gauge: 0.5 })]);
	await app.user.click(await screen.findByRole("button", { name: "Diesen Anfang korrigieren" }));
	await app.user.click(screen.getByRole("radio", { name: "Gemessen" }));
	expect(screen.getByRole("textbox", { name: "Plus oder minus, Punkte" })).toHaveProperty("value", "2,5");
	await type(app, "Plus oder minus, Punkte", "0");
	await app.user.click(button("Korrektur speichern"));
	screen.getByText(/^Der Wert muss zwischen 0,1 und 25 Punkten liegen/);
	await app.user.click(screen.getByRole("radio", { name: "Zwischen zwei Grenzen" }));
	await type(app, "Mindestens, % Ethanol", "12,5");
	await app.user.click(button("Korrektur speichern"));
	screen.getByText(/^Der Wert darf nicht unter der unteren Grenze von 12,5\s% liegen/);
	await type(app, "Höchstens, % Ethanol", "20");
	await app.user.click(button("Korrektur speichern"));
	await screen.findByText("Der Anfang ist korrigiert.");

	location.hash = "#/entry/l1";
	await app.user.click(await screen.findByRole("button", { name: "Diesen Tankstand korrigieren" }));
	await app.user.click(button("Nicht abgelesen"));
	await app.user.click(button("Korrektur speichern"));
	screen.getByText("Sagen Sie, wo die Anzeige stand, oder stornieren Sie den Eintrag.");
	await app.user.click(button("So lassen, wie es war"));
	expect(countingEvents(await app.events())[0]).toMatchObject({ contents: { range: [0.125, 0.2] } });
});

test("a sample from a pump says of what and where", async () => {
	await open("#/entry/p1", [
		aPumpReading({ id: "p1", at: day("05-02"), product: stop[0].product, method: "water tube" }),
	]);
	await screen.findByRole("heading", {
		name: /^Messung von „Flexfuel E85 .USA.“, Corner station .Wassertest.: 70\s%$/,
	});
	expect(facts("Was darin steht")).toMatchObject({
		Gemessen: "70 % ± 3 %",
		Womit: "Wassertest",
		Kraftstoff: "Flexfuel E85 (USA) (Angabe: 51–83 %)",
	});
	screen.getByRole("link", { name: "Was über Corner station bekannt ist" });
});
