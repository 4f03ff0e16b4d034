import type { Words } from "../en/kept";

export const words: Words = {
	title: "Was der Browser tun darf",
	weekly:
		"Das sieht nach Safaris Engine aus. Sie löscht, was eine Seite gespeichert hat, nach sieben Nutzungstagen ohne Besuch der Seite. Eine App auf dem Startbildschirm bleibt davon verschont, beginnt aber mit leerem Logbuch: Speichern Sie hier eine Sicherung, legen Sie die App auf den Startbildschirm und öffnen Sie die Sicherung dort.",
	promised:
		"Der Browser hat zugesagt, diese Daten nicht von selbst zu löschen. Sie bleiben, bis Sie die Daten der App in den Einstellungen des Browsers löschen.",
	silent: "Dieser Browser sagt nicht, ob er die Daten auf Dauer behält. Speichern Sie ab und zu eine Sicherung.",
	unpromised:
		"Der Browser hat nicht zugesagt, diese Daten zu behalten: Er kann alle löschen, wenn der Platz knapp wird.",
	installing: "Einer App auf dem Startbildschirm sagt er es eher zu.",
	ask: "Den Browser bitten, sie zu behalten",
	private:
		"In einem privaten Fenster gehen alle Daten mit dem Fenster verloren; eine App merkt nicht, ob sie in einem läuft. Auch wer den Verlauf des Browsers löscht, löscht vielleicht die Daten.",
};
