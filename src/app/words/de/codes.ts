import type { Words } from "../en/codes";

export const words: Words = {
	send: "Link senden",
	copy: "Link kopieren",
	copied: "Der Link ist kopiert.",
	uncopied: "Das Gerät wollte ihn nicht kopieren: Drücken Sie lange auf den Link unten und kopieren Sie ihn dort.",
	linkItself: "Der Link selbst",
	saveFile: "Als Datei speichern",
	sendFile: "Als Datei senden",
	saved: (name) => `Gespeichert als ${name}.`,
	unsent: (name) => `Das Gerät wollte sie nicht senden, darum ist sie gespeichert, als ${name}.`,
	code: (what) => `QR-Code: ${what}`,
	codeOf: (place, count) => `Code ${place} von ${count}`,
	next: "Nächster Code",
	previous: "Voriger Code",
	turning: "Codes von selbst wechseln",
	turningMore: "Das andere Gerät nimmt sie in jeder Reihenfolge und sagt, welche noch fehlen.",

	scan: "Mit der Kamera scannen",
	stopScanning: "Kamera ausschalten",
	scanning: "Halten Sie den Code ins Bild, etwa doppelt so weit entfernt, wie er breit ist.",
	picture: "Bild der Kamera",
	scanPicture: "Aus einem Bild scannen",
	camera: {
		none: "Dieses Gerät hat keine Kamera, die die App nutzen könnte: Scannen Sie aus einem Bild, oder öffnen Sie den Link oder die Datei.",
		refused:
			"Die Kamera ist dieser App nicht erlaubt: Erlauben Sie sie in den Einstellungen des Browsers, oder scannen Sie aus einem Bild.",
		busy: "Die Kamera ist anderswo in Gebrauch: Schließen Sie das und versuchen Sie es noch einmal, oder scannen Sie aus einem Bild.",
		failed: "Die Kamera ging nicht an: Versuchen Sie es noch einmal, oder scannen Sie aus einem Bild.",
	},
	noPicture: "Diese Datei ist kein Bild, das das Gerät zeigen kann: Wählen Sie ein anderes.",
	noCode:
		"In diesem Bild war kein Code zu finden: Nehmen Sie ihn gerade von vorn auf, scharf und mit dem weißen Rand ringsum.",
	decoderMissing:
		"Der Teil der App, der Codes liest, ließ sich nicht laden. Laden Sie die App neu, sobald Netz da ist.",

	foreign: {
		address: (host) => `Das ist ein Link zu ${host} und enthält weder eine Abstimmungs­karte noch Einträge von Heeltap.`,
		network: "Das ist der Code eines Funknetzes und enthält weder eine Abstimmungs­karte noch Einträge von Heeltap.",
		text: (text) => `Hier steht „${text}“, und das ist weder eine Abstimmungs­karte noch Einträge von Heeltap.`,
		nothing: "Darin steht nichts: weder eine Abstimmungs­karte noch Einträge von Heeltap.",
	},
	mangled: "Das ist beschädigt oder nur ein Teil davon: Scannen Sie es noch einmal, oder lassen Sie es neu senden.",
	newer: "Das hat eine neuere Version der App gemacht: Aktualisieren Sie die App und öffnen Sie es dann noch einmal.",
	unchanged: (fault) => `${fault} Es wurde nichts geändert.`,
};
