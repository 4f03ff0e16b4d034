import type { Words } from "../en/analyser";

export const words: Words = {
	title: "Ethanolmessgerät oder Sensoranzeige",
	about:
		"Gemessen wird, wie gut der Kraftstoff leitet und Ladung speichert. Wasser oder Methanol darin verschiebt den Messwert.",
	steps: (from, to) => [
		`Nach einer Füllung ${from} bis ${to}\u00a0Minuten fahren, damit der Tank durchmischt ist und sein Kraftstoff in den Leitungen steht.`,
		"Vorgehen, wie der Hersteller es angibt; Aufwärmen und Spülen kommen vor der Messung.",
		"Warten, bis die Anzeige steht.",
	],
	cautions: [
		"Kraftstoff in den Leitungen steht unter Druck: Ihn dort zu entnehmen ist Sache einer Werkstatt, es sei denn, der Fahrzeughersteller gibt dafür ein Verfahren an.",
		"Kraftstoffdämpfe sind brennbar und gesundheitsschädlich: im Freien arbeiten, mit Handschuhen und Schutzbrille, ohne Zündquellen oder heiße Teile in der Nähe.",
	],
	shows: "Anzeige, %\u00a0Ethanol",
	why: "2,5 ist üblich; nennt der Hersteller eine Genauigkeit, dann geben Sie diese ein.",
};
