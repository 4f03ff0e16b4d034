import type { Words } from "../en/costs";

export const words: Words = {
	opening: "Das Logbuch wird geöffnet …",
	none: "Noch ist kein Kraftstoff im Logbuch",
	noneMore: "Tragen Sie eine Füllung mit Preis und Kilometerstand ein, und hier steht, was sie gekostet hat.",
	record: "Füllung eintragen",
	bought: "Gekaufter Kraftstoff",
	enterPrice: "Geben Sie bei der nächsten Füllung den Preis ein: Hier zählt jeder Liter, der einen hat.",
	notKnown: "unbekannt",
	inAll: "Insgesamt",
	plainNumbers: "Die Beträge sind bloße Zahlen, denn es ist keine Währung gewählt.",
	chooseCurrency: "Unter „Auto“ wählen",
	monthly: "Kosten der einzelnen Monate",
	olderMonths: (count) => `Frühere Monate (${count})`,
	ethanol: "Was das Ethanol gekostet hat",
	cheaper: "billiger als Benzin",
	dearer: "teurer",
	lastStop: (when, compared, against) =>
		`Beim letzten solchen Stopp, ${when}, kostete das Gemisch ${compared} seine Wärme in Form von ${against}.`,
	heatOnly:
		"Ein Liter Ethanol enthält ein Drittel weniger Wärme als ein Liter Benzin. Verglichen wird hier nur die Wärme, nach den Mitten der Angaben; was der Motor daraus macht, ist eine andere Sache.",
	distance: "Was die Strecke gekostet hat",
	perDistance: (distance) => `Pro ${distance}, etwa`,
	consumption: "Verbrauch und Reichweite",
	stops: "Stopp für Stopp",
	olderStops: (count) => `Frühere Stopps (${count})`,
	at: (when, place) => (place === null ? when : `${when}, ${place}`),
	stopCompared: (compared, range) => `${compared} seine Wärme in Form von Benzin (${range})`,

	noPriceOfOne: "Dafür wurde kein Preis eingetragen.",
	noPriceOfAny: (fills) => `Für keine der ${fills} Füllungen wurde ein Preis eingetragen.`,
	noPriceOfSome: (unpriced, fills) =>
		`Für ${unpriced} von ${fills} Füllungen wurde kein Preis eingetragen: In der Summe fehlen sie.`,
	same: "weder mehr noch weniger",
	more: (money) => `${money} mehr`,
	less: (money) => `${money} weniger`,
	asMuchAs: "so viel wie",
	moreThan: (money) => `etwa ${money} mehr als`,
	lessThan: (money) => `etwa ${money} weniger als`,
	range: (least, most) => `von ${least} bis ${most}`,
	noBlends: "Es wurde nur Benzin gekauft, also kein Ethanol eigens bezahlt.",
	noEthanol:
		"Was das Ethanol kostet, lässt sich sagen, sobald ein Stopp die Preise von allem hat, was getankt wurde, und davor oder dabei Benzin gekauft wurde.",
	blends: (stops, compared, range) =>
		`${stops === 1 ? "Das Gemisch eines Stopps kostete" : `Die Gemische von ${stops} Stopps kosteten`} ${compared} dieselbe Wärme in Form von Benzin. Nach dem, was die Angaben zulassen: ${range}.`,
	untold: (stops) =>
		`${stops === 1 ? "Ein weiterer Stopp sagt" : `${stops} weitere Stopps sagen`} nichts: Ein Preis fehlt, oder es war noch kein Benzin gekauft.`,
	against: (fuel, price, place, date) => `„${fuel}“ zu ${price} (${place === undefined ? "" : `${place}, `}${date})`,
	noPrice: "kein Preis eingetragen",
	priceMissing: "ein Preis fehlt",
	byClicks: (distance, from, to, low, high, per) =>
		`Auf ${distance}, ${from} bis ${to}, von einem Volltanken zum anderen, 9 von 10: ${low} bis ${high} pro ${per}.`,
	byBounds: (distance, from, to, low, high, per) =>
		`Auf ${distance}, ${from} bis ${to}, so weit die Größe des Tanks es begrenzt, ohne zweimaliges Volltanken, mindestens und höchstens: ${low} bis ${high} pro ${per}.`,
	leftOutUnpriced: (count) =>
		`${count === 1 ? "Eine Strecke ist" : `${count} Strecken sind`} ausgelassen, weil ein Preis fehlt.`,
	leftOutUnbelievable: (count) =>
		`${count === 1 ? "Eine Strecke ist" : `${count} Strecken sind`} ausgelassen, weil Kilometerstand und Menge nicht zueinander passen: Suchen Sie im Logbuch nach einem vertippten Kilometerstand.`,
	noOdometer: (stops) =>
		`Zwei Stopps mit Kilometerstand begrenzen, was dazwischen verbraucht wurde; ${stops === 0 ? "noch hat ihn keiner" : "bisher hat ihn einer"}. Tragen Sie ihn mit den nächsten Füllungen ein.`,
	noPricedStretch:
		"Zwischen keinen zwei Stopps mit Kilometerstand hat jede Füllung einen Preis. Tragen Sie mit den nächsten Füllungen Preis und Kilometerstand ein.",
	unbelievable:
		"Kilometerstand und Menge passen nicht zueinander: So wenig oder so viel verbraucht kein Auto. Suchen Sie im Logbuch nach einem vertippten Kilometerstand.",
	tooLittle:
		"Was zwischen den Stopps verbraucht wurde, ist nicht gut genug begrenzt. Tanken Sie zweimal bis zum Abschalten der Zapfpistole, mit Kilometerstand, und es ist so weit.",
};
