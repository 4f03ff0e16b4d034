import type { Words } from "../en/shell";

export const words: Words = {
	screenMissing: "Diese Seite ließ sich nicht laden. Laden Sie die App neu, sobald Netz da ist.",
	onThisPhone: "Heeltap ist jetzt auf diesem Gerät und läuft ohne Netz.",
	newVersion: "Eine neue Version ist da.",
	restart: "Neu starten",
	invented: "erfunden",
	opening: "Das Logbuch wird geöffnet…",
	screens: "Seiten",
	tabs: { tank: "Tank", fill: "Tanken", log: "Logbuch", car: "Auto" },
	dismiss: (text) => `Ausblenden: ${text}`,
	undo: "Rückgängig",
};
