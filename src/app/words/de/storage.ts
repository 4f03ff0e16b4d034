import type { Words } from "../en/storage";

export const words: Words = {
	losses: {
		lost: "Der Browser hat den Zugriff auf den Speicher dieser App verloren: Laden Sie die App neu, und wenn das nicht hilft, starten Sie das Gerät neu.",
		slow: "Der Speicher dieses Geräts antwortet nicht: Warten Sie einen Moment und versuchen Sie es noch einmal; wenn das nicht hilft, laden Sie die App neu.",
		unwritten:
			"Dieses Gerät konnte nicht schreiben, es wurde also nichts gespeichert; vielleicht ist der Speicher voll: Schaffen Sie Platz und versuchen Sie es noch einmal.",
		full: "Auf diesem Gerät ist kein Platz mehr, es wurde also nichts gespeichert: Schaffen Sie Platz und versuchen Sie es noch einmal.",
		blocked:
			"Ein anderer Tab hält eine ältere Version dieser App: Schließen Sie die anderen Tabs und laden Sie dann neu.",
		newer:
			"Die Daten auf diesem Gerät stammen von einer neueren Version der App: Laden Sie neu, um die App zu aktualisieren.",
		refused:
			"Dieser Browser lässt die App keine Daten speichern: Verlassen Sie den privaten Modus, oder erlauben Sie dieser Seite, Daten zu speichern.",
		closed: "Der Speicher wurde geschlossen: Laden Sie die App neu.",
	},
	unforeseen: (message) => `Ein Fehler, der nicht vorkommen sollte: ${message}`,
	reload: "App neu laden",
	stale: "In einem anderen Tab läuft eine neuere Version dieser App: Laden Sie diesen Tab neu, bevor Sie weitermachen.",
	wiped: "Der Browser fand die Daten dieser App beschädigt und hat neu begonnen.",
};
