import type { Words } from "../en/opener";

export const words: Words = {
	open: "Sicherung öffnen",
	tooLong: (most) =>
		`Die Datei ist größer als ${most}, und so groß ist kein Logbuch: Wählen Sie eine Datei, die Heeltap gespeichert hat.`,
	unreadable: "Das Gerät gab die Datei nicht her: Wählen Sie sie noch einmal, aus dem Speicher des Geräts selbst.",
	notText: "Die Datei ist kein UTF-8-Text: Wählen Sie eine Datei, die Heeltap gespeichert hat.",
	unchanged: (fault) => `${fault} Es wurde nichts geändert.`,
	entries: (added, known) => `${added} ${added === 1 ? "neuer Eintrag" : "neue Einträge"}, ${known} schon bekannt`,
	entriesLacking: (added, known, lacking) =>
		`${added} ${added === 1 ? "neuer Eintrag" : "neue Einträge"}, ${known} schon bekannt; der Datei fehlen mindestens ${lacking}, die ihr Gerät geschrieben hatte`,
	opened: (car, entries) => `„${car}“ ist jetzt hier: ${entries}.`,
	joined: (entries) => `Das Logbuch dieses Autos wurde zusammengeführt: ${entries}.`,
	joinedDecided: (entries, settings) =>
		`Das Logbuch dieses Autos wurde zusammengeführt: ${entries}. Die beiden hatten andere Einstellungen (${settings}): Von jeder gilt jetzt die zuletzt geänderte.`,
	settings: { name: "Name", tank: "Tank", currency: "Währung", fuelSystem: "Kraftstoffanlage" },
	otherSetting: (field) => `„${field}“`,
};
