import type { Words } from "../en/picker";

/** Those that are more than the name of a standard. */
const sources: Readonly<Record<string, string>> = {
	"ASTM D5798-11 and later; 16 CFR 306": "ASTM D5798-11 und neuer; 16 CFR 306",
	"16 CFR 306: rounded to the nearest ten": "16 CFR 306: auf den nächsten Zehner gerundet",
	"NREL memo, 26 March 2012: 9 to 10 % by volume": "NREL-Memo vom 26. März 2012: 9 bis 10 Volumenprozent",
	"pump label “up to 10 %”; EN 228 E10": "Angabe „up to 10 %“ an der Zapfsäule; EN 228 E10",
	"state inspection tolerance, NCDA&CS 2013": "Toleranz staatlicher Kontrollen, NCDA&CS 2013",
	"30 % since 1 August 2025, plus or minus one point": "30 % seit 1. August 2025, plus oder minus ein Punkt",
};

export const words: Words = {
	question: "Was tanken Sie?",
	another: "Anderer Kraftstoff",
	labelled: "Flexfuel mit Prozentangabe",
	take: "Nehmen",
	rounded:
		"Angaben in den USA dürfen auf den nächsten Zehner gerundet sein, darum wird mit fünf Punkten nach beiden Seiten gerechnet.",
	own: "Ein eigener Kraftstoff",
	name: "Name",
	from: "Von, % Ethanol",
	to: "Bis, % Ethanol",
	swapped: "Die untere Grenze liegt über der oberen: Tauschen Sie die beiden.",
	use: "Diesen Kraftstoff nehmen",
	source: (given) => (Object.hasOwn(sources, given) ? sources[given] : given),
	entry: (product, range) => `${product}: ${range}`,
};
