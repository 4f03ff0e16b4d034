import type { Words } from "../en/measures";

const shares = {
	tenth: "ein Zehntel",
	fifth: "ein Fünftel",
	quarter: "ein Viertel",
	third: "ein Drittel",
	twoThirds: "zwei Drittel",
	threeQuarters: "drei Viertel",
	nearlyAll: "fast alles",
};
const at = { beforeFill: " vor dem Tanken", now: "", after: " danach" };

export const words: Words = {
	failed:
		"Was eine Messung wert ist, ließ sich nicht berechnen. Laden Sie die App neu, und versuchen Sie es noch einmal.",
	reckoning: "Es wird gerechnet, was eine Messung sagen würde …",
	bar: (filling, span) =>
		`Ein voller Balken ist die Unsicherheit des Gehalts ${filling ? "nach dieser Füllung" : "jetzt im Tank"}: 9 von 10 umspannen ${span}. Der dunkle Teil ist, was die Messung voraussichtlich davon nimmt.`,

	pumpSample: (moment, fuel) =>
		`ein Test ${fuel === null ? "des Kraftstoffs dieser Zapfsäule" : `von „${fuel}“ aus dieser Zapfsäule`}${at[moment]}`,
	gauge: (moment) => `ein Blick auf die Tankanzeige${at[moment]}`,
	tankSample: (moment) => `ein Wassertest des Tanks${at[moment]}`,
	analyser: (moment) => `eine Messung des Tanks mit dem Ethanolmessgerät${at[moment]}`,
	trim: (moment) =>
		moment === "after"
			? "die Gemischkorrektur, sobald sie auf dem neuen Gemisch gelernt ist,"
			: `die Gemischkorrektur,${at[moment] || " jetzt"} abgelesen,`,
	click: "stattdessen bis zum Abschalten zu tanken",

	narrows: (share, again) =>
		share === "half" ? "die Unsicherheit halbieren" : `${shares[share]}${again ? "" : " der Unsicherheit"} nehmen`,
	raises: (from, to) => `die Chance, im Fenster zu liegen, erhöhen (jetzt ${from}, dann ${to})`,
	raisesALittle: "die Chance, im Fenster zu liegen, ein wenig erhöhen",
	would: (doing, effects) => `${doing} würde ${effects.join(" und ")}`,
	sentence: (all) => `${all.join("; ")}.`,
	nothing: "Nichts, was Sie jetzt messen könnten, würde Ihnen viel mehr sagen.",
};
