import type { Words } from "../en/live";

const entries = (count: number) => (count === 1 ? "1 Eintrag" : `${count} Einträge`);
const messages = (count: number) => (count === 1 ? "1 Nachricht" : `${count} Nachrichten`);

export const words: Words = {
	title: "Live",
	reading: "Der Stand wird abgefragt…",
	off: (car) => `„${car}“ ist nicht live: Die Einträge bleiben auf diesem Gerät, bis Sie sie übergeben.`,
	about:
		"Geräte, die über dasselbe Auto Buch führen, können ihre Einträge von selbst austauschen, über einen Server, den jemand betreibt, den Sie kennen. Jeder Eintrag wird auf dem Gerät versiegelt; der Server erfährt, wann etwas gesendet wurde und ungefähr wie lang es ist, sonst nichts.",
	need: "Sie brauchen die Einladung des Servers für dieses Auto oder den Code, den ein Gerät zeigt, auf dem das Auto schon live ist.",
	toScan: "Einladung oder Code scannen oder öffnen",
	noCar:
		"Auf diesem Gerät ist noch kein Auto. Mit dem Code eines Geräts, auf dem ein Auto live ist, kommt es auch hierher.",
	server: "Server",
	car: "Auto",
	goodUntil: "Gültig bis",

	invited: "Eine Einladung, live zu gehen",
	invitedMore: (car) =>
		`Nach dem Einschalten macht dieses Gerät einen Schlüssel für „${car}“, sendet die Einträge damit versiegelt und zeigt einen Code für das nächste Gerät. Eine Einladung gilt für ein Auto.`,
	whichCar: "Für welches Auto?",
	noCarYet:
		"Auf diesem Gerät ist kein Auto, das live gehen könnte: Richten Sie erst eines ein, und öffnen Sie die Einladung dann noch einmal.",
	replaces: (server) =>
		`Dieses Auto ist schon über ${server} live. Schalten Sie es hier ein, verlässt es jenen Server, und die anderen Geräte brauchen einen neuen Code.`,
	switchOn: "Einschalten",
	leave: "Nicht einschalten",
	paired: (car) => `„${car}“ von einem anderen Gerät, live`,
	pairedMore:
		"Behalten Sie es, hat dieses Gerät die Einträge des Autos, sobald sie auf den anderen entstehen, und umgekehrt. Wer diesen Code hat, kann Einträge dieses Autos lesen und hinzufügen.",
	joins: "Das Auto ist schon auf diesem Gerät: Die Einträge hier und dort werden ein Logbuch.",
	keep: "Behalten",
	switchedOn: (car) => `„${car}“ ist live.`,
	unkept: "Das Gerät konnte es nicht behalten. Versuchen Sie es noch einmal.",
	ended: (when) => `Diese Einladung endete am ${when}: Bitten Sie den Betreiber des Servers um eine neue.`,
	codeEnded: "Dieser Code galt einen Tag, und der ist vorbei: Lassen Sie das andere Gerät einen neuen zeigen.",
	notAllowed: (server) =>
		`Diese Ausgabe der App darf nicht zu ${server}. Öffnen Sie den Code in der Ausgabe, die der Betreiber nennt, oder bitten Sie ihn, den Server unter der Adresse der App durchzureichen.`,

	state: {
		connecting: "Verbindung zum Server wird aufgebaut…",
		taking: "Was seither kam, wird geholt…",
		sending: (count) => `${entries(count)} unterwegs zum Server.`,
		caughtUp: "Auf gleichem Stand: Der Server hat alle Einträge dieses Geräts, und dieses Gerät alle des Servers.",
		offline: (waiting) =>
			waiting === 0
				? "Der Server ist nicht zu erreichen. Nichts wartet auf das Senden."
				: `Der Server ist nicht zu erreichen. ${entries(waiting)} ${waiting === 1 ? "wartet und wird" : "warten und werden"} noch gesendet.`,
		refused: {
			notAllowed:
				"Der Server lehnt dieses Gerät ab: Die Einladung wurde zurückgenommen oder ist nicht von diesem Server. Fragen Sie den Betreiber.",
			ended: "Der Server lehnt dieses Gerät ab: Die Einladung ist abgelaufen. Bitten Sie den Betreiber um eine neue.",
			full: "Der Server hat für dieses Auto keinen Platz mehr. Fragen Sie den Betreiber.",
			noStream: "Der Server ist da, bewahrt aber noch keine Einträge auf. Fragen Sie den Betreiber.",
			tooLarge: "Ein Eintrag ist größer, als der Server annimmt. Fragen Sie den Betreiber.",
			policy: "Die App darf nicht zu diesem Server.",
		},
	},
	sinceWhen: "Ohne Verbindung seit",
	refusedSince: "Abgelehnt seit",
	heard: "Server zuletzt gehört",
	news: "Letzte Einträge von anderen Geräten",
	never: "noch nie",
	refusedTitle: "Nicht angenommen",
	refusedDamaged: (count) =>
		`${messages(count)} ${count === 1 ? "ließ" : "ließen"} sich nicht öffnen: beschädigt, mit anderem Schlüssel versiegelt oder von einem anderen Auto. Alles andere geht weiter.`,
	refusedNewer: (count) =>
		`${messages(count)} ${count === 1 ? "stammt" : "stammen"} von einer neueren Version der App. Aktualisieren Sie die App, um ${count === 1 ? "sie" : "diese"} zu übernehmen.`,
	refusedContradicting: (count) =>
		`${messages(count)} ${count === 1 ? "hätte" : "hätten"} geändert, was hier schon unter demselben Namen steht. Es bleibt, wie es ist.`,
	refusedAgain: (count) => `${messages(count)} ${count === 1 ? "war" : "waren"} schon einmal da. Das ändert nichts.`,
	held: (count) =>
		`${entries(count)} ${count === 1 ? "kommt" : "kommen"} dazu, sobald da ist, wozu ${count === 1 ? "er gehört" : "sie gehören"}.`,

	nextPhone: "Ein weiteres Gerät für dieses Auto",
	nextPhoneMore:
		"Das andere Gerät scannt dies oder öffnet den Link oder die Datei. Der Schlüssel steckt darin: Geben Sie es nur Leuten, die das Logbuch dieses Autos lesen und schreiben dürfen. Es gilt einen Tag.",
	show: "Code zeigen",
	code: (car) => `Kopplungscode für „${car}“`,
	fileHead: (car) =>
		`„${car}“ live in Heeltap. Öffnen Sie diese Datei in der App, oder den Link, innerhalb eines Tages. Wer sie hat, kann die Einträge des Autos lesen.`,
	fileName: (car) => `${car}-live`,
	offTitle: "Ausschalten",
	offMore:
		"Die Einträge bleiben auf diesem Gerät und auf den anderen. Dieses Gerät vergisst den Schlüssel. Um ein verlorenes Gerät auszuschließen, schalten Sie auf allen aus, bitten um eine neue Einladung, schalten ein und koppeln neu.",
	offNow: "Auf diesem Gerät ausschalten",
	switchedOff: (car) => `„${car}“ ist auf diesem Gerät nicht mehr live.`,
	back: "Zurück zum Auto",
};
