import type { Words } from "../en/tank";

export const words: Words = {
	reading: "Das Logbuch wird gelesen…",
	nothingTitle: "Über diesen Tank ist noch nichts bekannt",
	nothing: "Tragen Sie eine Füllung ein, und die Rechnung beginnt. Bis dahin ist jeder Ethanolgehalt möglich.",
	record: "Füllung eintragen",
	verdict: "Urteil",
	median: "Am ehesten etwa",
	nineInTen: "9 von 10",
	plan: "Was tanken?",
	enterCalibration: "Abstimmung eintragen",
	why: "Warum diese Zahl",
	lastChange: "Letzte Änderung",
	changed: (when, what) => `${when}: ${what}.`,
	stays: (content) => `Es bleibt bei etwa ${content}.`,
	became: (from, to) => `Aus etwa ${from} wurden etwa ${to}.`,
	measure: "Messung eintragen",
	reckoning: (percent) =>
		`Das Logbuch wird neu durchgerechnet: ${percent} % fertig. Was Sie sehen, ist der Stand davor.`,
	settle: "Was würde Klarheit schaffen?",
	running: "Wie weit er reicht",
	inside: (inTwenty) => `Im Fenster: ${inTwenty}`,
	outside: (above, below) => `, zu viel: ${above}, zu wenig: ${below}.`,
	reaching: (volume, distance, from, to) =>
		`Der Motor bekommt das neue Gemisch, sobald der alte Kraftstoff in den Leitungen verbrannt ist, ${volume} oder etwa ${distance}, und der Tank sich gemischt hat, nach ${from} bis ${to} Minuten Fahrt (übliche Praxis). Bis dahin kein Ladedruck.`,
	behind: "Was dahinter stecken kann",
	whyTold: "Warum wird das gesagt?",
	brackets: { window: "Fenster", label: "Angabe" },
	within: { window: "im Fenster", label: "innerhalb der Angabe" },
	spread: (low, high) => `Zwanzig gleich wahrscheinliche Ethanolgehalte von ${low} bis ${high}.`,
	sides: (inside, within, range, above, below) =>
		`${inside} davon liegen ${within} von ${range}, ${above} darüber und ${below} darunter.`,
};
