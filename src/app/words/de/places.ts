import type { Words } from "../en/places";

export const words: Words = {
	reading: "Das Logbuch wird durchgesehen …",
	failed:
		"Was über die Orte bekannt ist, ließ sich nicht berechnen. Laden Sie die App neu und versuchen Sie es noch einmal.",
	none: "Noch ist kein Ort genannt",
	noneMore:
		"Nennen Sie den Ort einer Füllung, und hier bleibt in Erinnerung, was seine Zapfsäulen gaben. Ein Ort ohne Namen lehrt nichts für den nächsten Besuch.",
	record: "Füllung eintragen",
	places: "Orte",
	place: "Ort",
	all: "Alle Orte",
	notHere: (car, place) => `Keine Füllung und kein Test im Logbuch von „${car}“ nennt den Ort „${place}“.`,
	delivers: (fuel, content, range) => `${fuel}: etwa ${content}, 9 von 10: ${range}`,
	restsOn: "Worauf das beruht",
	restsOnMore:
		"Die Tankstellen einer Gegend kaufen bei denselben Tanklagern, darum sagt ein Test an einem Ort ein wenig über alle. Was man über den Kraftstoff eines Ortes weiß, verblasst: Nach 45 Tagen ist etwa ein Drittel davon übrig (übliche Praxis). Etwa eine von zehn Lieferungen liegt außerhalb ihrer Angabe (SAE 2013-01-9071).",
	median: "Am ehesten etwa",
	range: "9 von 10",
	labelAllows: "Laut Angabe",
	boughtHere: "Hier gekauft",
	testedHere: "Hier getestet",
	never: "nie",
	times: (count, last) => `${count === 1 ? "einmal" : `${count}-mal`}, zuletzt ${last}`,
	lastPrice: "Letzter Preis",
	priceOn: (price, date) => `${price}, ${date}`,
	noPrice: "keiner eingetragen",
	growing: "Wie breit der Bereich 9 von 10 ist, ab heute ohne Besuch und Test:",
	labelAlone: "Nur die Angabe",

	points: (count) => `${count}\u00a0${count === "1" ? "Punkt" : "Punkte"}`,
	nothingOpen: "Die Angabe lässt nichts offen.",
	tested: (samples, last) => (samples === 1 ? `Einmal getestet, ${last}` : `${samples}-mal getestet, zuletzt ${last}`),
	labelAsGood: (tested) => `${tested}: Inzwischen sagt die Angabe ebenso viel.`,
	neverTested: "Nie getestet: Bekannt ist nur, was die Angabe sagt.",
	narrower: (tested, width, label) =>
		`${tested}: Der Bereich 9 von 10 ist ${width} breit, die Angabe allein ließe ${label}.`,
	narrowerUntested: (width, label) =>
		`Nie getestet. Was der Tank und andere Zapfsäulen zeigten, engt es ein: Der Bereich 9 von 10 ist ${width} breit, die Angabe allein ließe ${label}.`,
	now: "Jetzt",
	inDays: (days) => `In ${days} Tagen`,
	inMonths: (months) =>
		months === 1
			? "In einem Monat"
			: months === 3
				? "In drei Monaten"
				: months === 6
					? "In einem halben Jahr"
					: `In ${months} Monaten`,
	visits: (last, fills, samples) => {
		const filled = fills === 0 ? "Nie getankt" : fills === 1 ? "Eine Füllung" : `${fills} Füllungen`;
		const tested = samples === 0 ? "nie getestet" : samples === 1 ? "ein Test" : `${samples} Tests`;
		return `Letzter Besuch: ${last}. ${filled}, ${tested}.`;
	},
};
