import type { CameOut, Words } from "../en/pours";

/** In the accusative. */
const parts = { gauge: "die Tankanzeige", place: "den Ort", time: "die Zeit", odometer: "den Kilometerstand" };

/** With the verb at its end, behind "weil", "obwohl" or "bevor". */
const cause = ({ larger, poured, planned }: CameOut) =>
	`die erste Menge ${larger ? "größer" : "kleiner"} ausfiel, ${poured} statt ${planned}`;

const leaveFull =
	"Ist der Tank voll, lassen Sie es dabei und speichern Sie: Wer nachdrückt, kann Kraftstoff verschütten und dem Auto schaden.";

export const words: Words = {
	toClick: (fuel, amount) => `${fuel} bis zum Abschalten, etwa ${amount}`,
	of: (amount, fuel) => `${amount} ${fuel}`,
	thenPour: (pour) => `dann ${pour}`,
	inTurn: (pours) => pours.join(", dann "),
	beforeDriving: (fuel) =>
		`${fuel} muss hinein, bevor Sie losfahren: Bis dahin liegt das Gemisch vielleicht jenseits der mageren Grenze.`,

	otherWayAbove: (chance) => `Andersherum, zu viel: ${chance}.`,
	otherWayInside: (chance) => `Andersherum, im Fenster: ${chance}.`,
	safeFirst: (first, second) =>
		`${first} zuerst: Schaltet die Zapfpistole früh ab, fehlt ${second}, und das Gemisch bleibt auf der sicheren Seite.`,
	sureFirst: (first, second) =>
		`${first} zuerst, damit die Menge sicher ist: Wie viel am Ende hineinpasst, weiß niemand, und ${second} nimmt den Unterschied auf.`,
	first: (fuel) => `${fuel} zuerst.`,
	eitherFirst: (fuel) => `${fuel} zuerst; andersherum ginge es ebenso gut.`,

	outOfReach: "Mit diesen Kraftstoffen nicht zu erreichen",
	outOfReachMore: (reach, window, side) =>
		`Bei diesem Stopp bringen sie den Tank auf ${reach}, was immer Sie tanken; das Fenster ist ${window}. Nötig ist ein Kraftstoff mit ${side === "more" ? "mehr" : "weniger"} Ethanol oder eine Abstimmung für ${side === "more" ? "weniger" : "mehr"}. Am nächsten kommt das hier:`,
	lean: "Kein Plan hält das Risiko, mager zu laufen, so klein wie gewünscht",
	leanMore: (above) =>
		`Mit diesem, dem am wenigsten riskanten, heißt es für zu viel Ethanol immer noch: ${above}. Fahren Sie danach ohne Ladedruck.`,
	likelyInside: "Wohl im Fenster, aber nicht so sicher wie gewünscht",
	knock: "Kein Plan macht das Gemisch sicher stark genug",
	knockMore: (below) =>
		`Das Risiko, mager zu laufen, bleibt klein; für zu wenig Ethanol heißt es: ${below}. Was unbekannt ist, lässt nicht mehr Spielraum: „Was würde Klarheit schaffen?“ sagt, was zu testen ist. Fahren Sie ohne Ladedruck, bis ein Test anderes sagt.`,

	burnInVain:
		"Erst etwas zu verfahren genügt allein nicht: Auch bei fast leerem Tank bringt kein Plan das Gemisch ins Fenster.",
	burn: (amount, distance) =>
		`Verfahren Sie erst etwa ${amount}${distance === null ? "" : `, rund ${distance}`}, ohne Ladedruck, und tanken Sie dann: Je weniger übrig ist, desto mehr zählt der neue Kraftstoff, und ein Plan führt ins Fenster.`,
	noStops: "Mehrere Stopps nacheinander lassen sich von hier aus nicht planen.",
	stopsReach: (stops, gauge, days) =>
		`Nach ${stops} Stopps liegt es im Fenster, wenn Sie dazwischen bis auf etwa ${gauge} des Tanks leerfahren und ${days} Tage vergehen:`,
	stopsInVain: (stops, gauge, days) =>
		`Auch ${stops} Stopps nacheinander führen nicht ins Fenster, wenn Sie dazwischen bis auf etwa ${gauge} des Tanks leerfahren und ${days} Tage vergehen:`,

	nothingOnSale: "Haken Sie mindestens einen Kraftstoff an, den es hier gibt.",
	sellsNoLess: (least) =>
		`Die Zapfsäule gibt nicht weniger als ${least} ab: Verlangen Sie mehr, oder senken Sie die Mindestabgabe unter „Einzelheiten“.`,
	nothingAsked: "Verlangen Sie mehr als nichts.",
	doesNotFit: (room) =>
		`So viel passt vielleicht nicht: Sicher passen ${room}. Verlangen Sie das, oder tanken Sie bis zum Abschalten.`,
	full: "Der Tank ist voll: Verfahren Sie erst etwas. Ist er es nicht, notieren Sie die Tankanzeige, wie sie steht.",
	nearlyFull: (room) =>
		`Nur noch etwa ${room} passen hinein, weniger, als die Zapfsäule abgibt: Verfahren Sie erst etwas. Kann das nicht sein, prüfen Sie die notierte Tankanzeige und das Fassungsvermögen des Tanks unter „Auto“.`,
	noPrice: (fuel) => `Geben Sie ein, was ${fuel} kostet: Sonst weiß niemand, was man für das Geld bekommt.`,
	tooLittleMoney:
		"Der Betrag reicht nicht für die Mindestabgabe der Zapfsäule: Erhöhen Sie ihn, oder senken Sie die Mindestabgabe unter „Einzelheiten“.",

	outdated: (changed, pours) =>
		`Geplant, bevor Sie ${changed.map((part) => parts[part]).join(" und ")} geändert haben: ${pours}.`,
	notAnew: (came) => `Wie geplant, bevor ${cause(came)}: Neu rechnen ließ es sich nicht rechtzeitig.`,
	changed: (before, now) => `Geplant ${before}, jetzt ${now}.`,
	still: (now, came) => `Weiterhin ${now}, obwohl ${cause(came)}.`,
	changedBecause: (before, now, came) => `Geplant ${before}, jetzt ${now}, weil ${cause(came)}.`,
	usedUp: "Der erste Kraftstoff hat alles aufgebraucht, was Sie verlangt haben: Speichern Sie den Stopp, wie er ist.",
	nothingFits:
		"Es passt nicht mehr so viel hinein, wie die Zapfsäule mindestens abgibt: Speichern Sie den Stopp, wie er ist. Die Punkte zeigen, wohin das führt.",
	restDoesNotFit: (room) =>
		`Was vom Plan übrig ist, passt nicht mehr sicher: Sicher passen ${room}. Speichern Sie den Stopp, oder verlassen Sie den Plan und tanken Sie den zweiten Kraftstoff bis zum ersten Abschalten.`,
	restTooLittle: "Was übrig ist, ist weniger, als die Zapfsäule abgibt: Speichern Sie den Stopp, wie er ist.",
	clicked: `Vor dem zweiten Kraftstoff hat die Zapfpistole abgeschaltet. ${leaveFull}`,
	clickedEarly: (missing) =>
		`Sie hat ${missing} zu früh abgeschaltet. Kann der Tank noch nicht voll sein, saß die Zapfpistole schlecht oder der Kraftstoff hat geschäumt: Setzen Sie sie neu an, tanken Sie weiter, und nehmen Sie das Abschalten unten zurück. ${leaveFull}`,
};
