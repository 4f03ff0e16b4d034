/** What to pump, the table of mixes, places and costs, for a driver who reads German. */
import { screen, waitFor, within } from "@testing-library/preact";
import { beforeAll, describe, expect, test, vi } from "vitest";
import type { Guided, Rest } from "../../src/app/fillPlan";
import type { KeeperPort } from "../../src/app/keeperPort";
import {
	burnWords,
	clickedWords,
	driveWords,
	orderWords,
	outdatedWords,
	restWords,
	unplannableWords,
} from "../../src/app/planWords";
import { wordsReady } from "../../src/app/words/language";
import type { Plan } from "../../src/domain/plan/request";
import type { PlanAnswer } from "../../src/keeper/view";
import { aCalibration, aCar, aFill, aPumpReading, aStart } from "../helpers/logs";
import { type RenderedApp, renderApp } from "./renderApp";

// Chosen before any code of the app runs, as on a phone.
vi.hoisted(() => localStorage.setItem("heeltap-language", "de"));
beforeAll(wordsReady);

const now = Date.parse("2026-06-01T15:30:00Z");
const flex = { id: "flex-51-83", range: [0.51, 0.83] };
const e10 = { id: "gasoline-e10", range: [0.09, 0.1] };
const car = aCar({ name: "Der Graue", calibrations: [aCalibration({ name: "Gemisch 30" })], currency: "EUR" });
const day = (date: string, minute = "00") => `2026-${date}T12:${minute}:00+02:00`;
const at = (product: unknown, fields: Record<string, unknown>) => aFill({ product, place: "Hafen", ...fields });
const life = [
	aStart({ at: day("05-01"), contents: { range: [0.09, 0.1] }, gauge: 0.25 }),
	at(e10, { id: "f0", stop: "s0", at: day("05-02"), litres: 20, pricePerLitre: 1.7, odometerKm: 84000, toClick: true }),
	aPumpReading({ id: "p", at: day("05-10"), product: flex, place: "Hafen" }),
	at(flex, { id: "f1", stop: "s1", at: day("05-20"), litres: 12, pricePerLitre: 1.1, odometerKm: 84500 }),
	at(e10, { id: "f2", stop: "s1", at: day("05-20", "01"), litres: 20, pricePerLitre: 1.75, toClick: true }),
];
const spaces = (text: string | null | undefined) => text?.replaceAll("\u00a0", " ") ?? "";
const button = (name: string | RegExp) => screen.getByRole("button", { name });

const chances = (above: number, below: number) => ({ above, below, inside: 1 - above - below });
const plan: Plan = {
	pours: [
		{ product: flex, litres: 12.5, toClick: false },
		{ product: e10, litres: 9.04, toClick: true },
	],
	chances: chances(0.04, 0.1),
	content: { median: 0.3, low: 0.26, high: 0.33 },
	cost: 31.4,
	swapped: chances(0.2, 0.1),
} as never;

async function open(at: string, value?: Record<string, unknown>): Promise<RenderedApp> {
	const dots = Array.from({ length: 20 }, (_, i) => 0.265 + i * 0.003);
	const planned = { ok: true, value: { plan, verdict: "inside", reach: [0.15, 0.6], ...value } };
	const answer = { planned, calibration: car.calibrations[0], dots, otherwise: null } as unknown as PlanAnswer;
	const wrap = (keeper: KeeperPort): KeeperPort => (value ? { ...keeper, plan: async () => answer } : keeper);
	return renderApp({ at, now, wrap, logs: [{ car, events: life }] });
}

test("a stop is planned, and pumped as planned", async () => {
	const app = await open("#/plan", {});
	const card = within(await screen.findByRole("region", { name: "Was tanken?" }));
	const pours = (await card.findAllByRole("listitem")).map(({ textContent }) => spaces(textContent));
	expect(pours).toEqual(["12,5 L Flexfuel E85 (USA)", "dann Benzin E10 (USA) bis zum Abschalten, etwa 9,0 L"]);
	card.getByText("Im Fenster: 17 von 20.");
	card.getByText(/Zu viel: 1 von 20, zu wenig: 2 von 20\./);
	const why = within(screen.getByRole("region", { name: "Wohin das führt" }));
	why.getByText((_, element) =>
		/^Danach etwa 30 %, 9 von 10: 26–33 %\. Es kostet etwa 31,40 €\.$/.test(
			element?.tagName === "P" ? spaces(element.textContent) : "",
		),
	);
	why.getByText(/^Flexfuel E85 .USA. zuerst, damit die Menge sicher ist: .*Andersherum, zu viel: 4 von 20\.$/);
	await app.user.click(screen.getByRole("radio", { name: "Für einen Betrag" }));
	await screen.findByText("Für wie viel? Geben Sie es unten ein.");
	await app.user.type(screen.getByRole("textbox", { name: "Für wie viel, EUR" }), "0");
	await screen.findAllByText("Der Wert muss zwischen 0,01 und zehn Millionen liegen: Prüfen Sie die Zahl.");
	await app.user.click(screen.getByRole("radio", { name: "Bis zum Abschalten" }));
	expect(screen.getByLabelText("Mengen in Schritten von, L")).toHaveProperty("value", "0,5");
	await app.user.click(await screen.findByRole("button", { name: "So tanken" }));
	await waitFor(() => expect(location.hash).toBe("#/fill"));
	await screen.findByRole("heading", { name: /12,5\sL Flexfuel E85 .USA.$/ });
});

test("what no plan can do is said, with a way to the gauge", async () => {
	const app = await open("#/plan", { verdict: "lean", plan: { ...plan, chances: chances(0.2, 0.1) } });
	const short = within(await screen.findByRole("region", { name: "Kein Plan schafft es" }));
	short.getByRole("heading", { name: "Kein Plan hält das Risiko, mager zu laufen, so klein wie gewünscht" });
	short.getByText(/für zu viel Ethanol immer noch: 4 von 20\. Fahren Sie danach ohne Ladedruck\.$/);
	await app.user.click(short.getByRole("button", { name: "Tankanzeige notieren" }));
	await app.user.click(button("Tankanzeige jetzt: ein Schritt weniger"));
	await screen.findByText(/^Tankanzeige jetzt: .*\(\d+\s%\)$/);
	await screen.findByRole("button", { name: "Trotzdem so tanken" });
});

describe("the words of a plan", () => {
	const guided = (rest: Rest | null): Guided => ({ plan: { made: plan, rest } }) as never;
	const anew = (litres: number): Rest =>
		({ kind: "planned", planned: { plan: { pours: [{ product: e10, litres, toClick: true }] } } }) as never;
	test("keep the verb of a reason at its end", () => {
		const words = (rest: Rest | null, poured: number) => spaces(restWords(guided(rest), poured, "L"));
		expect(words(anew(7), 14)).toBe(
			"Geplant 9,0 L, jetzt 7,0 L, weil die erste Menge größer ausfiel, 14 L statt 12,5 L.",
		);
		expect(words(anew(9.04), 11)).toBe("Weiterhin 9,0 L, obwohl die erste Menge kleiner ausfiel, 11 L statt 12,5 L.");
		expect(words({ kind: "unknown" }, 11)).toMatch(/^Wie geplant, bevor die erste Menge kleiner ausfiel, 11 L/);
		expect(spaces(outdatedWords(["gauge", "place"], plan.pours, "L"))).toBe(
			"Geplant, bevor Sie die Tankanzeige und den Ort geändert haben: 12,5 L Flexfuel E85 (USA), dann Benzin E10 (USA) bis zum Abschalten, etwa 9,0 L.",
		);
	});
	test("say what to change, and what to burn first", () => {
		expect(spaces(unplannableWords({ code: "doesNotFit", room: 12.34 } as never, "L"))).toMatch(/Sicher passen 12,3 L/);
		expect(spaces(burnWords(8, 104, "L"))).toMatch(/^Verfahren Sie erst etwa 8,0 L, rund 100 km, ohne Ladedruck/);
		expect(burnWords(8, null, "L")).not.toMatch(/km|rund/);
		expect(spaces(driveWords({ gauge: 0.25, days: 7 } as never, 3, true))).toMatch(
			/^Nach 3 Stopps .* bis auf etwa 25 % des Tanks leerfahren und 7 Tage vergehen:$/,
		);
		expect(spaces(clickedWords(12.5, 8, "L"))).toMatch(/^Sie hat 4,5 L zu früh abgeschaltet\..*nachdrückt/);
		expect(orderWords({ ...plan, swapped: plan.chances })).toMatch(/zuerst; andersherum ginge es ebenso gut\.$/);
	});
});

test("the table of mixes is told, drawn and written out", async () => {
	const app = await open("#/table");
	const table = within(await screen.findByRole("region", { name: "Mischtabelle" }));
	expect(spaces(table.getByText(/^Im Tank: /).textContent)).toMatch(
		/^Im Tank: etwa \d+ % Ethanol, 9 von 10: \d+–\d+ %\. Füllstand: alles von leer bis \d+,\d L, denn niemand/,
	);
	table.getByRole("img", { name: /^Was Mengen von „Flexfuel E85 .USA.“ und dann „Benzin E10 .USA.“ aus diesem Tank/ });
	await app.user.click(table.getByText("Dasselbe in Worten"));
	const heads = within(table.getByRole("table")).getAllByRole("columnheader");
	expect(spaces(heads.at(-1)?.textContent)).toBe("bis zum Abschalten");
	const cells = within(table.getByRole("table")).getAllByRole("cell");
	expect(cells.some(({ textContent }) => /^\d+–\d+ %, (mager|Klopfen|im Fenster)/.test(spaces(textContent)))).toBe(
		true,
	);
	const drawn = document.querySelector(".printsheet")?.textContent ?? "";
	for (const word of ["Was eine Mischung aus diesem Tank macht", "voll", "Eine Schätzung, nur für diesen Tank"])
		expect(drawn).toContain(word);
	expect(drawn).not.toMatch(/\b(the|then|click|gauge)\b/);
});

test("a place tells how its pumps are known", async () => {
	await open("#/places");
	const link = await screen.findByRole("link", { name: /^Hafen/ });
	expect(spaces(link.textContent)).toMatch(/Letzter Besuch: vor 12 Tagen\. 3 Füllungen, ein Test\./);
	location.hash = "#/place/Hafen";
	const pump = within(await screen.findByRole("region", { name: "Flexfuel E85 (USA)" }));
	expect(spaces(pump.getByText(/^Einmal getestet/).textContent)).toMatch(
		/^Einmal getestet, 10\.05\.2026: Der Bereich 9 von 10 ist \d+ Punkte breit, die Angabe allein ließe \d+ Punkte\.$/,
	);
	pump.getByText("In einem halben Jahr");
	pump.getByText(/^einmal, zuletzt vor 12 Tagen$/);
	pump.getByText(/^1,100\s€ pro\sL, 20\.05\.2026$/);
});

test("costs are told in euros, months and comparisons", async () => {
	await open("#/costs");
	const bought = within(await screen.findByRole("region", { name: "Gekaufter Kraftstoff" }));
	expect(bought.getAllByText("Mai 2026")).toHaveLength(2);
	bought.getAllByText(/^82,20\s€$/);
	const ethanol = within(screen.getByRole("region", { name: "Was das Ethanol gekostet hat" }));
	expect(spaces(ethanol.getByText(/^Das Gemisch eines Stopps/).textContent)).toMatch(
		/^Das Gemisch eines Stopps kostete etwa \d+,\d\d € (mehr|weniger) als dieselbe Wärme in Form von Benzin\. Nach dem, was die Angaben zulassen: von .* bis .*\.$/,
	);
	const distance = within(screen.getByRole("region", { name: "Was die Strecke gekostet hat" }));
	expect(spaces(distance.getByText(/^Auf 500/).textContent)).toMatch(
		/^Auf 500 km, 02\.05\.2026 bis 20\.05\.2026, von einem Volltanken zum anderen, 9 von 10: \d+,\d\d € bis \d+,\d\d € pro 100 km\.$/,
	);
});
