import type { Thing, Words } from "../en/doubt";

/** Subject and object. */
const things: Readonly<Record<Thing, readonly [string, string]>> = {
	reading: ["Die Messung", "die Messung"],
	test: ["Der Test", "den Test"],
	trim: ["Die Gemischkorrektur", "die Gemischkorrektur"],
	stop: ["Der Tankstopp", "den Tankstopp"],
	level: ["Der Tankstand", "den Tankstand"],
	start: ["Der Anfang", "den Anfang"],
	gauge: ["Die Tankanzeige", "die Tankanzeige"],
	toClick: ["Das Abschalten", "das Abschalten"],
	odometerKm: ["Der Kilometerstand", "den Kilometerstand"],
};
const capitalized = (text: string) => text[0].toUpperCase() + text.slice(1);

export const words: Words = {
	title: "Die letzten Einträge widersprechen sich",
	verdict: {
		line: "Lade\u00addruck: jetzt nicht",
		more: "Die letzten Einträge widersprechen sich: Klären Sie das zuerst.",
	},
	settle: "Klären",
	untilSettled:
		"Verlassen Sie sich nicht auf die Zahl für den Tank, bis das geklärt ist: Fahren Sie ohne Ladedruck, und fragen Sie Ihren Tuner.",

	failed: "Die Einträge ließen sich nicht abwägen. Laden Sie die App neu, und versuchen Sie es noch einmal.",
	toTank: "Zurück zum Tank",
	weighing: "Es wird abgewogen, was schiefgegangen sein kann …",
	goTogether: "Die letzten Einträge passen zusammen",
	nothingContradicts: (now) =>
		`Keiner widerspricht den anderen.${now ? ` Im Tank sind etwa ${now.content}, 9 von 10: ${now.range}.` : ""}`,
	inQuestion: "Um diese Einträge geht es",
	behind: "Was dahinter stecken kann",
	noSlip: "Kein einzelnes Versehen erklärt diese Einträge. Gehen Sie sie durch, oder messen Sie noch einmal.",
	others: (count, weight) => `${count === 1 ? "Eine weitere" : `Alle ${count} anderen`} zusammen: ${weight}.`,
	howLikely:
		"Wie wahrscheinlich jede Erklärung ist, folgt daraus, wie oft solche Versehen vorkommen und wie gut die Einträge dann zusammenpassen. Angenommen wird immer nur ein Fehler auf einmal.",
	again: "Noch einmal messen",
	enter: "Messung eintragen",
	checkTitle: "Stimmt alles so?",
	checkAbout:
		"Dann sagen Sie es: Plakette, Benachrichtigungen und die Liste der Autos lassen es ruhen, bis ein neuer Eintrag kommt. Die Seite Tank sagt es weiter, denn die Zahlen passen noch immer nicht zusammen.",
	check: "Ich habe es geprüft",
	checked:
		"Sie haben es durchgesehen: Plakette, Benachrichtigungen und die Liste der Autos lassen es ruhen, bis ein neuer Eintrag kommt.",

	leftAlone:
		"Wenn Sie es lassen, wie es ist, bleibt der Hinweis, bis zwei oder drei weitere Stopps im Logbuch stehen. Was Sie hier ändern, bleibt als storniert im Logbuch und lässt sich wiederherstellen.",

	togetherUnlikely: (chance) =>
		`Zusammengenommen passen die letzten Einträge kaum: Dass mit ihnen alles stimmt, hat eine Chance von ${chance}.`,
	disagrees: (entry, chance) => `${entry} passt nicht in die Rechnung: eine Chance von ${chance}.`,
	impossibleLevel: (on) => `Was am ${on} über den Füllstand gesagt wurde, passt nicht in den Tank.`,
	impossibleDistance: (odometer) => `${odometer} passt nicht zu dem Kraftstoff, der im Tank war.`,
	nothingLeftOut: "Die Rechnung nimmt jeden Eintrag, wie er ist; nichts bleibt außen vor.",
	treatments: {
		disagrees: (rubbishOneIn) =>
			`Die Rechnung hält eine von ${rubbishOneIn} Messungen für unbrauchbar. Die widersprechende zählt trotzdem mit, aber umso weniger, je schlechter sie passt.`,
		impossibleLevel: () =>
			"Was dort über den Füllstand gesagt wurde, bleibt aus der Rechnung; eine Füllung selbst zählt.",
		impossibleDistance: () => "Dieser Kilometerstand bleibt aus der Rechnung; alles andere am Eintrag zählt.",
	},
	marks: {
		disagrees: (chance) => `widerspricht: eine Chance von ${chance}`,
		impossibleLevel: "passt nicht in den Tank",
		impossibleDistance: "Strecke passt nicht",
	},

	tankReading: (content, on) => `Die Messung von ${content} am ${on}`,
	trimReading: (trim, on) => `Die Gemischkorrektur von ${trim} am ${on}`,
	pumpReading: (fuel, place, content, on) => `Der Test von „${fuel}“ (${place}, ${content}) am ${on}`,
	levelNote: (share, on) => `Der notierte Tankstand von ${share} am ${on}`,
	fill: (on) => `Die Füllung am ${on}`,
	start: (on) => `Der Anfang am ${on}`,
	odometer: (on, distance) => `Der Kilometerstand vom ${on}${distance === null ? "" : ` (${distance})`}`,

	isWrong: (entry) => `${entry} ist falsch.`,
	misread: (entry) => `${entry} ist falsch abgelesen oder vertippt.`,
	gaugeMisread: (on, share) =>
		`Die am ${on} notierte Tankanzeige${share === null ? "" : ` (${share} des Tanks)`} ist falsch abgelesen oder vertippt.`,
	clickedEarly: (on) =>
		`Die Zapfpistole hat am ${on} zu früh abgeschaltet, oder es wurde nicht bis zum Abschalten getankt.`,
	mistyped: (odometer) => `${odometer} ist vertippt.`,
	startWrong: (contents) =>
		`Am Anfang war nicht im Tank, was angegeben wurde${contents === null ? "" : ` (${contents})`}.`,
	otherAmount: (really, fuel, on, said, slip) => {
		const slips = {
			point: "das Komma ist verrutscht",
			gallons: "Gallonen wurden für Liter gehalten",
			litres: "Liter wurden für Gallonen gehalten",
		};
		return `Am ${on} haben Sie ${really} „${fuel}“ getankt, nicht ${said}: ${slips[slip]}.`;
	},
	otherProduct: (amount, on, really, said) => `Die ${amount} vom ${on} waren ${really}, nicht ${said}.`,
	exchanged: (one, other, on) => `Die Mengen von ${one} und ${other} am ${on} wurden vertauscht.`,
	product: (name, limits) => `„${name}“${limits ? ` (${limits.low} bis ${limits.high})` : ""}`,
	outsideLabel: (fuel, on) =>
		`Was die Zapfsäule am ${on} als „${fuel}“ abgab, lag weit außerhalb ihrer Angabe, oder es war ein anderer Schlauch.`,
	neverEntered: (fuel, before, on) =>
		`Eine Füllung mit „${fuel}“ vor dem ${before === "stop" ? "Tankstopp" : "Tankstand"} vom ${on} wurde nie eingetragen.`,
	nothingWrong: "Es ist kein Fehler: Alle stimmen, und es ist Zufall.",
	noSlipShort: "Kein einzelnes Versehen erklärt es.",

	sure: {
		almost: "So gut wie sicher",
		very: "Sehr wahrscheinlich",
		probably: "Wahrscheinlich",
		perhaps: "Vielleicht",
	},
	likely: (how, weight, sentence) => `${how} (${weight}): ${sentence}`,
	over99: "über 99\u00a0%",
	oneIn: (count) => `1 zu ${count}`,
	lessThanOneIn: (count) => `weniger als 1 zu ${count}`,

	takeBack: (thing) => `${capitalized(things[thing][1])} zurücknehmen`,
	correct: (thing) => `${capitalized(things[thing][1])} korrigieren`,
	correctAmount: (amount) => `Auf ${amount} korrigieren`,
	correctProduct: (fuel) => `In „${fuel}“ korrigieren`,
	exchange: "Mengen tauschen",
	enterFill: "Diese Füllung eintragen",
	testPump: (place) => (place === undefined ? "Zapfsäule testen" : `Zapfsäule testen: ${place}`),
	isVoid: (thing) => `${things[thing][0]} ist storniert.`,
	countsWithout: (thing, part) => `${things[thing][0]} zählt ohne ${things[part][1]}.`,
	isCorrected: (thing) => `${things[thing][0]} ist korrigiert.`,
	filledIn: "Es ist ausgefüllt: Prüfen Sie es, und speichern Sie.",
	begun: "Das hatten Sie schon angefangen.",

	measureAgain: {
		another:
			"Messen Sie den Tank noch einmal, am besten mit einem anderen Gerät. Kommt dasselbe heraus, stimmt die Messung, und etwas anderes ist falsch; kommt heraus, was die Rechnung sagt, war die Messung falsch.",
		gauge:
			"Schauen Sie noch einmal auf die Tankanzeige, und notieren Sie sie: Wo sie jetzt steht, unterscheidet eine falsche Menge von einer falschen Notiz.",
		tank: "Messen Sie den Tank: Sein Gehalt unterscheidet die meisten dieser Erklärungen.",
	},
};
