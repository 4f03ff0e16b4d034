import type { Words } from "../en/log";

/** Nominative and accusative with "dieser". */
export const kinds = {
	fill: { the: "Der Tankstopp", this: "Diesen Tankstopp", corrected: "Ein korrigierter Tankstopp" },
	start: { the: "Der Anfang", this: "Diesen Anfang", corrected: "Ein korrigierter Anfang" },
	level: { the: "Der Tankstand", this: "Diesen Tankstand", corrected: "Ein korrigierter Tankstand" },
	reading: { the: "Die Messung", this: "Diese Messung", corrected: "Eine korrigierte Messung" },
	calibration: { the: "Der Flashvorgang", this: "Diesen Flashvorgang", corrected: "Ein korrigierter Flashvorgang" },
};

export const words: Words = {
	reading: "Das Logbuch wird gelesen …",
	reckoning: (percent) => `Das Logbuch wird gerechnet: ${percent} fertig.`,
	reckoningAnew: (percent) => `Das Logbuch wird neu gerechnet: ${percent} fertig.`,
	fromBefore: (percent) =>
		`Das Logbuch wird neu gerechnet: ${percent} fertig. Was Sie sehen, ist der Stand von vorher.`,
	unreadable: (count) =>
		count === 1
			? "Einen Eintrag hat eine neuere Version der App geschrieben. Er bleibt erhalten, zählt aber erst und erscheint erst, wenn diese App aktualisiert ist."
			: `${count} Einträge hat eine neuere Version der App geschrieben. Sie bleiben erhalten, zählen aber erst und erscheinen erst, wenn diese App aktualisiert ist.`,
	nothing: "Noch steht nichts im Logbuch",
	nothingMore: "Hier steht jede Füllung und jede Messung, und was sie an der Schätzung geändert hat.",
	record: "Füllung eintragen",
	overTime: "Ethanolgehalt im Lauf der Zeit",
	costs: "Was es gekostet hat",
	showVoid: (count) => `Stornierte Einträge zeigen (${count})`,
	older: (count) => `Ältere Einträge (${count})`,
	bringBack: "Wieder gelten lassen",
	bringBackThis: (entry) => `Wieder gelten lassen: ${entry}`,
	void: "storniert",
	shown: "Gezeigter Zeitraum",
	spans: { stops: "Letzte 10 Stopps", months: "3 Monate", all: "Alles" },
	undo: "Rückgängig",
	asBefore: "Alles ist wieder wie vorher.",
	countsAgain: (kind) => `${kinds[kind].the} zählt wieder.`,
	countsInstead: (kind) => `${kinds[kind].the} zählt wieder, anstelle der Korrektur.`,

	windowFrom: (window) => `Ab hier Fenster ${window}`,
	nineInTen: "9\u00a0von\u00a010:",
	flashed: (name) => `Aufgespielt: ${name}`,
	outside: (side, chance) => `${side === "above" ? "Über" : "Unter"} dem Fenster: ${chance}`,
	side: { above: "darüber", below: "darunter" },
	surprise: {
		disagrees: "Passt nicht in die Rechnung",
		impossibleLevel: "Passt nicht in den Tank",
		impossibleDistance: "Strecke passt nicht",
	},
	unlikely: (oneIn) => `Dass eine Messung so weit daneben liegt, hatte eine Chance von etwa 1 zu ${oneIn}.`,
	veryUnlikely: "Dass eine Messung so weit daneben liegt, hatte eine Chance von weniger als 1 zu 10.000.",

	without: {
		fill: "Ohne ihn gilt dieser Kraftstoff als nie getankt: richtig, wenn es den Stopp nicht gab oder er zu einem anderen Auto gehört.",
		laterStart:
			"Ohne ihn rechnet die App mit dem weiter, was vorher war, als hätte hier niemand gesagt, was im Tank ist.",
		firstStart: (unknown) =>
			`Ohne ihn steht niemand dafür ein, was anfangs im Tank war: Der Inhalt gilt als unbekannt, ${unknown}, bis Füllungen und Messungen ihn eingrenzen.`,
		level:
			"Ohne ihn ist weniger gut bekannt, wie viel damals im Tank war, und damit auch, was die nächste Füllung bewirkt hat.",
		reading: "Ohne sie stützt sich die Schätzung allein auf die Füllungen und die anderen Messungen.",
		calibration: (before) => `Ohne ihn gilt das Fenster von „${before}“ weiter, bis zum nächsten Flashvorgang.`,
	},

	key: {
		median: "am ehesten",
		range: "9 von 10",
		window: "Fenster der Abstimmung",
		above: "darüber",
		below: "darunter",
		reading: "gemessen, ± eine Standardabweichung",
	},
	thinned: (drawn, all) => `Gezeichnet aus ${drawn} von ${all} Einträgen; der höchste und der niedrigste sind dabei.`,
	numbers: "Dasselbe in Zahlen",
	heads: ["Wann", "Am ehesten", "9 von 10", "Fenster", "Gemessen"],
	noWindow: "keines",

	finding: (span, from, to, said) => {
		const spans = { stops: "Die letzten 10 Stopps", months: "Die letzten 3 Monate", all: "Das ganze Logbuch" };
		return `${spans[span]}, ${from} bis ${to}: ${said}`;
	},
	noEntries: "keine Einträge.",
	stayed: (content) => `keine Einträge, der Gehalt blieb also bei etwa ${content}.`,
	likely: (content) => `Der wahrscheinlichste Gehalt ist etwa ${content}.`,
	likelyBetween: (low, high, last) =>
		`Der wahrscheinlichste Gehalt liegt zwischen ${low} und ${high}, am Ende bei etwa ${last}.`,
	allInside: (entries) => (entries === 1 ? "Er liegt im Fenster." : `Alle ${entries} Einträge liegen im Fenster.`),
	someInside: (inside, entries, above, below) => {
		const outside = [...(above > 0 ? [`${above} darüber`] : []), ...(below > 0 ? [`${below} darunter`] : [])];
		return `${inside} von ${entries} ${entries === 1 ? "Eintrag" : "Einträgen"} im Fenster, ${outside.join(", ")}.`;
	},
};
