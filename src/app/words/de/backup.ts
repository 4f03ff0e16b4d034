import type { Words } from "../en/backup";

export const words: Words = {
	title: "Sicherung",
	fileType: "Heeltap-Logbuch",
	about: "Die App hält das Logbuch allein auf diesem Gerät. Eine Datei davon, anderswo aufbewahrt, überlebt das Gerät.",
	unreadable: (count) =>
		`Eine neuere Version der App hat ${entries(count)} geschrieben, ${count === 1 ? "den" : "die"} diese nicht lesen kann. Verloren ist nichts, aber in einer Sicherung von jetzt würde das fehlen: Aktualisieren Sie erst die App.`,
	opening:
		"Öffnen fügt hinzu, was hier fehlt, und nimmt nichts weg. Zwei Geräte führen ihre Logbücher eines Autos ebenso zusammen.",
	here: (count, car) => `Auf diesem Gerät: ${entries(count)} für „${car}“.`,
	save: "Sicherung speichern",
	send: "Sicherung senden",
	notSent: (file) => `Das Gerät wollte sie nicht senden, darum ist sie gespeichert, als ${file}.`,
	savedAs: (file) => `Gespeichert als ${file}. Bewahren Sie sie nicht nur auf diesem Gerät auf.`,
	never: (count) => `Noch keine Sicherung hat dieses Gerät verlassen: ${entries(count)} nur hier.`,
	made: {
		saved: (when, count) => `Letzte Sicherung: gespeichert ${when}, mit ${entriesWith(count)}.`,
		sent: (when, count) => `Letzte Sicherung: gesendet ${when}, mit ${entriesWith(count)}.`,
		written: (when, count) => `Letzte Sicherung: geschrieben ${when}, mit ${entriesWith(count)}.`,
		opened: (when, count) => `Letzte Sicherung: eine Datei, hier geöffnet ${when}, mit ${entriesWith(count)}.`,
	},
	fuller: (here) => `Das sind mehr als die ${here} hier: Öffnen Sie sie, um die anderen zurückzuholen.`,
	nothingSince: "Seither kam nichts hinzu.",
	since: (count) => `Seither ${count === 1 ? "kam" : "kamen"} ${entries(count)} hinzu, nur hier.`,
	inNone: (count) => `${entries(count)} des Logbuchs ${count === 1 ? "ist" : "sind"} in keiner Sicherung.`,
	inNoneSince: (count, when) =>
		`${entries(count)} seit der Sicherung vom ${when} ${count === 1 ? "ist" : "sind"} in keiner.`,
	risks: {
		weekly:
			"Safaris Engine löscht das Logbuch nach sieben Nutzungstagen ohne Besuch, wenn die App nicht auf dem Startbildschirm liegt.",
		kept: "Was in keiner Sicherung ist, geht mit dem Gerät verloren.",
		unkept:
			"Was in keiner Sicherung ist, geht mit dem Gerät verloren, und der Browser kann es löschen, wenn der Platz knapp wird.",
	},
	troubles: {
		ask: "Der Browser fragt Sie noch einmal, bevor die App hineinschreiben darf.",
		refused:
			"Der Browser lässt die App nicht mehr hineinschreiben: Erlauben Sie es wieder, oder wählen Sie eine andere Datei.",
		gone: "Sie ist nicht mehr dort, wo sie war: Wählen Sie eine andere Datei.",
		fuller:
			"In ihr stehen Einträge, die diesem Gerät fehlen, darum bleibt sie, wie sie ist: Öffnen Sie sie als Sicherung, dann wird sie wieder geschrieben.",
		other: "In ihr steht das Logbuch eines anderen Autos, darum bleibt sie, wie sie ist: Wählen Sie eine andere Datei.",
		failed:
			"Sie ließ sich nicht schreiben. Was darin stand, ist noch heil, und die App versucht es beim nächsten Speichern und beim nächsten Start wieder.",
	},
	automatic: "Sicherung nach jedem Speichern",
	writtenTo: (file) => `Das Logbuch wird in „${file}“ geschrieben.`,
	notYet: "Noch nicht geschrieben.",
	lastWritten: (when) => `Zuletzt geschrieben: ${when}.`,
	chooseOnce:
		"Wählen Sie einmal eine Datei, und die App schreibt das Logbuch nach jedem Speichern hinein. Am besten in einem Ordner, der auf ein anderes Gerät kopiert wird.",
	choose: "Datei wählen…",
	chooseAnother: "Andere Datei wählen…",
	noFile: "Der Browser gab diese Datei nicht her: Wählen Sie einen anderen Ort.",
	newName: "Geben Sie ihr einen neuen Namen: Eine Datei desselben Namens würde erst geleert.",
	stop: "Nicht mehr schreiben",
	stopped: "Die Datei bleibt, wie sie ist. Sie wird nicht mehr geschrieben.",
	allow: "Die App hineinschreiben lassen",
	reminder: "Logbuch sichern",
	notNow: "Nicht jetzt",
	shouldBeIn: (file) => `Das Logbuch sollte in „${file}“ stehen.`,
	seeToIt: "Darum kümmern",
};

function entries(count: number): string {
	return `${count} ${count === 1 ? "Eintrag" : "Einträge"}`;
}

function entriesWith(count: number): string {
	return `${count} ${count === 1 ? "Eintrag" : "Einträgen"}`;
}
