/** Measurements, data logs and contradictions, for a driver who reads German. */
import { screen, waitFor, within } from "@testing-library/preact";
import { beforeAll, expect, test, vi } from "vitest";
import { wordsReady } from "../../src/app/words/language";
import type { PumpReading, TrimReading } from "../../src/domain/event";
import { car as logCar, logFile, life as logLife, readings, region, spaces, text } from "./dataLogScreen";
import { openDoubt, wrongProduct } from "./doubtScreen";
import { measured, open, type } from "./readingsScreen";
import { renderApp } from "./renderApp";

// Chosen before any code of the app runs, as on a phone.
vi.hoisted(() => localStorage.setItem("heeltap-language", "de"));
vi.mock("../../src/app/logReader", () => import("./dataLogReader"));
beforeAll(wordsReady);

const button = (name: string | RegExp) => screen.findByRole("button", { name });

test("a water test of a pump is typed with commas, understood, saved, and told in the log", async () => {
	const app = await open("tube");
	await screen.findByRole("heading", { name: "Wassertest" });
	const cautions = screen.getAllByRole("listitem").map(({ textContent }) => spaces(textContent));
	for (const word of ["Zündquellen", "Dämpfe", "Haut", "Augen", "Schutzbrille", "Werkstatt", "gefährlicher Abfall"])
		expect(cautions.some((caution) => caution.includes(word))).toBe(true);

	expect(await screen.findByRole("textbox", { name: "Jeweils abgelesen auf, mL" })).toHaveProperty("value", "0,5");
	await app.user.click(await button("Speichern"));
	screen.getByText("Geben Sie hier eine Zahl ein, etwa 63,5.");
	await type(app, "Untere Schicht nach dem Absetzen, mL", "7000");
	screen.getByText(/^Der Wert muss zwischen 1 und 5000.mL liegen/);
	await type(app, "Untere Schicht nach dem Absetzen, mL", "83,5");
	await app.user.click(screen.getByRole("radio", { name: /^Zapfsäule/ }));
	const understood = await screen.findByText(/Ohne die Korrektur wären es/);
	expect(spaces(understood.textContent)).toMatch(/^7\d(,\d)? % Ethanol, ± 4(,\d)? Punkte\. Ohne .* wären es 67 %\.$/);
	expect(understood.querySelector("strong")?.textContent).toMatch(/^7\d/);
	const would = within(await screen.findByRole("region", { name: "Was es ändern würde" }));
	await would.findByText("Diese Zapfsäule liefert");

	await app.user.click(await button("Speichern"));
	await waitFor(() => expect(location.hash).toBe("#/tank"));
	expect(spaces((await screen.findByText(/^Gespeichert\./)).textContent)).toMatch(/^Gespeichert\. (Es bleibt|Aus) /);
	const [event] = measured(await app.events()) as PumpReading[];
	expect(event).toMatchObject({ of: "pump", place: "Harbour" });
	// The log is of one language, so that every phone can tell it in its own.
	expect(spaces(event.method)).toBe("water tube, 50 mL with 50 mL of water, layer 83.5 mL");
	location.hash = `#/entry/${event.id}`;
	await screen.findByText((said) => spaces(said) === "Wassertest, 50 mL mit 50 mL Wasser, Schicht 83,5 mL");
});

test("a data log with columns of its own is mapped, read and saved", async () => {
	const headers = {
		"Short Term Fuel Trim Bank 1 (%)": "Korrektur kurz",
		"Long Term Fuel Trim Bank 1 (%)": "Korrektur lang",
	};
	const without = ["Short Term Fuel Trim Bank 2 (%)", "Long Term Fuel Trim Bank 2 (%)", "Ethanol Fuel (%)"];
	const app = await renderApp({ at: "#/datalog", logs: [{ car: logCar, events: logLife }] });
	await app.user.upload(await screen.findByLabelText("Datenlog wählen"), new File([""], "leer.csv"));
	await waitFor(() =>
		expect(spaces(screen.getByRole("alert").textContent)).toMatch(/^In dieser Datei steht nichts.*nichts geändert\.$/),
	);
	await app.user.upload(
		screen.getByLabelText(/^Datenlog wählen/),
		logFile({}, { headers, without: [...without, "Lambda measured", "Lambda commanded"] }),
	);
	const mapping = await region("Was steht in den Spalten?");
	mapping.getByText("Für eine Gemischkorrektur fehlt noch: Kurzzeit- und Langzeitkorrektur einer Bank.");
	const column = (header: string) => mapping.findByRole("combobox", { name: new RegExp(`^Das ist.*${header}`) });
	await app.user.selectOptions(await column("Korrektur kurz"), "Kurzzeitkorrektur, Bank 1");
	await app.user.selectOptions(await column("Korrektur lang"), "Langzeitkorrektur, Bank 1");
	mapping.getByText("Alles Nötige ist da.");
	await app.user.click(await button("Das Log so lesen"));

	const steady = "Gemischkorrektur bei gleichmäßiger Fahrt";
	expect(await text("Das Log")).toMatch(/„drive\.csv“ ist gelesen\..*Gelesen1\.2\d\d Zeilen, gemittelt über/);
	expect(await text(steady)).toMatch(/\+[56],?\d? % Kraftstoff, ± 3(,\d)? %/);
	expect(await text(steady)).toMatch(/wären das 4\d % Ethanol, ± \d+ Punkte, mit „Blend 30“, gemacht für 30 %\./);
	await (await region(steady)).findByRole("img", {
		name: /^Gemischkorrektur über 10.min\. .* Abschnitten, Median dort/,
	});
	await app.user.click(await button(/^\+[56].* speichern$/));
	await screen.findByText("Es ist in der Rechnung.");
	const [reading] = (await readings(app)) as TrimReading[];
	expect(reading).toMatchObject({ of: "trim", method: "data log", calibratedFor: 0.3 });
});

test("a contradiction is told with its explanations, and settled", async () => {
	const app = await openDoubt(wrongProduct);
	const said = spaces(
		(await screen.findByRole("region", { name: "Die letzten Einträge widersprechen sich" })).textContent,
	);
	expect(said).toMatch(
		/Die Messung von 28 % am 20\.05\.2026 passt nicht in die Rechnung: eine Chance von weniger als 1 zu 10\.000\./,
	);
	expect(said).toContain("Fahren Sie ohne Ladedruck, und fragen Sie Ihren Tuner.");
	const entries = within(await screen.findByRole("region", { name: "Um diese Einträge geht es" }));
	expect(
		entries
			.getAllByRole("link")
			.map(({ textContent }) => spaces(textContent))
			.join("\n"),
	).toMatch(/Messung im Tank \(Ethanolmessgerät\): 28 %Widerspricht: eine Chance von weniger als 1 zu 10\.000$/);
	const behind = within(await screen.findByRole("region", { name: "Was dahinter stecken kann" }));
	const headings = behind.getAllByRole("heading", { level: 3 }).map(({ textContent }) => spaces(textContent));
	expect(headings).toContain("Die 25,5 L vom 15.05.2026 waren „Benzin E10 (USA)“, nicht „Flexfuel E85 (USA)“.");
	expect(headings.at(-1)).toBe("Es ist kein Fehler: Alle stimmen, und es ist Zufall.");
	const [likeliest] = behind.getAllByRole("button", { name: "In „Benzin E10 (USA)“ korrigieren" });
	await app.user.click(likeliest);
	await screen.findByText("Es ist ausgefüllt: Prüfen Sie es, und speichern Sie.");
});
