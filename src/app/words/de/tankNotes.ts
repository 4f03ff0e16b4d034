import type { Words } from "../en/tankNotes";

export const words: Words = {
	lawfulTitle: "Was die Angaben zulassen",
	lawful: (range) =>
		`${range}, wenn jede Zapfsäule ihre Angabe einhielt und jeder Blick auf die Tankanzeige innerhalb von drei Standardabweichungen lag. Messungen des Gehalts zählen hier nicht. Manche Zapfsäulen halten ihre Angabe nicht ein.`,
	level: (median, range) => `Im Tank: etwa ${median}, 9 von 10: ${range}.`,
	dotsTitle: "Wie man die Punkte liest",
	dots: "Jeder Punkt ist einer von zwanzig gleich wahrscheinlichen Ethanolgehalten des Tanks. Runde Punkte liegen im Fenster der Abstimmung, das die Klammer zeigt. Ein Dreieck mit der Spitze nach oben hat zu viel Ethanol, eines mit der Spitze nach unten zu wenig. So viele Punkte, so viele Chancen von zwanzig. „9 von 10“ ist der Bereich, in dem die Wahrheit neun von zehn Malen liegt, „am ehesten etwa“ seine Mitte: ebenso oft darunter wie darüber.",
};
