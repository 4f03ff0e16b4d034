import type { Words } from "../en/report";

const entries = (count: number) => (count === 1 ? "1 Eintrag" : `${count} Einträge`);
const withEntries = (count: number) => (count === 1 ? "1 Eintrag" : `${count} Einträgen`);
const reports = (count: number) => (count === 1 ? "1 Bericht" : `${count} Berichte`);
const cars = (count: number) => (count === 1 ? "1 Auto" : `${count} Autos`);

export const words: Words = {
	reading: "Das Logbuch wird gelesen…",
	nothing: "Über diesen Tank ist noch nichts bekannt: Es gibt nichts zu berichten.",
	record: "Füllung eintragen",
	title: (car) => `Tankbericht: ${car}`,
	made: (when, app, model) => `Erstellt ${when} mit Heeltap ${app}, Modell ${model}.`,
	plain:
		"Ein Bericht zeigt den Tank, wie er zu dieser Zeit im Logbuch stand. Was seither getankt wurde, steht nicht darin.",
	back: "Zurück zum Tank",

	print: "Drucken oder als PDF sichern",
	sendPicture: "Als Bild senden",
	savePicture: "Als Bild sichern",
	noPicture: "Dieser Browser konnte kein Bild machen. Drucken geht, und die Datei auch.",
	sendFile: "Als Datei senden",
	saveFile: "Als Datei sichern",
	fileAbout:
		"Die Datei enthält das ganze Logbuch des Autos, mit Orten und Preisen. Sie öffnet sich in der App: Auto → Tankberichte anderer Autos öffnen.",
	unreadable: (count) =>
		`Eine neuere Version der App hat ${entries(count)} geschrieben, die diese nicht lesen kann; dem Bericht fehlen sie: Aktualisieren Sie zuerst die App.`,
	notSent: (file) => `Das Gerät wollte die Datei nicht senden, darum wurde sie als ${file} gesichert.`,
	savedAs: (file) => `Gesichert als ${file}.`,
	fileName: (car) => `bericht-${car}`,

	estimateTitle: "Im Tank",
	ethanol: "Ethanol, am ehesten etwa",
	nineInTen: "Neunmal von zehn",
	labels: "Angaben erlauben",
	level: "Kraftstoff, etwa",
	levelRange: (level, range) => `${level} (9 von 10: ${range})`,
	lastEntry: "Letzter Eintrag",
	meansTitle: "Am Fenster gemessen",
	inside: "Im Fenster",
	above: "Zu viel Ethanol (mager)",
	below: "Zu wenig Ethanol (Klopfen)",
	chance: (inTwenty, chance) => `${inTwenty} (${chance})`,
	accepted: (chance, budget) => `${chance}, hingenommen werden ${budget}`,
	warningsTitle: "Warnungen",
	noWarnings: "Keine.",
	contradictionTitle: "Die letzten Einträge widersprechen sich",
	weighing: "Die letzten Einträge werden durchgesehen…",
	notWeighed: "Ob die letzten Einträge sich widersprechen, ließ sich nicht prüfen.",
	noFile:
		"Was der Bericht nicht weiß, kann die Datei nicht sagen: Öffnen Sie den Bericht noch einmal, und senden Sie dann die Datei.",
	calibrationTitle: (name) => `Abstimmung in Kraft: „${name}“`,
	flashedAt: (when) => `Aufgespielt ${when}.`,
	fromStart: "In Kraft, seit die Rechnung begann.",
	noCalibration: "Keine Abstimmung ist in Kraft, also gibt es kein Fenster.",
	behindTitle: "Worauf es beruht",
	behindAbout: "Die letzten Einträge, die zählen, der neueste zuerst, und was nach jedem galt.",
	after: (content, range) => `→ etwa ${content}, 9 von 10: ${range}`,
	share: (share) => `${share} des Kraftstoffs, der jetzt im Tank ist`,
	earlier: (count) => `Und ${entries(count)} davor.`,
	findingShares: "Es wird gerechnet, woher der Kraftstoff im Tank kommt…",
	flashed: (name) => `Aufgespielt: „${name}“`,
	cautionsTitle: "Vorsicht",

	reportsTitle: "Berichte anderer Autos",
	reportsAbout:
		"Öffnen Sie so viele, wie Sie haben, oder fügen Sie sie ein: Was Aufmerksamkeit braucht, steht oben. Nichts wird behalten, außer Sie wählen „Behalten“.",
	openFiles: "Berichte öffnen",
	paste: "Oder Berichte einfügen",
	pasteHint: "Jeweils der ganze Text, einer nach dem anderen.",
	pasteGo: "Eingefügtes öffnen",
	pasteNothing: "In diesem Text ist kein Bericht: Ein Bericht beginnt mit { und endet mit }. Es wurde nichts geändert.",
	list: "Berichtete Autos, das Dringendste zuerst",
	opened: (count, over) =>
		over === 0
			? `${cars(count)}, keines über einer Grenze.`
			: `${over} von ${cars(count)} über einer Grenze oder mit Einträgen, die sich widersprechen.`,
	checking: (count) => `${reports(count)} noch mit den eigenen Einträgen zu vergleichen…`,
	asOf: (when, app, count) => `Bericht, erstellt ${when} mit Heeltap ${app}, mit ${withEntries(count)}.`,
	plainLog: (count) => `Ein Logbuch ohne Bericht, mit ${withEntries(count)}.`,
	severalOf: (count) => `${reports(count)} dieses Autos sind hier: Dies ist der neueste.`,
	unchecked: "Wie der Bericht es sagt; noch nicht mit seinen Einträgen verglichen.",
	confirmed: "Mit den Einträgen verglichen: Sie ergeben dasselbe.",
	differs: (said) => `Der Bericht sagte ${said}: Seine Einträge ergeben, was hier steht.`,
	saidFigures: (content, range) => `etwa ${content}, 9 von 10: ${range}`,
	otherModel: "Er wurde mit einer anderen Version des Modells erstellt; hier rechnet dieses.",
	tooLong: "Seine Einträge durchzurechnen dauert zu lange: Dies ist, was der Bericht sagt.",
	notChecked: "Er ließ sich nicht mit seinen Einträgen vergleichen: Dies ist, was der Bericht sagt.",
	notReckoned: "Seine Einträge ließen sich nicht durchrechnen.",
	here: "Dieses Auto ist schon auf diesem Gerät: Behalten fügt hinzu, was fehlt.",
	keep: "Behalten",
	keepCar: (car) => `${car} behalten`,
	kept: (car) => `„${car}“ ist behalten und wird von nun an mit angesehen.`,
	isKept: "Behalten",
	gone: "Die Datei ist nicht mehr, wo sie war: Öffnen Sie sie noch einmal.",
	handed: "Der App übergeben",
	noneHanded: "Hier wartet kein Bericht, oder er wurde schon geöffnet: Öffnen Sie ihn noch einmal.",
	faultsTitle: "Nicht geöffnet",
	fault: (name, fault) => `${name}: ${fault}`,
	pasted: (place) => `Eingefügter Text ${place}`,
	tooMany: (most) => `Höchstens ${most} Berichte werden auf einmal geöffnet: Öffnen Sie die übrigen später.`,
	clear: "Diese Berichte schließen",
	toCars: "Alle Autos dieses Geräts",
};
