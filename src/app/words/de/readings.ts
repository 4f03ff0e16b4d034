import type { Words } from "../en/readings";

export const words: Words = {
	openingLog: "Das Logbuch wird geöffnet …",
	openingForm: "Das Formular wird geöffnet …",
	title: "Messung eintragen",
	asked: "Wie haben Sie gemessen? Bevor etwas gespeichert wird, sehen Sie, was es ändern würde.",
	ways: {
		analyser: { name: "Ethanolmessgerät oder Sensoranzeige", worth: "Der Tank, auf ±\u00a02,5\u00a0Punkte." },
		tube: {
			name: "Wassertest",
			worth: "Der Tank oder der Kraftstoff einer Zapfsäule, auf ±\u00a02 bis 4\u00a0Punkte.",
		},
		reported: { name: "Angabe des Fahrzeugs", worth: "Mit einem Diagnosegerät; auf ±\u00a03 bis 8\u00a0Punkte." },
		trim: {
			name: "Gemischkorrektur (Fuel Trim)",
			worth: "Mit einem Diagnosegerät; zur Kontrolle, auf ±\u00a08\u00a0Punkte.",
		},
		gauge: { name: "Blick auf die Tankanzeige", worth: "Wie viel noch da ist; das schärft die nächste Füllung." },
	},
	dataLog: {
		name: "Datenlog",
		worth: "CSV aus jedem Logger: die Gemischkorrektur einer ganzen Fahrt und Lambda unter Last.",
	},
	otherWays: "Anders messen",
	howTo: "So wird es gemacht",
	cautions: "Vorsicht",
	figures: "Die Messwerte",
	when: (when) => `Wann: ${when}`,
	now: "jetzt",
	mend: "Oben ist etwas zu berichtigen; noch ist nichts gespeichert.",
	save: "Speichern",
	startOver: "Formular neu beginnen",
	emptied: "Das Formular ist leer.",
	undo: "Rückgängig",
	sd: "Unsicherheit (±), Punkte",
	sdMeans: (why) => `In zwei von drei Fällen liegt der wahre Wert darin. ${why}`,

	wouldDo: "Was es ändern würde",
	incomplete: "Sobald die Messwerte oben vollständig sind, sehen Sie hier, was sie ändern würden.",
	reckoning: "Wird gerechnet …",
	strokes: "Kurze Striche auf der Achse: die Punkte, wie sie jetzt stehen.",
	mostLikely: "Am wahrscheinlichsten",
	nineInTen: "9 von 10",
	verdict: "Urteil",
	inTank: "Im Tank",
	carTrims: "Grundkorrektur dieses Autos",
	notKnown: "unbekannt",
	pumpGives: "Diese Zapfsäule liefert",
	giveOrTake: (value, sd) => `${value}, ±\u00a0${sd}`,
	fits: "Das passt in die Rechnung.",
	leftOut: (title, sure, now) => `${title}. ${sure} ${now.join(" ")} So gespeichert, bleibt es aus der Rechnung.`,
	disagrees:
		"Das passt nicht in die Rechnung: Eine solche Messung hatte weniger als 1 Chance von 100. Messen Sie noch einmal. Bleibt es dabei, suchen Sie im Logbuch nach einer Füllung, die fehlt oder vertippt ist.",

	saved: "Gespeichert.",
	savedStays: (content) => `Gespeichert. Es bleibt bei etwa ${content}.`,
	savedChanged: (from, to) => `Gespeichert. Aus etwa ${from} wurden etwa ${to}.`,
};
