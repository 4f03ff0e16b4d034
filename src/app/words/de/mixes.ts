import type { Words } from "../en/mixes";

export const words: Words = {
	readingLog: "Das Logbuch wird gelesen …",
	nothingKnown: "Über diesen Tank ist noch nichts bekannt",
	nothingKnownMore:
		"Was eine Mischung aus dem Tank macht, hängt davon ab, was darin ist. Tragen Sie eine Füllung ein, und es gibt eine Tabelle.",
	record: "Füllung eintragen",
	opening: "Das Formular wird geöffnet …",
	full: "Die Tankanzeige sagt voll: Mehr geht nicht hinein, also gibt es nichts zu mischen.",
	failed: "Die Tabelle ließ sich nicht berechnen. Laden Sie die App neu und versuchen Sie es noch einmal.",
	reckoning: "Die Tabelle wird gerechnet …",
	gaugeNow: (gauge) => `Tankanzeige jetzt: ${gauge ?? "nicht abgelesen"}`,
	gauge: "Tankanzeige jetzt",
	gaugeHint:
		"Ohne einen Blick darauf kann alles im Tank sein, von nichts bis zu dem, was der letzte Eintrag übrig ließ, und entsprechend weit sind die Bereiche.",
	inOrder: (first, second) => `${first}, dann ${second}`,
	firstFuel: "Erster Kraftstoff",
	thenFuel: "Danach",
	boughtAt: "Gekauft bei",
	unnamedPlace: "Ein Ort ohne Namen",
	otherWay: "Andersherum",
	boughtLast: "Zuletzt gekauft",
	nothingFits: "Keine dieser Mengen passt in den Tank: Sehen Sie noch einmal auf die Tankanzeige.",

	table: "Mischtabelle",
	heading: "Was eine Mischung aus diesem Tank macht",
	drawn: "Die gezeichnete Tabelle",
	carAt: (car, when) => `${car}, ${when}`,
	fuels: (first, second, place) => `${first}. ${second}.${place === null ? "" : ` Gekauft: ${place}.`}`,
	fuel: (name, range) => `${name}: ${range}`,
	label: (first, second, finding) =>
		`Was Mengen von „${first}“ und dann „${second}“ aus diesem Tank machen. ${finding ?? ""} Dasselbe steht unten in Worten.`,
	fileName: (car) => `mischtabelle ${car}`,
	savedAs: (name) => `Gespeichert als ${name}.`,
	noPicture: "Dieser Browser konnte kein Bild daraus machen. Drucken geht trotzdem.",
	send: "Als Bild senden",
	save: "Als Bild speichern",
	print: "Drucken",
	inWords: "Dasselbe in Worten",
	tableInWords: "Die Tabelle in Worten",
	toClick: "bis zum Abschalten",
	about: (sentence, amount) => `${sentence} (etwa ${amount})`,

	caution:
		"Eine Schätzung, nur für diesen Tank in diesem Augenblick: Sie beruht auf dem, was eingetragen wurde, und auf dem, was die Angaben zulassen. Sie ist keine Messung, und die Grenzen Ihres Tuners gehen vor.",
	verdicts: {
		inside: "so sicher im Fenster wie gewünscht",
		lean: "vielleicht zu viel Ethanol: mager",
		knock: "vielleicht zu wenig Ethanol: Klopfen",
	},
	shortVerdicts: { inside: "im Fenster", lean: "mager", knock: "Klopfen" },
	hardlyFits: "passt kaum",
	goesIn: (chance) => `geht hinein: ${chance}`,
	notes:
		"Zahlen: Prozent Ethanol, die danach im Tank sind, 9 von 10. Voll: getankt, bis die Zapfpistole abschaltet, mit dem, was dann noch hineingeht. –: passt kaum. *: Vielleicht schaltet die Zapfpistole vorher ab.",
	rows: (unit, fuel) => `↓ ${unit} ${fuel}`,
	columns: (unit, fuel) => `→ dann ${unit} ${fuel}`,
	click: "voll",
	assumed: (content, range, level) => `Im Tank: etwa ${content} Ethanol, 9 von 10: ${range}. Füllstand: ${level}.`,
	levelUnknown: (most) => `alles von leer bis ${most}, denn niemand hat auf die Tankanzeige gesehen`,
	level: (gauge, volume, capacity) => `Tankanzeige ${gauge}, etwa ${volume} von ${capacity}`,
	noWindow: "Es ist keine Abstimmung eingetragen, also wird keine Mischung an einem Fenster gemessen.",
	window: (name, window, lean, knock) =>
		`Fenster von „${name}“: ${window}. Hingenommen: zu viel ${lean}, zu wenig ${knock}.`,
	fromTo: (from, to) => `${from} bis ${to}`,
	found: (first, second, amounts) =>
		`Mit „${second}“ vollgetankt, enden ${amounts} „${first}“ davor so sicher im Fenster wie gewünscht.`,
	foundNone: (first, second) =>
		`Mit „${second}“ vollgetankt, endet keine Menge „${first}“ in dieser Tabelle so sicher im Fenster wie gewünscht.`,
};
