import type { Words } from "../en/refusals";

export const words: Words = {
	duplicate: {
		event: (id) => `Der Eintrag ${id} ist schon mit anderem Inhalt da, es wurde also nichts gespeichert.`,
		calibration: (id) => `Die Abstimmung ${id} ist schon mit anderem Inhalt da, es wurde also nichts gespeichert.`,
	},
	again: (said) =>
		`${said} Ein früherer Versuch, der zu scheitern schien, kann geglückt sein: Sehen Sie im Logbuch nach und korrigieren Sie es dort.`,
	tooMany: {
		events: (count, most) => `Beide Logbücher zusammen hätten ${count} Einträge, erlaubt sind ${most}.`,
		calibrations: (count, most) => `Beide Logbücher zusammen hätten ${count} Abstimmungen, erlaubt sind ${most}.`,
	},
};
