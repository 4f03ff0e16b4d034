import type { Words } from "../en/device";

export const words: Words = {
	warnings: "Warnungen",
	notify: "Benachrichtigen",
	notifyMore: "Bei einer neuen Warnung, wenn sich das Logbuch ändert, während Sie woanders hinsehen.",
	noNotifications: "Dieser Browser kennt keine Benachrichtigungen. Die Warnungen stehen trotzdem auf der Seite Tank.",
	denied:
		"Der Browser lehnt Benachrichtigungen dieser App ab. Erlauben Sie sie in den Einstellungen des Browsers für diese Seite und kommen Sie dann zurück. Die Warnungen stehen trotzdem auf der Seite Tank.",
	language: "Sprache",
	ofBrowser: "Wie der Browser",
	takesEffect: "Die App startet darin neu. Halb Eingegebenes bleibt.",
	unsaved:
		"Weiter oben steht etwas, das noch nicht gespeichert ist. Speichern Sie es erst, oder starten Sie ohne es neu.",
	unsavedSomewhere:
		"Etwas ist getippt oder geöffnet und noch nicht gespeichert. Speichern Sie es zuerst, oder starten Sie ohne es neu.",
	beginAnew: "Neu starten",
	notKept: "Dieser Browser merkt sich keine Sprache: Es gilt die des Browsers.",
};
