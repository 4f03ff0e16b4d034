/** Sentences that are put together of several words, as German puts them together. */
import { beforeAll, expect, test, vi } from "vitest";
import { explanationWords } from "../../src/app/doubtWords";
import { measureSentences, measureSummary } from "../../src/app/measureWords";
import { reasonWords, remedyWords } from "../../src/app/whyWords";
import { wordsReady } from "../../src/app/words/language";
import { methodsWords } from "../../src/app/words/methods";
import type { Measures } from "../../src/domain/plan/worth";
import { litres } from "../../src/domain/quantity";
import { aFill, aLevel } from "../helpers/logs";

// Chosen before any code of the app runs, as on a phone.
vi.hoisted(() => localStorage.setItem("heeltap-language", "de"));
beforeAll(wordsReady);

const spaces = (text: string) => text.replaceAll("\u00a0", " ");
const flex = { id: "flex-51-83", range: [0.51, 0.83] } as never;
const fill = aFill({ id: "one", at: "2026-05-02T12:00:00+02:00", litres: 120, product: flex, place: "Hafen" });
const level = aLevel({ id: "two", at: "2026-05-15T12:00:00+02:00", gauge: 0.5 });

test("what a measurement is worth", () => {
	const measures: Measures = {
		filling: true,
		width: 0.1,
		inside: 0.7,
		worths: [
			{ measure: { kind: "pumpSample", offer: 0, product: flex }, narrowing: 0.48, gain: 0.16 },
			{ measure: { kind: "tankSample", when: "after" }, narrowing: 0.26, gain: 0 },
			{ measure: { kind: "trim", when: "before", calibratedFor: 0.3 as never }, narrowing: 0.17, gain: 0 },
		],
	};
	expect(spaces(measureSummary(measures))).toBe(
		"Ein Test des Kraftstoffs dieser Zapfsäule vor dem Tanken würde die Unsicherheit halbieren und die Chance, im Fenster zu liegen, erhöhen (jetzt 14 von 20, dann 17 von 20); ein Wassertest des Tanks danach würde ein Viertel nehmen.",
	);
	expect(measureSentences(measures).at(-1)).toBe(
		"Die Gemischkorrektur, vor dem Tanken abgelesen, würde ein Fünftel der Unsicherheit nehmen.",
	);
});

test("why the number is what it is", () => {
	const width = 0.24;
	const heel = { kind: "heel", fills: [fill] } as never;
	const why = { width, sources: [{ source: heel, width: 0.02, share: 0.9 }] } as never;
	expect(spaces(reasonWords(why))).toBe(
		"Der größte Teil der Unsicherheit ist eine Frage: wie viel vor dem Tankstopp vom 02.05.2026 noch im Tank war. Wäre das genau bekannt, würden 9 von 10 etwa 2 Punkte statt 24 Punkte umspannen.",
	);
	expect(remedyWords(heel)).toBe(
		"Notieren Sie vor dem Tanken die Tankanzeige, notieren Sie den Kilometerstand und tanken Sie bis zum ersten Abschalten der Zapfpistole: Dann weiß die Rechnung, wie viel noch da war.",
	);
	expect(remedyWords({ kind: "delivered", fill } as never)).toMatch(
		/^Testen Sie „Flexfuel E85 \(USA\)“ \(Hafen\), bevor Sie das nächste Mal tanken/,
	);
});

test("what may have gone wrong", () => {
	const said = (explanation: Parameters<typeof explanationWords>[0]) =>
		spaces(explanationWords(explanation, [fill, level], "L"));
	expect(said({ kind: "amount", event: "one", litres: litres(12) })).toBe(
		"Am 02.05.2026 haben Sie 12 L „Flexfuel E85 (USA)“ getankt, nicht 120 L: das Komma ist verrutscht.",
	);
	expect(said({ kind: "missing", event: "two", product: flex })).toBe(
		"Eine Füllung mit „Flexfuel E85 (USA)“ vor dem Tankstand vom 15.05.2026 wurde nie eingetragen.",
	);
	expect(said({ kind: "gauge", event: "two" })).toBe(
		"Der notierte Tankstand von 50 % am 15.05.2026 ist falsch abgelesen oder vertippt.",
	);
});

test("how something was measured, as the app has noted it; what people typed stays as it is", () => {
	const { told } = methodsWords();
	expect(told("data log, lambda under load")).toBe("Datenlog, Lambda unter Last");
	expect(spaces(told("water tube, 50\u00a0mL with 25\u00a0mL of water, layer 33.5\u00a0mL"))).toBe(
		"Wassertest, 50 mL mit 25 mL Wasser, Schicht 33,5 mL",
	);
	for (const typed of ["", "my friend’s analyser", "toString"]) expect(told(typed)).toBe(typed);
});
