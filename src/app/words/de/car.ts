import type { Words } from "../en/car";

export const words: Words = {
	reading: "Das Logbuch wird gelesen …",
	engine: "Der Motor",
	toEngine: "Was das Gemisch bewirkt, und die Kraftstoffanlage",
	tells: "Was das Logbuch erzählt",
	toReport: "Tankbericht, zum Drucken oder Senden",
	toCars: "Alle Autos, das Dringendste zuerst",
	toReports: "Tankberichte anderer Autos öffnen",
	toPlaces: "Orte und ihre Zapfsäulen",
	toCosts: "Kosten und Verbrauch",
	toTable: "Mischtabelle",
	another: "Ein anderes Auto",
	setUpAnother: "Weiteres Auto anlegen",
	about: "Über die App",
	aboutApp: (version) =>
		`Heeltap ${version} führt Buch über das Ethanol in einem Tank. Was die App sagt, ist eine Schätzung. Die Grenzen Ihres Tuners gehen vor.`,
	privacyLive:
		"Einträge von Autos, die live sind, gehen versiegelt zu dem Server, den Sie gewählt haben. Sonst verlässt nichts dieses Gerät: kein Konto, und niemand zählt, was Sie tun.",
	privacy: "Nichts verlässt dieses Gerät: kein Konto, kein Netz nötig, niemand zählt, was Sie tun.",
	whichCar: "Welches Auto?",
	invented: "erfunden",
	display: "Anzeige",
	lightOrDark: "Hell oder dunkel",
	sunHint: "„Sonne“ ist Schwarz auf Weiß und kräftiger.",
	themes: { auto: "Wie das Gerät", light: "Hell", dark: "Dunkel", sun: "Sonne" },
	undo: "Rückgängig",

	thisCar: "Dieses Auto",
	name: "Name des Autos",
	noName: "Geben Sie dem Auto einen Namen, etwa „Der Graue“.",
	capacityCounts: "Ein neues Fassungsvermögen gilt für das ganze Logbuch: Die Rechnung beginnt dann von vorn.",
	save: "Auto speichern",
	saved: "Das Auto ist gespeichert.",

	remove: "Dieses Auto entfernen",
	removeThis: (car) => `„${car}“ entfernen …`,
	removeQuestion: (car) => `„${car}“ entfernen?`,
	removing: (entries, calibrations) =>
		`${entries === 1 ? "Sein einziger Eintrag" : `Seine ${entries} Einträge`} und ${calibrations === 1 ? "seine Abstimmung" : `${calibrations} Abstimmungen`} verschwinden von diesem Gerät, und nichts als eine Sicherung bringt sie zurück.`,
	backupFirst: "Erst eine Sicherung speichern",
	removeForGood: "Endgültig entfernen",
	keep: "Auto behalten",
	inventedGone: "Das erfundene Auto ist weg.",
	isInvented: "Dieses Auto ist erfunden",
	isInventedMore: "Es ist zum Umsehen da. Seine Stopps, Orte und Messungen hat es nie gegeben.",
	setUpOwn: "Eigenes Auto anlegen",
	removeInvented: "Erfundenes Auto entfernen",

	calibrations: "Abstimmungen",
	noCalibration:
		"Noch ist keine eingetragen, also gibt es kein Fenster, mit dem sich das Gemisch vergleichen ließe, und nichts, wovor zu warnen wäre.",
	flashedNow: "Jetzt aufgespielt",
	flashThis: "Diese ist jetzt aufgespielt",
	isFlashed: (name) => `„${name}“ ist ab jetzt aufgespielt.`,
	change: "Ändern",
	changeWhich: (name) => `„${name}“ ändern`,
	newCalibration: "Neue Abstimmung",
	calibrationFacts: (madeFor, window, tooMuch, tooLittle) =>
		`Gemacht für ${madeFor}, Fenster ${window}. Hingenommen: zu viel ${tooMuch}, zu wenig ${tooLittle}.`,
	lastFlashed: (date) => `Zuletzt aufgespielt am ${date}.`,
};
