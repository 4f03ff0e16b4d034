import type { Words } from "../en/tankForm";

export const words: Words = {
	countIn: "Sie zählen Kraftstoff in",
	units: { L: "Litern", gal: "US-Gallonen", "imp gal": "britischen Gallonen" },
	capacity: (unit) => `Fassungsvermögen des Tanks, ${unit}`,
	hint: "Es steht in der Betriebsanleitung. Wie weit eine Füllung das Gemisch verschiebt, hängt davon ab, was vorher im Tank war.",
	unknown: "Ich weiß nicht, wie viel hineinpasst",
	assumed: (volume) =>
		`Dann werden ${volume} angenommen, und die Rechnung stützt sich weniger auf Tankanzeige und Abschalten der Zapfpistole, bis Sie das Fassungsvermögen eintragen.`,
};
