import type { Words } from "../en/hand";

const entries = (count: number) => (count === 1 ? "1 Eintrag" : `${count} Einträge`);

export const words: Words = {
	reading: "Das Logbuch wird gelesen…",
	handTitle: "Einträge übergeben",
	handAbout: (car) =>
		`Einträge von „${car}“ für ein anderes Gerät, das über dasselbe Auto Buch führt. Beide zeigen dann dieselben Zahlen.`,
	what: "Was soll übergeben werden?",
	lastStop: "Der letzte Halt",
	lastStopMore: "und was danach kam",
	sinceLast: "Seit dem letzten Mal",
	sinceLastMore: (when) => `übergeben ${when}`,
	sinceDay: "Seit einem Tag",
	day: "Von diesem Tag an",
	all: "Alles",
	allMore: "für ein Gerät, das dieses Auto noch nicht hat",
	lacking: "Was dem anderen Gerät fehlt",
	lackingMore: "wie sein Code sagt",
	howMany: (count, codes) => `${entries(count)} in ${codes === 1 ? "einem Code" : `${codes} Codes`}.`,
	nothing: "Nichts: Das andere Gerät hat alles, was es gibt.",
	noEntries: "Einen solchen Eintrag gibt es nicht.",
	tooMany: (count, codes) =>
		`${entries(count)} wären ${codes} Codes, und die scannt niemand: Senden Sie das Logbuch als Datei.`,
	otherCar: "Der Code des anderen Geräts gehört zu einem Auto, das hier nicht ist: Ihm lässt sich nichts übergeben.",
	showOther: "Auf dem anderen Gerät scannen oder öffnen:",
	scanWhat:
		"Wählen Sie auf dem anderen Gerät Auto → Scannen oder öffnen, und scannen Sie dies damit. Es fragt, bevor es etwas behält.",
	longLink:
		"Für einen Link ist das zu lang: Lassen Sie das andere Gerät die Codes scannen, oder senden Sie das Logbuch als Datei.",
	codesFileHead: (car) => `Einträge von „${car}“ für Heeltap. Öffnen Sie diese Datei in der App, oder den Link:`,
	codesFileName: (car) => `${car}-eintraege`,
	wholeFile: "Das ganze Logbuch als Datei:",
	done: "Das andere Gerät hat es",
	doneMore: "Beim nächsten Mal geht es hier weiter.",
	noted: "Vermerkt: Beim nächsten Mal wird übergeben, was neuer ist.",
	knowExactly: "Genau das übergeben, was fehlt",
	knowExactlyMore:
		"Das andere Gerät kann einen Code zeigen, der sagt, was es hat: dort Auto → Scannen oder öffnen → Zeigen, was dieses Gerät hat. Scannen Sie ihn hier.",
	toScan: "Code des anderen Geräts scannen",

	takeTitle: "Scannen oder öffnen",
	takeAbout:
		"Eine Abstimmungs­karte, Einträge von einem anderen Gerät, ein Logbuch oder was ein Auto live macht. Sie sehen, was es ist, bevor etwas behalten wird.",
	openFile: "Datei öffnen",
	paste: "Oder einen Link einfügen",
	pasteGo: "Link öffnen",
	some: (got, count) => `${got} von ${count} Codes sind da.`,
	missing: (which) => `Noch fehlen: ${which}.`,
	anyOrder: "Sie dürfen in jeder Reihenfolge kommen, heute oder morgen.",
	begun: "Dieser Code gehört zu einer anderen Übergabe: Sie beginnt von vorn.",
	again: "Dieser Code war schon da.",
	forget: "Diese Codes vergessen",
	gone: "Der App wurde keine Datei übergeben, oder sie ist schon geöffnet worden.",
	haveTitle: "Zeigen, was dieses Gerät hat",
	haveAbout: (car) =>
		`Das andere Gerät scannt dies und übergibt, was bei „${car}“ hier fehlt. Im Code stehen kein Eintrag und keine Ihrer Zahlen.`,

	previewTitle: (car) => `Von einem anderen Gerät: „${car}“`,
	isReport: (made) =>
		`Das ist ein Tankbericht vom ${made}. „Behalten“ übernimmt das Logbuch daraus; unten steht, was sich dadurch hier ändert. Nur lesen lässt er sich unter`,
	toReports: "Berichte anderer Autos",
	looking: "Was es ändern würde, wird gerechnet…",
	of: (count, car, added) =>
		`${entries(count)} von „${car}“, ${added === 0 ? "keiner davon neu" : added === count ? "alle neu" : `${added} neu`}.`,
	carIsNew: "Dieses Auto ist neu auf diesem Gerät.",
	lacks: (count) =>
		`Davor ${count === 1 ? "wurde" : "wurden"} mindestens ${entries(count)} geschrieben, die hier ${count === 1 ? "fehlt" : "fehlen"}: Bitten Sie um mehr, am besten mit „Zeigen, was dieses Gerät hat“.`,
	unreckoned: "Es sind so viele, dass das Gerät erst nach dem Behalten ausrechnet, was sie ergeben.",
	newCalibration: (name) => `Eine Abstimmung: „${name}“`,
	flashed: (name) => `Aufgespielt: „${name}“`,
	takenBack: "Ein Eintrag wird zurückgenommen",
	more: (count) => `und ${count} weitere`,
	estimate: "Am wahrscheinlichsten",
	rangeNine: "In neun von zehn Fällen",
	from: (before, after) => `${before} → ${after}`,
	stays: (value) => `${value}, wie bisher`,
	decidedTitle: "Einstellungen, die sich unterscheiden",
	decidedOwn: (setting, own, other) => `${setting}: hier „${own}“, dort „${other}“. Auf beiden gilt, was hier steht.`,
	decidedOther: (setting, own, other) => `${setting}: hier „${own}“, dort „${other}“. Auf beiden gilt, was dort steht.`,
	decidedWhy: "Von zweien gilt die zuletzt geänderte; beide Geräte kommen zum selben.",
	noValue: "nichts",
	tankParts: {
		gaugeSd: "Unsicherheit der Tankanzeige",
		clickSd: "Unsicherheit des Abschaltens",
	},
	notNew: "Darin ist nichts Neues.",
	keep: "Behalten",
	leave: "Nicht behalten",
	kept: (added, car) => `${entries(added)} von „${car}“ behalten.`,
	close: "Zurück zum Tank",
	faults: {
		otherCar:
			"Das sind einige Einträge eines Autos, das dieses Gerät nicht hat: Lassen Sie das andere Gerät „Alles“ übergeben.",
		calibrationLacking:
			"Diese Einträge gehören zu einer Abstimmung, die dieses Gerät nicht hat: Lassen Sie das andere Gerät übergeben, was fehlt, oder „Alles“.",
		entryLacking:
			"Diese Einträge nehmen einen zurück, den dieses Gerät nicht hat: Lassen Sie das andere Gerät übergeben, was fehlt, oder „Alles“.",
	},
	notPutBy: "Auf dem Gerät war kein Platz für das Geteilte: Schaffen Sie Platz, und teilen Sie es noch einmal.",
	unreadable: "Das Gerät gab nicht her, was der App übergeben wurde: Wählen Sie es noch einmal.",
	tooLong: (most) =>
		`Die Datei ist größer als ${most}, und so groß ist weder ein Logbuch noch eine Karte: Wählen Sie eine andere.`,

	carTitle: "Andere Geräte und Karten",
	carHand: "Einträge übergeben",
	carTake: "Scannen oder öffnen",
	carLive: "Live, über einen eigenen Server",
};
