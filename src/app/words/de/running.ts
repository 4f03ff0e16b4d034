import type { Words } from "../en/running";

export const words: Words = {
	failed: "Was das Auto verbraucht, ließ sich nicht berechnen. Laden Sie die App neu und versuchen Sie es noch einmal.",
	reckoning: "Der Verbrauch wird gerechnet …",
	unknown:
		"Was das Auto verbraucht, lernt die App aus dem Kilometerstand zweier Stopps. Tragen Sie ihn mit den nächsten Füllungen ein.",
	goes: "Reichweite je Menge",
	burns: "Verbrauch",
	milesPer: (unit) => `Meilen pro ${unit}`,
	litresPer: "L/100\u00a0km",
	about: (median, unit, range) => `etwa ${median}\u00a0${unit}, 9 von 10: ${range}`,
	untilEmpty: "Bis der Tank leer ist",
	learned:
		"Gelernt aus Kilometerstand und Füllungen, für das Gemisch, das jetzt im Tank ist. Der Weg, bis der Tank leer ist, zählt ab dem letzten Eintrag; die Tankanzeige geht vor, und eine Reserve gehört obendrauf.",
};
