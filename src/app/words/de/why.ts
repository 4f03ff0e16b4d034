import type { Way, Words } from "../en/why";

const ways: Readonly<Record<Way, string>> = {
	gauge: "Notieren Sie vor dem Tanken die Tankanzeige",
	odometer: "notieren Sie den Kilometerstand",
	click: "tanken Sie bis zum ersten Abschalten der Zapfpistole",
};

function listed(all: readonly Way[]): string {
	const said = all.map((way) => ways[way]);
	return said.length < 2 ? said.join("") : `${said.slice(0, -1).join(", ")} und ${said[said.length - 1]}`;
}
const upper = (text: string) => text[0].toUpperCase() + text.slice(1);
const lower = (text: string) => text[0].toLowerCase() + text.slice(1);

export const words: Words = {
	failed: "Die Rechnung ließ sich nicht zerlegen. Laden Sie die App neu, und versuchen Sie es noch einmal.",
	reckoning: "Die Rechnung wird zerlegt …",
	nothingTitle: "Über diesen Tank ist noch nichts bekannt",
	nothing: "Tragen Sie eine Füllung ein, dann steht hier, wie gerechnet wurde.",
	record: "Füllung eintragen",
	why: "Warum diese Zahl",
	title: (content, range) => `Warum etwa ${content}, 9 von 10: ${range}`,
	helpMost: "Was am meisten hülfe",
	measure: "Messung eintragen",
	measureNow: "Was eine Messung jetzt wert ist",

	startOf: (on) => `Was am Anfang im Tank war (${on})`,
	beforeFirst: "Was vor dem ersten Eintrag im Tank war",
	older: (before) => `Was vor dem Tankstopp vom ${before} im Tank war`,
	delivered: (fuel, where) => `Was „${fuel}“ vom ${where} wirklich war`,
	heel: (before) => `Wie viel vor dem Tankstopp vom ${before} noch im Tank war`,
	area: (fuel) => `Wie stark „${fuel}“ in der Gegend ist`,
	capacity: "Wie viel der Tank wirklich fasst",
	gauge: "Wie weit die Tankanzeige danebenliegt",
	consumption: "Was das Auto verbraucht",
	trims: (calibratedFor) => `Wie weit die Gemischkorrektur bei der Abstimmung für ${calibratedFor} danebenliegt`,
	dateAndPlace: (date, place) => `${date} (${place})`,

	points: (points) => `${points}\u00a0Punkte`,
	nextToNothing: "fast nichts würde wegfallen",
	wouldBecome: (now, then) => `dann ${then} statt ${now}`,
	known: "Fast nichts ist offen: Was im Tank ist, ist bekannt.",
	manySmall: "Nichts sticht heraus: Viele kleine Dinge machen zusammen die Unsicherheit.",
	reason: (most, source, after, before) =>
		`${most ? "Der größte Teil" : "Der größte einzelne Teil"} der Unsicherheit ist eine Frage: ${lower(source)}. Wäre das genau bekannt, würden 9 von 10 etwa ${after} statt ${before} umspannen.`,

	measureOnce:
		"Messen Sie den Tank einmal, mit einem Wassertest oder einem Ethanolmessgerät: Was davor war, zählt dann kaum noch.",
	testPump: (fuel, place) =>
		`Testen Sie „${fuel}“ ${place === undefined ? "an der Zapfsäule" : `(${place})`}, bevor Sie das nächste Mal tanken, und nennen Sie den Ort: Was ein Test sagt, wird behalten, und er sagt auch etwas über diese Füllung. Über den Tank, wie er jetzt ist, sagt eine Messung des Tanks mehr.`,
	tellLevel: (all) => `${upper(listed(all))}: Dann weiß die Rechnung, wie viel noch da war.`,
	fillWhenEmpty:
		"Tanken Sie, wenn der Tank so leer ist, wie Sie es wagen: Je weniger noch da ist, desto weniger zählt dessen Menge, und die Rechnung weiß, wie viel es war.",
	learnTank:
		"Notieren Sie vor dem Tanken die Tankanzeige, und tanken Sie bis zum ersten Abschalten der Zapfpistole: Aus beidem lernt die Rechnung Tank und Tankanzeige kennen.",
	learnConsumption:
		"Notieren Sie bei jedem Tankstopp den Kilometerstand: Von einem zum nächsten lernt die Rechnung, was das Auto verbraucht.",
	learnTrims:
		"Nehmen Sie die Gemischkorrektur auf, wenn der Tank gerade gemessen wurde oder nur Benzin enthält: Von da an weiß die Rechnung, wie weit sie danebenliegt.",

	doubtFrom: "Woher die Unsicherheit kommt",
	doubtBar: (span) =>
		`Ein voller Balken ist die Unsicherheit jetzt: 9 von 10 umspannen ${span}. Der dunkle Teil fiele im Mittel weg, wenn dieses eine genau bekannt wäre. Die Teile überlappen sich und ergeben zusammen nicht das Ganze: Eine bekannte Füllung sagt auch etwas über andere von denselben Zapfsäulen.`,
	olderFuel: (before) =>
		`Kraftstoff aus der Zeit vor dem Tankstopp vom ${before} macht inzwischen weniger als 2\u00a0% der Varianz aus.`,
	shares: "Dasselbe als Anteile der Varianz",
	sharesCaption:
		"Anteil an der Varianz des Gehalts, der wegfällt, sobald etwas bekannt ist, und der Bereich, der dann bleibt",
	shareHeads: ["Genau bekannt", "Anteil", "9 von 10 dann"],
	rest: (count, beside) =>
		`${beside ? "Alles Übrige zusammen" : "Alles zusammen"}, ${count === 1 ? "eine Sache" : `${count} Dinge`}`,

	evidenceFailed:
		"Was die Messungen bewirken, ließ sich nicht berechnen. Laden Sie die App neu, und versuchen Sie es noch einmal.",
	evidenceReckoning: "Es wird ohne jede einzelne Messung neu gerechnet …",
	helps: "Was schon hilft",
	noEvidence:
		"In diesem Teil der Rechnung gibt es keine Messung, keine Tankanzeige, kein Abschalten und keinen Kilometerstand. Jedes davon würde den Bereich enger machen.",
	evidenceBar:
		"Jedes wurde einmal weggelassen und ohne es neu gerechnet. Ein voller Balken ist die Unsicherheit ohne es, der dunkle Teil das, was es davon nimmt.",
	untried: (count) =>
		count === 1 ? "Ein älterer Eintrag wurde nicht geprüft." : `${count} ältere Einträge wurden nicht geprüft.`,
	gaugeNoted: (on) => `Die am ${on} notierte Tankanzeige`,
	clicked: (on) => `Das Abschalten der Zapfpistole am ${on}`,
	odometerNoted: (on) => `Der am ${on} notierte Kilometerstand`,
	pumpTest: (fuel, place, on) => `Der Test von „${fuel}“ am ${on} (${place})`,
	tankMeasured: (on) => `Die Messung des Tanks am ${on}`,
	trimRead: (on) => `Die am ${on} abgelesene Gemischkorrektur`,
	without: (without, now) => `ohne dies würden 9 von 10 ${without} statt ${now} umspannen`,
	widens: (without, now) =>
		`ohne dies würden 9 von 10 ${without} statt ${now} umspannen: Es passt nicht ganz zum Rest und macht den Bereich breiter`,
	silent: (count, more) => {
		const changes = count === 1 ? "ändert" : "ändern";
		return `${count}${more ? (count === 1 ? " weiteres" : " weitere") : ""} ${changes} für sich fast nichts: Andere sagen dasselbe, oder es ist lange her.`;
	},

	origins: "Woher der Kraftstoff im Tank kommt",
	picture: (content) =>
		`Eine Säule für jeden Kraftstoff im Tank, so breit wie sein Anteil und so hoch wie sein Ethanolgehalt; die Linie quer ist das Gemisch, ${content}. Die Liste darunter sagt dasselbe in Worten.`,
	pictureKey:
		"Breit ist viel Kraftstoff, hoch ist viel Ethanol. Was über der Linie steht, füllt auf, was unter ihr fehlt: Die Linie ist das Gemisch. Die senkrechten Striche sind 9 von 10.",
	origin: (fuel, where) => `„${fuel}“ vom ${where}`,
	olderOrLess: "Alles Ältere oder Kleinere",
	originShare: (share, volume, content, ofEthanol) =>
		`${share} des Kraftstoffs, ${volume}, mit ${content}${ofEthanol === null ? "" : `: ${ofEthanol} des Ethanols`}`,

	stops: "Stopp für Stopp",
	stopsHow:
		"So, wie es jetzt gesehen wird, das Letzte zuerst: Spätere Einträge sagen auch etwas über frühere Stopps, deshalb kann es von dem abweichen, was damals im Logbuch stand. In Klammern steht, wo die Wahrheit neun von zehn Malen liegt.",
	first: "Zuerst",
	left: (volume, content) => `${volume} übrig, mit ${content}`,
	poured: (volume, fuel, content) => `${volume} „${fuel}“, ${content}`,
};
