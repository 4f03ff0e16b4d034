import { strong } from "../../emphasis";
import type { Words } from "../en/trims";

export const words: Words = {
	title: "Gemischkorrektur (Fuel Trim)",
	about:
		"Im geregelten Betrieb gibt der Motor Kraftstoff zu, wenn mehr Ethanol da ist, als er abgestimmt ist. Oft liegen Korrekturen aber aus anderen Gründen um 3\u00a0% daneben, und das sieht aus wie 8 Punkte Ethanol: Das hier prüft nur die Plausibilität, bis Korrekturen auf bekannten Gemischen gezeigt haben, wie weit dieses Auto von sich aus danebenliegt.",
	steps: (from, to, distance) => [
		`Nach einer Füllung ${from} bis ${to}\u00a0Minuten und etwa ${distance} fahren, bis die Langzeitkorrektur steht.`,
		"Motor warm, Lambdaregelung aktiv, gleichmäßige Fahrt auf ebener Straße, ohne Ladedruck.",
		"Den Beifahrer Kurzzeit- und Langzeitkorrektur jeder Bank notieren lassen, als Mittel über etwa zehn Sekunden.",
		"Mit Vorzeichen eingeben.",
	],
	cautions: [
		"Wer fährt, schaut auf die Straße, nicht auf das Gerät.",
		"Korrekturen, die gut aussehen, machen Volllast nicht sicher: Viele Motoren nehmen sie nicht dorthin mit (13 von 25 untersuchten Autos, CRC E-87-1).",
	],
	banks: "Zylinderbänke",
	oneBank: "Eine Bank",
	oneBankMore: "Reihenmotoren",
	twoBanks: "Zwei Bänke",
	twoBanksMore: "V- und Boxermotoren",
	shownAs: "Angezeigt als",
	fields: {
		short1: "Kurzzeit, Bank 1",
		long1: "Langzeit, Bank 1",
		short2: "Kurzzeit, Bank 2",
		long2: "Langzeit, Bank 2",
	},
	calibratedFor: "Abgestimmt für, %\u00a0Ethanol",
	calibratedForHint: "Von der Abstimmung, die beim Messen aufgespielt ist.",
	sd: "Unsicherheit (±), %\u00a0Korrektur",
	why: "3 ist üblich. Das meiste davon gehört zu diesem Auto und ist jedes Mal gleich: Korrekturen auf einem bekannten Gemisch zeigen es, und spätere zählen dann mehr.",
	tooLow: "Mit einer so niedrigen Korrektur läuft kein Motor: Prüfen Sie Vorzeichen und Zahlen.",
	together: (trim, banks) => `Zusammen ${strong(trim)}${banks === 2 ? ", das Mittel beider Bänke" : ""}.`,
	implied: (content, points) => `Für sich allein wären das ${content} Ethanol, ±\u00a0${points}\u00a0Punkte.`,
	unexplained: (side) =>
		`Das erklärt kein Gemisch: Es liegt ${side === "below" ? "unter" : "über"} allem, was irgendein Gehalt brächte. Suchen Sie eine andere Ursache.`,
	atLimit:
		"Bei einer so großen Langzeitkorrektur hören die meisten Motorsteuergeräte auf zu korrigieren: Die Wahrheit kann weiter draußen liegen.",
};
