/** The app in German: chosen on this device, said on every part of a fill, and chosen away again. */
import "fake-indexeddb/auto";
import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { aCalibration, aCar, aFill, aStart } from "../helpers/logs";
import type { RenderedApp } from "./renderApp";

const life = [
	aStart({ at: "2026-05-01T12:00:00+02:00", contents: { range: [0.09, 0.1] }, gauge: 0.25 }),
	aFill({ id: "f1", stop: "s1", at: "2026-05-02T12:00:00+02:00", litres: 12 }),
];
const log = { car: aCar({ calibrations: [aCalibration()] }), events: life };

const reloadPage = vi.fn();
vi.mock("../../src/app/reload", () => ({ reloadPage }));

/** As after a start with this choice: the language is settled before any code of a screen runs. */
function begin(language: string | null): void {
	localStorage.removeItem("heeltap-language");
	if (language) localStorage.setItem("heeltap-language", language);
	vi.resetModules();
}

async function startIn(language: string | null, at: string): Promise<RenderedApp & Library> {
	begin(language);
	// All of one start: a second Preact or a second library beside them would draw into nothing.
	const { renderApp } = await import("./renderApp");
	const library = await import("@testing-library/preact");
	const { wordsReady } = await import("../../src/app/words/language");
	await wordsReady();
	return { ...(await renderApp({ at, logs: [log] })), ...library };
}

type Library = typeof import("@testing-library/preact");

beforeEach(() => reloadPage.mockClear());

afterEach(async () => {
	const { cleanup } = await import("@testing-library/preact");
	cleanup();
	localStorage.clear();
});

test("a fill is recorded by its German names, and is in the log", async () => {
	const { user, screen, waitFor, events } = await startIn("de", "#/tank");
	expect(await screen.findByText("Am ehesten etwa")).toBeDefined();
	expect(screen.getByRole("img", { name: /^Zwanzig gleich wahrscheinliche Ethanolgehalte von/ })).toBeDefined();
	await user.click(screen.getByRole("link", { name: "Tanken" }));

	await user.click(await screen.findByRole("button", { name: /^Flexfuel E85/ }));
	await user.click(screen.getByRole("button", { name: "1" }));
	await user.click(screen.getByRole("button", { name: "2" }));
	await user.click(screen.getByRole("button", { name: "Bis zum Abschalten der Zapfpistole getankt?" }));
	await user.click(screen.getByRole("button", { name: "Jetzt" }));
	await user.click(screen.getByRole("button", { name: /^12\sL speichern$/ }));
	// The question about the lean limit comes where the chance reaches the budget.
	const asked = () => screen.queryByRole("button", { name: "Speichern, es ist schon im Tank" });
	await waitFor(() => asked() ?? expect(location.hash).toBe("#/tank"));
	const sure = asked();
	if (sure) await user.click(sure);
	await waitFor(() => expect(location.hash).toBe("#/tank"));
	expect(await screen.findByText(/^Gespeichert\. Etwa \d+\s% Ethanol nach diesem Tankstopp\.$/)).toBeDefined();
	expect((await events()).at(-1)).toMatchObject({ kind: "fill", litres: 12, toClick: true });
	await user.click(screen.getByRole("button", { name: "Rückgängig" }));
	await waitFor(async () => expect((await events()).at(-1)).toMatchObject({ kind: "void" }));
});

test("what the storage refuses is said in German", async () => {
	begin("de");
	const { failureOf } = await import("../../src/app/failure");
	const { DuplicateIdError, StorageLostError } = await import("../../src/store/errors");
	const { wordsReady } = await import("../../src/app/words/language");
	await wordsReady();
	expect(await failureOf(new StorageLostError("full"))).toEqual({
		text: expect.stringMatching(/^Auf diesem Gerät ist kein Platz mehr/),
		unwritten: true,
	});
	// Of an error from the worker only its name and its message are left.
	const { name, message } = new DuplicateIdError("event", "f1");
	const crossed = Object.assign(new Error(message), { name });
	expect((await failureOf(crossed)).text).toMatch(/^Der Eintrag "f1" ist schon mit anderem Inhalt da/);
});

test.each([
	["", "Die Datei: ist leer: Wählen Sie eine Datei, die Heeltap gespeichert hat"],
	['{"format":"heeltap-log","version":2}', "version: von einer neueren Version der App: Aktualisieren Sie die App"],
	['{"format":"heeltap-log","version":1,"car":{', "Zeile 1, Spalte 44: die Datei endet mittendrin"],
	['{"format":"heeltap-log","version":1,"car":{"id":7}}', "car.id: muss Text mit 1 bis 200 Zeichen sein, hier steht 7"],
	['{"format":"heeltap-log","version":1,"car":{"id":"a"}}', "car.name: fehlt; der Wert muss Text mit 1 bis 200"],
])("a file that says %j is refused in German", async (text, sentence) => {
	begin("de");
	const { logErrorWords } = await import("../../src/app/refusal");
	const { wordsReady } = await import("../../src/app/words/language");
	await wordsReady();
	const { parseLog } = await import("../../src/store/backup");
	const result = parseLog(text);
	expect(result.ok ? "taken" : logErrorWords(result.error)).toContain(sentence);
});

test("where a fuel's range is from is said in German, unless it is the name of a standard", async () => {
	const { catalogue } = await import("../../src/domain/catalogue");
	const { words } = await import("../../src/app/words/de/picker");
	const english = catalogue.filter(({ source }) => words.source(source) === source).map(({ source }) => source);
	expect([...new Set(english)]).toEqual([
		"76 FR 44406",
		"EN 228",
		"CEN/TS 18227",
		"EN 15293",
		"Fuel Quality Standards (Ethanol E85) Determination 2019",
		"ASTM D4806",
	]);
});

describe("The choice of language", () => {
	test("begins anew in the other language, and in none that is the same", async () => {
		const { user, screen, waitFor } = await startIn(null, "#/car");
		const german = await screen.findByRole("radio", { name: "Deutsch" });
		expect((screen.getByRole("radio", { name: "The browser’s" }) as HTMLInputElement).checked).toBe(true);
		await user.click(screen.getByRole("radio", { name: "English" }));
		expect(localStorage.getItem("heeltap-language")).toBe("en");
		expect(reloadPage).not.toHaveBeenCalled();
		await user.click(german);
		expect(localStorage.getItem("heeltap-language")).toBe("de");
		await waitFor(() => expect(reloadPage).toHaveBeenCalledTimes(1));
	});

	test("waits for what is still on its way to the disk", async () => {
		const { user, screen, waitFor, model, store } = await startIn(null, "#/car");
		const german = await screen.findByRole("radio", { name: "Deutsch" });
		const typed = { half: "typed" };
		const saved = model.saveDraft("car/fill", typed);
		const order: string[] = [];
		saved.then(() => order.push("written"));
		reloadPage.mockImplementation(() => order.push("anew"));
		await user.click(german);
		await waitFor(() => expect(order).toEqual(["written", "anew"]));
		expect(await store.draft("car/fill")).toEqual(typed);
	});

	test("asks first where a form would be lost", async () => {
		const { user, screen, waitFor } = await startIn("de", "#/car");
		await user.type(await screen.findByRole("textbox", { name: "Name des Autos" }), "s");
		await user.click(screen.getByRole("radio", { name: "English" }));
		const anew = await screen.findByRole("button", { name: "Neu starten" });
		expect(reloadPage).not.toHaveBeenCalled();
		await user.click(anew);
		await waitFor(() => expect(reloadPage).toHaveBeenCalledTimes(1));
		expect(localStorage.getItem("heeltap-language")).toBe("en");
	});
});
