import { strong } from "../../emphasis";
import type { Words } from "../en/dataLog";

const rows = (count: number, shown: string) => `${shown} ${count === 1 ? "Zeile" : "Zeilen"}`;
const stretches = (count: number) => `${count} ${count === 1 ? "Abschnitt" : "Abschnitten"}`;

export const words: Words = {
	openingLog: "Das Logbuch wird geöffnet …",
	openingForm: "Das Formular wird geöffnet …",
	choose: "Datenlog wählen",
	refused: (why) => `${why} Es wurde nichts geändert.`,
	refusals: {
		empty: "In dieser Datei steht nichts: Exportieren Sie das Log noch einmal, und wählen Sie das.",
		picture: "Das ist ein Bild: Wählen Sie die Datei, die Ihr Logger als CSV oder Text speichert.",
		pdf: "Das ist ein PDF, das Seiten enthält und keine Zeilen: Lassen Sie Ihren Logger das Log als CSV speichern.",
		packed:
			"Das ist eine gepackte Datei oder eine Tabellenkalkulation: Entpacken Sie sie, oder speichern Sie das Blatt als CSV, und wählen Sie das.",
		binary:
			"Diese Datei ist kein Text, vielleicht ein eigenes Format Ihres Loggers: Lassen Sie ihn das Log als CSV speichern.",
		json: "Das ist JSON, das keine Spalten hat: Lassen Sie Ihren Logger das Log als CSV speichern. Eine Sicherung von Heeltap wird unter Auto geöffnet.",
		markup: "Das ist eine Webseite oder XML, die keine Spalten hat: Lassen Sie Ihren Logger das Log als CSV speichern.",
		oneColumn:
			"Am Anfang dieser Datei steht nur eine Spalte: Lassen Sie Ihren Logger die Spalten durch Komma, Semikolon oder Tabulator trennen.",
		noNumbers:
			"Am Anfang dieser Datei stehen keine Zeilen mit Zahlen: Wählen Sie das Log selbst, mit einer Zeile für jeden Zeitpunkt.",
		unreadable:
			"Das Gerät gab die Datei nicht bis zum Ende her: Kopieren Sie sie in den eigenen Speicher des Geräts, und wählen Sie sie dort.",
		broken: "Die App konnte sie nicht lesen. Laden Sie die App neu, und versuchen Sie es noch einmal.",
	},
	tooWide: (most) =>
		`Am Anfang dieser Datei stehen mehr als ${most} Spalten: Wählen Sie das Log selbst, wie Ihr Logger es speichert.`,
	opening: "Die Datei wird angesehen …",
	anotherFile: "Andere Datei",
	anotherLog: "Anderes Log",
	reading: "Das Log wird gelesen",
	readingFile: (name) => `„${name}“ wird gelesen …`,
	shareRead: "Gelesener Anteil des Logs",
	stop: "Anhalten",

	about: "Eine Messung aus einem Datenlog",
	aboutAny:
		"Das CSV jedes Loggers genügt, mit einer Zeile für jeden Zeitpunkt: Zeit, Kurzzeit- und Langzeitkorrektur, Kühlmittel, Geschwindigkeit und Drosselklappe oder Last. Mit gemessenem und vorgegebenem Lambda sagt es auch etwas über Volllast.",
	aboutSteady: (warmC, windowS) =>
		`Es zählt gleichmäßige Fahrt: warm (ab ${warmC}\u00a0°C), geregelt, bei Teillast, mindestens ${windowS}\u00a0s am Stück. Die Datei bleibt auf diesem Gerät, und nichts wird gespeichert, bevor Sie tippen.`,
	aboutSafety:
		"Wer fährt, schaut auf die Straße, nicht auf den Logger. Korrekturen, die gut aussehen, machen Volllast nicht sicher: Viele Motoren nehmen sie nicht dorthin mit (13 von 25 untersuchten Autos, CRC E-87-1).",
	otherWays: "Anders messen",
	noCalibration:
		"Eine Gemischkorrektur sagt nur etwas über den Kraftstoff, wenn man weiß, für welches Gemisch das Auto abgestimmt ist, und es ist keine Abstimmung eingetragen.",
	enterCalibration: "Abstimmung eintragen",

	columns: {
		title: "Was steht in den Spalten?",
		once: "Sagen Sie es einmal: Dateien mit denselben Überschriften werden dann genauso gelesen. Was Sie nicht wissen, kann wegbleiben.",
		complete: "Alles Nötige ist da.",
		lacking: (lacks) => `Für eine Gemischkorrektur fehlt noch: ${lacks.join("; ")}.`,
		taken: (header, role) => `„${header}“ wird nicht mehr als „${role}“ gelesen.`,
		useless: "Noch lässt sich aus dem Log nichts lesen: Geben Sie wenigstens die Spalten an, die oben fehlen.",
		read: "Das Log so lesen",
		itIs: "Das ist",
		notNeeded: "nicht nötig",
		in: "In",
		asSuggested: "wie die Werte nahelegen",
		samples: (values) => `Etwa ${values.join(" · ")}`,
		noSample: "Am Anfang des Logs leer.",
	},
	roles: {
		time: "Zeit",
		rpm: "Motordrehzahl",
		speed: "Geschwindigkeit",
		coolant: "Kühlmitteltemperatur",
		throttle: "Drosselklappe",
		load: "Motorlast",
		manifold: "Saugrohrdruck",
		short1: "Kurzzeitkorrektur, Bank 1",
		long1: "Langzeitkorrektur, Bank 1",
		short2: "Kurzzeitkorrektur, Bank 2",
		long2: "Langzeitkorrektur, Bank 2",
		total: "Gesamtkorrektur (STFT und LTFT)",
		lambda: "Lambda oder AFR, gemessen",
		commanded: "Lambda oder AFR, vorgegeben",
		fuelSystem: "Lambdaregelung aktiv oder nicht",
		ethanol: "Ethanolgehalt laut Fahrzeug",
	},
	units: {
		s: "Sekunden",
		ms: "Millisekunden",
		min: "Minuten",
		clock: "Uhrzeit",
		fraction: "Anteil (0,05 für 5\u00a0%)",
		factor: "Faktor (1,05 für +5\u00a0%)",
		AFR: "AFR (14,7 bei Lambda 1)",
		lambda: "Lambda",
		state: "wie aufgezeichnet",
		rpm: "1/min",
	},
	lacks: {
		time: "die Zeit",
		trims: "Kurzzeit- und Langzeitkorrektur einer Bank",
		driving: "Drosselklappe, Motorlast oder Saugrohrdruck",
	},

	log: "Das Log",
	isRead: (name, counts) =>
		`„${name}“ ist gelesen. ${counts ? "Dieses Log zählt schon: Eine Messung daraus ist in der Rechnung." : "Noch ist nichts gespeichert."}`,
	facts: {
		read: "Gelesen",
		averaged: (count, shown, step) => `${rows(count, shown)}, gemittelt über ${step}`,
		time: "Zeit",
		recordings: (duration, recordings) => `${duration} in ${recordings} Aufzeichnungen`,
		skipped: "Übersprungen",
		nothing: "nichts",
		rows,
	},
	halfSeconds: "halbe Sekunden",
	seconds: "Sekunden",
	longSteps: (usual) => `Das Log ist so lang, dass über längere Schritte gemittelt wurde als die üblichen: ${usual}.`,
	skips: {
		noTime: "ohne lesbare Zeit",
		backwards: "mit rückwärts laufender Zeit",
		noValues: "ohne eine Zahl",
		otherWidth: "mit mehr oder weniger Feldern als die Überschrift",
	},
	skipped: (count, shown, why, line) => `${rows(count, shown)} ${why}, die erste in Zeile ${line}`,
	howRead: "Wie die Spalten gelesen wurden",
	guessed: (unit) => `${unit}, wie die Werte nahelegen`,
	tellColumns: "Spalten selbst angeben",

	steady: "Gemischkorrektur bei gleichmäßiger Fahrt",
	noTrims: "Im Log steht keine Gemischkorrektur, oder nicht die Kurzzeit- und die Langzeitkorrektur derselben Bank.",
	trimLead: (trim, sd) => `${strong(trim)} Kraftstoff, ±\u00a0${sd}`,
	noCoolant: "Das Kühlmittel steht nicht im Log: Dass der Motor warm war, wird vorausgesetzt. War er es?",
	noSpeed:
		"Weder Geschwindigkeit noch Drehzahl steht im Log: Leerlauf war von Fahrt nicht zu unterscheiden, und seine Korrekturen sind andere.",
	nothingSteady: (advice) => `Kein Abschnitt dieses Logs ist warm, geregelt und lange genug gleichmäßig. ${advice}`,
	steadyFor: "Gleichmäßig",
	inStretches: (duration, count) => `${duration} in ${stretches(count)}`,
	bothBanks: "Bank 1 und 2",
	and: (one, other) => `${one} und ${other}`,
	trimAtLimit:
		"Bei einer so großen Korrektur hören die meisten Motorsteuergeräte auf zu korrigieren: Die Wahrheit kann weiter draußen liegen. Fahren Sie ohne Ladedruck, und lassen Sie Ihren Tuner nachsehen.",
	sdFrom: "Woher die Unsicherheit kommt",
	sdParts: {
		model: "Kraftstoff oder Auto?",
		modelIs: (sd) => `${sd}: was eine Korrektur überhaupt über den Kraftstoff sagt`,
		between: "Abschnitte",
		within: "In ihnen",
		banks: "Bänke",
		apart: (sd) => `${sd}: wie weit sie auseinanderliegen`,
	},
	sdAdded: "Alles sind Standardunsicherheiten, quadratisch addiert.",
	implied: (content, points, calibration, madeFor) =>
		`Für sich allein wären das ${content} Ethanol, ±\u00a0${points}\u00a0Punkte, mit „${calibration}“, gemacht für ${madeFor}.`,
	unexplained: (side, calibration, madeFor) =>
		`Das erklärt kein Gemisch mit „${calibration}“, gemacht für ${madeFor}: Es liegt ${side === "below" ? "unter" : "über"} allem, was irgendein Gehalt brächte. Suchen Sie eine andere Ursache.`,
	didNotCount: "Was nicht zählte",
	notCounted: (duration, why) => `${duration}: ${why}`,
	reasons: {
		missing: "es war nicht alles aufgezeichnet",
		openLoop: "ohne Lambdaregelung",
		unsteady: "Gaspedal, Last oder Geschwindigkeit änderten sich",
		frozen: "die Korrekturen standen auf null, wie abgeschaltet",
		lambdaOff: "Lambda war nicht 1, wie ohne Regelung",
		unsettled: "die Korrekturen änderten sich noch",
	},
	idle: (speed) => `Leerlauf, oder langsamer als ${speed}`,
	cold: (warmC) => `der Motor war unter ${warmC}\u00a0°C`,
	tooShort: (windowS) => `weniger als ${windowS}\u00a0s am Stück`,
	advice: {
		missing:
			"Zeichnen Sie alles über dieselbe Zeit auf: Korrekturen, Kühlmittel, Geschwindigkeit und Drosselklappe oder Last.",
		cold: "Zeichnen Sie auf, wenn der Motor warm ist.",
		idle: "Zeichnen Sie auf der Straße auf: Im Leerlauf sind die Korrekturen andere.",
		openLoop: "Zeichnen Sie bei Teillast auf, wo die Lambdaregelung arbeitet.",
		tooShort: "Fahren Sie jeweils eine halbe Minute gleichmäßig.",
		unsteady: "Fahren Sie auf ebener Straße jeweils eine halbe Minute gleichmäßig.",
		frozen: "Die Korrekturen waren nicht in Betrieb: Zeichnen Sie bei Teillast mit warmem Motor auf.",
		lambdaOff:
			"Ist Lambda als Luft-Kraftstoff-Verhältnis aufgezeichnet, das bei Lambda 1 nicht 14,7 ist, lassen Sie die Spalte weg; sonst zeichnen Sie bei Teillast auf.",
		unsettled: "Fahren Sie noch einige Minuten, bis die Korrekturen stehen.",
	},
	table: "Die gleichmäßigen Abschnitte in Zahlen",
	tableCaption: "Die längsten Abschnitte zuerst",
	heads: ["Ab", "Dauer", "Korrektur"],
	banks: ["Bank 1", "Bank 2"],
	chart: {
		over: (duration) => `Gemischkorrektur über ${duration}.`,
		range: (least, most) => `Sie ging von ${least} bis ${most}.`,
		counted: (duration, count, median) => `Gleichmäßig ${duration} in ${stretches(count)}, Median dort ${median}.`,
		nowhere: "Nirgends gleichmäßig.",
		mean: "Korrektur, Mittel",
		band: "vom kleinsten zum größten Wert",
		steady: "gleichmäßig: zählt",
		median: "Median davon",
	},

	load: "Lambda unter Last",
	loadLead: (value, sd) => `${strong(value)} gegen die Vorgabe, ±\u00a0${sd}`,
	leanUnderLoad: "Unter Last magerer als vorgegeben: Fahren Sie ohne Ladedruck, bis Ihr Tuner dieses Log gesehen hat.",
	pulls: "Volllastzüge",
	pullsIn: (count, duration) => `${count}, zusammen ${duration}`,
	commanded: "Vorgegeben",
	lambda: (lambda) => `Lambda ${lambda}`,
	steadyTrim: "Bei gleichmäßiger Fahrt",
	longTrim: "Langzeitkorrektur dabei",
	agreements: {
		agree:
			"Es sagt dasselbe wie die Gemischkorrektur, soweit beide es sagen können: Dieses Auto scheint seine Korrektur also nicht in den ungeregelten Betrieb mitzunehmen, und Lambda zeigt dort, was nichts korrigiert.",
		carried:
			"Unter Last ist das Gemisch etwa wie vorgegeben, obwohl korrigiert wird. Dieses Auto scheint seine Korrektur also in den ungeregelten Betrieb mitzunehmen, und Lambda unter Last sagt nichts über den Kraftstoff. Zu speichern ist die Gemischkorrektur.",
		differ:
			"Es passt nicht zur Gemischkorrektur. Ein Auto, das einen Teil seiner Korrektur mitnimmt, einbrechender Kraftstoffdruck, bei hohem Durchsatz anders gemessene Luft oder ein Sensor kann die Ursache sein. Lassen Sie Ihren Tuner nachsehen, bevor Sie einem von beiden trauen; speichern Sie höchstens eines.",
		alone:
			"Es gibt keine Gemischkorrektur zum Vergleich. Über den Kraftstoff sagt es nur etwas, wenn dieses Auto seine Korrektur nicht in den ungeregelten Betrieb mitnimmt: Sonst zeigt es nur, was die Korrektur übrig lässt.",
	},
	allCorrected:
		"Unter Last arbeitete die Kurzzeitkorrektur die ganze Zeit: Was sie korrigiert, ist in Lambda nicht zu sehen, und die Korrektur selbst ist die Messung.",
	noLoad:
		"Hier gibt es nichts zu lesen: Es braucht einige Sekunden hoher Last, warm, mit deutlich fett vorgegebenem Gemisch. Nur wo es sicher und erlaubt ist und Ihr Tuner zustimmt.",
	corrected: (count) =>
		`${count === 1 ? "Ein weiterer Volllastzug blieb" : `${count} weitere Volllastzüge blieben`} außen vor: Dort arbeitete die Kurzzeitkorrektur.`,

	ethanol: "Angabe des Fahrzeugs",
	ethanolLead: (content) => `${strong(content)} Ethanol`,
	began: (content) => `Am Anfang waren es ${content}; genommen wird, was zuletzt da stand.`,
	ethanolAbout:
		"Die Norm (SAE J1979, PID 52) legt fest, wie der Wert codiert ist, nicht, ob er stimmt. Ein Wert, der sich von Füllung zu Füllung nie ändert, ist nicht gemessen: Lassen Sie ihn weg.",
	restsOnTrims:
		"Beruht der Wert auf der Gemischkorrektur, sagt er noch einmal, was sie sagt: Speichern Sie eines von beiden, nicht beides.",

	saveForm: "Messung speichern",
	take: "Eine Messung in die Rechnung nehmen",
	which: "Welche?",
	whichHint: "Sie sehen denselben Kraftstoff auf verschiedene Weise und werden nie gemittelt. Eine genügt.",
	savedOffer: (amount) => `${amount}, gespeichert`,
	when: "Wann wurde aufgezeichnet? Es zählt für das, was damals im Tank war: Korrigieren Sie die Zeit, wenn sie auf der falschen Seite einer Füllung liegt.",
	savedBefore:
		"Dieses Log zählt schon: Es wurde früher gespeichert und wird nicht zweimal gespeichert. Um es neu zu speichern, nehmen Sie zuerst jenen Eintrag zurück.",
	savedNow: "Es ist in der Rechnung.",
	toEntry: "Zum Eintrag",
	toTank: "Zum Tank",
	twice:
		"Eine andere Messung aus diesem Log ist schon in der Rechnung: Speichern Sie auch diese, zählt dieselbe Fahrt doppelt, und die Schätzung wirkt sicherer, als sie ist.",
	perhapsCorrected:
		"Eine Messung aus diesem Log wurde früher gespeichert und zählt nicht mehr. Wurde sie im Logbuch korrigiert, zählt die Korrektur: Speichern Sie auch diese, zählt dieselbe Fahrt doppelt.",
	save: (amount) => `${amount} speichern`,
};
