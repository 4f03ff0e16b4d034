import type { Words } from "../en/cars";

const autos = (count: number) => (count === 1 ? "1 Auto" : `${count} Autos`);

export const words: Words = {
	title: "Alle Autos",
	about: "Was Aufmerksamkeit braucht, steht oben. Ein Tippen öffnet das Auto.",
	looking: "Die Autos werden durchgesehen…",
	noCars: "Auf diesem Gerät ist kein Auto.",
	over: (over, all) =>
		over === 0
			? `Keines von ${autos(all)} liegt über einer Grenze.`
			: `${over} von ${autos(all)} ${over === 1 ? "liegt" : "liegen"} über einer Grenze, oder die Einträge widersprechen sich.`,
	reckoning: (count) => `${autos(count)} noch durchzurechnen…`,
	list: "Autos, das Dringendste zuerst",
	onScreen: "gerade gewählt",
	invented: "erfunden",
	openReports: "Berichte anderer Autos öffnen",
	toCars: "Alle Autos ansehen",
	others: (count) =>
		count === 1 ? "Ein anderes Auto braucht Aufmerksamkeit" : `${count} andere Autos brauchen Aufmerksamkeit`,

	needs: {
		outside: "Eher außerhalb des Fensters",
		doubt: "Einträge widersprechen sich",
		maybe: "Vielleicht außerhalb des Fensters",
		odd: "Der letzte Eintrag passt nicht",
		silent: "Lange nichts gehört",
		noWindow: "Keine Abstimmung, also kein Fenster",
		nothing: "Über den Tank ist nichts bekannt",
		reckoning: "Wird durchgerechnet…",
		failed: "Nicht durchzurechnen: Öffnen Sie es",
		fine: "Im Fenster",
	},
	doubtToo: "Die letzten Einträge widersprechen sich: Klären Sie das zuerst.",
	oddToo: "Der letzte Eintrag passt nicht zur Rechnung.",
	checked: "Was an den letzten Einträgen auffällt, wurde durchgesehen.",
	figures: (content, range) => `Etwa ${content}, 9 von 10: ${range}.`,
	chances: (above, below) => `Zu viel Ethanol: ${above}, zu wenig: ${below}.`,
	window: (name, window) => `Fenster ${window} („${name}“).`,
	lastEntry: (when) => `Letzter Eintrag: ${when}.`,
	silent: (days) =>
		`Seit ${days} Tagen nichts gehört: Vielleicht wurde inzwischen getankt. Gehen Sie nicht nach dieser Zahl.`,

	contradiction: "Die letzten Einträge widersprechen sich",
	contradictionMore: "Klären Sie das zuerst, und bis dahin kein Ladedruck.",
	told: (what, more) => `${what}: ${more}`,
};
