import type { Words } from "../en/reported";

export const words: Words = {
	title: "Angabe des Fahrzeugs",
	about:
		"Manche Motorsteuergeräte geben den Ethanolgehalt aus, mit dem sie rechnen: Service 01, PID 52 nach SAE J1979. Die Norm legt fest, wie er codiert ist, nicht, ob er stimmt.",
	steps: (from, to, distance) => [
		"Ein Diagnosegerät in die Diagnosebuchse stecken und den Motor starten.",
		`Nach einer Füllung erst ${from} bis ${to}\u00a0Minuten und etwa ${distance} fahren.`,
		"Unter den Live-Daten „alcohol fuel percentage“ oder „ethanol fuel %“ suchen (Alkohol- oder Ethanolanteil).",
		"Eingeben, was dort steht.",
	],
	cautions: [
		"Im Stand ablesen, oder vom Beifahrer ablesen lassen.",
		"Ein Wert, der sich von Füllung zu Füllung nie ändert, ist nicht gemessen: Lassen Sie ihn weg.",
	],
	shownAs: "Angezeigt als",
	percent: "Angezeigt, %\u00a0Ethanol",
	byte: "Angezeigt, rohes Byte",
	byteHint: "Etwa 4D, 0x4D oder 77; oder die ganze Antwort, etwa 41\u00a052\u00a04D.",
	from: "Woher weiß es das Auto?",
	inferred: "Aus der Gemischkorrektur, oder unbekannt",
	inferredMore: "üblich ohne Sensor",
	sensor: "Von einem Sensor in der Kraftstoffleitung",
	why: {
		sensor: "3 für einen Sensor, der auf 5 Punkte nach oben und unten genau ist.",
		inferred: "8, denn eine Gemischkorrektur, die um 3\u00a0% danebenliegt, verschiebt ihn um etwa so viel.",
	},
};
