/** A car set up, its calibrations and its details, for a driver who reads German. */
import { screen, waitFor, within } from "@testing-library/preact";
import { beforeAll, expect, test, vi } from "vitest";
import { wordsReady } from "../../src/app/words/language";
import { aCalibration, aCar, aStart } from "../helpers/logs";
import { type RenderedApp, renderApp } from "./renderApp";

// Chosen before any code of the app runs, as on a phone.
vi.hoisted(() => localStorage.setItem("heeltap-language", "de"));
beforeAll(wordsReady);

const car = aCar({ name: "Der Graue", calibrations: [aCalibration({ name: "Gemisch 30" })] });
const now = Date.parse("2026-06-10T15:30:00Z");
const field = (name: string) => screen.getByRole("textbox", { name });
const button = (name: string | RegExp) => screen.getByRole("button", { name });

async function retype(app: RenderedApp, name: string, typed: string): Promise<void> {
	await app.user.clear(field(name));
	if (typed !== "") await app.user.type(field(name), typed);
}

test("a first car is set up; what is wrong is said, and the rest has a name", async () => {
	const app = await renderApp();
	await screen.findByRole("heading", { name: "Welches Auto, und was ist in seinem Tank?" });
	await screen.findByRole("button", { name: "Rechnung beginnen" });
	await app.user.click(screen.getByRole("radio", { name: /^Litern/ }));
	await retype(app, "Fassungsvermögen des Tanks, L", "500");
	await app.user.click(screen.getByRole("radio", { name: /^Gemessen/ }));
	expect(field("± Punkte")).toHaveProperty("value", "2,5");
	await retype(app, "Gemessen, %", "12,5");
	await app.user.click(button("Rechnung beginnen"));
	screen.getByText(/^Der Wert muss zwischen 5,0\sL und 200,0\sL liegen: Prüfen Sie Zahl und Einheit\.$/);
	screen.getByText("Geben Sie hier eine Zahl ein, etwa 34.");
	screen.getByText("Oben stimmt etwas noch nicht; gespeichert ist noch nichts.");

	await retype(app, "Fassungsvermögen des Tanks, L", "58,5");
	await retype(app, "Gemacht für, % Ethanol", "30,5");
	expect(field("Bis, %")).toHaveProperty("value", "34,5");
	screen.getByText(/„Gemisch 30,5“/);
	await app.user.click(button("Rechnung beginnen"));
	await waitFor(() => expect(location.hash).toBe("#/tank"));
	const [made] = await app.store.cars();
	expect(made).toMatchObject({
		name: "Mein Auto",
		tank: { capacityL: 58.5 },
		calibrations: [{ name: "Gemisch 30,5", calibratedFor: 0.305, window: [0.265, 0.345] }],
	});
	expect((await app.events(made.id)).at(-1)).toMatchObject({ contents: { value: 0.125, sd: 0.025 } });
});

test("the invented car has German names, and notes methods as every log does", { timeout: 120_000 }, async () => {
	const app = await renderApp();
	await app.user.click(await screen.findByRole("button", { name: "Erst mit einem erfundenen Auto umsehen" }));
	// Seven months are reckoned first.
	await waitFor(() => expect(location.hash).toBe("#/tank"), { timeout: 90_000 });
	await screen.findByRole("heading", { name: "Erfundener Kombi" });
	const events = await app.events("invented-1");
	expect(new Set(events.flatMap((event) => ("place" in event && event.place ? [event.place] : [])))).toEqual(
		new Set(["Mühlenweg", "Hafen", "Nordring"]),
	);
	expect(new Set(events.flatMap((event) => ("method" in event ? [event.method] : [])))).toEqual(
		new Set(["ethanol sensor", "water tube"]),
	);
});

test("a calibration is entered: its window is doubted in words, and it is flashed", async () => {
	const app = await renderApp({ at: "#/calibration", now, logs: [{ car, events: [aStart()] }] });
	await screen.findByRole("heading", { name: "Neue Abstimmung" });
	await app.user.type(field("Gemacht für, % Ethanol"), "50");
	screen.getByText("Vier Punkte nach beiden Seiten sind unsere Annahme; fragen Sie Ihren Tuner.");
	await retype(app, "Von, %", "60,5");
	await app.user.click(button("Abstimmung speichern"));
	screen.getByText(/^Das Ende muss über dem Anfang von 60,5\s% liegen\.$/);
	await retype(app, "Bis, %", "70");
	screen.getByText(/^Das Gemisch, für das sie gemacht ist, 50\s%, liegt außerhalb des Fensters von 60,5–70\s%:/);
	await retype(app, "Von, %", "45,5");
	await retype(app, "Bis, %", "54");
	const lean = within(screen.getByRole("group", { name: "Hingenommene Chance auf zu viel Ethanol (mager)" }));
	lean.getByRole("radio", { name: "1 von 20 üblich" });
	await app.user.click(lean.getByRole("radio", { name: "1 von 100" }));
	await app.user.click(screen.getByRole("checkbox", { name: /^Sie ist jetzt aufgespielt/ }));
	await app.user.click(button("Abstimmung speichern"));
	await screen.findByText("„Gemisch 50“ ist gespeichert.");
	const item = within(await screen.findByRole("listitem", { name: "Gemisch 50" }));
	item.getByText(/^Gemacht für 50\s%, Fenster 45,5–54\s%\. Hingenommen: zu viel 1 von 100, zu wenig 1 von 20\./);
	item.getByText("Jetzt aufgespielt");
	item.getByRole("link", { name: "„Gemisch 50“ ändern" });
	const [saved] = await app.store.cars();
	expect(saved.calibrations[1]).toMatchObject({ window: [0.455, 0.54], leanBudget: 0.01 });
	expect((await app.events()).at(-1)).toMatchObject({ kind: "calibration", calibration: saved.calibrations[1].id });
});

test("a car is changed, and removed after a question that counts", async () => {
	const app = await renderApp({ at: "#/car", logs: [{ car, events: [aStart()] }] });
	await screen.findByRole("heading", { name: "Abstimmungen" });
	await retype(app, "Name des Autos", "");
	await app.user.click(button("Auto speichern"));
	screen.getByText("Geben Sie dem Auto einen Namen, etwa „Der Graue“.");
	await retype(app, "Name des Autos", "Die Rote");
	await app.user.selectOptions(screen.getByRole("combobox", { name: "Kraftstoff bezahlt in" }), "EUR");
	screen.getByRole("option", { name: "Euro (EUR)" });
	await app.user.click(button("Auto speichern"));
	await screen.findByText("Das Auto ist gespeichert.");
	expect((await app.store.cars())[0]).toMatchObject({ name: "Die Rote", currency: "EUR" });
	screen.getByRole("radio", { name: "Dunkel" });

	await app.user.click(button("„Die Rote“ entfernen …"));
	const dialog = within(await screen.findByRole("dialog", { name: "„Die Rote“ entfernen?" }));
	dialog.getByText(/^Sein einziger Eintrag und seine Abstimmung verschwinden von diesem Gerät/);
	await app.user.click(dialog.getByRole("button", { name: "Endgültig entfernen" }));
	await waitFor(async () => expect(await app.store.cars()).toEqual([]));
});
