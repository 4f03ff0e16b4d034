import type { Words } from "../en/gaugeLook";

export const words: Words = {
	title: "Blick auf die Tankanzeige",
	about:
		"Fahren ändert das Gemisch nicht. Aber was im Tank bleibt, entscheidet, wie weit die nächste Füllung es verschiebt.",
	steps: ["Auf ebenem Boden stehen, Zündung an.", "Warten, bis die Nadel steht."],
	gauge: "Tankanzeige",
	unknown: "Noch nicht geschaut",
	missing: "Geben Sie an, wo die Tankanzeige steht.",
};
