/** The table of mixes, on the screen, on paper and as a picture. */
import type { MixVerdict } from "../../../domain/plan/mixTable";

export const words = {
	readingLog: "Reading the log…",
	nothingKnown: "Nothing is known of this tank yet",
	nothingKnownMore: "What a mix makes of the tank hangs on what the tank holds. Record a fill, and there is a table.",
	record: "Record a fill",
	opening: "Opening the form…",
	full: "The gauge says full: nothing more goes in, so there is nothing to mix.",
	failed: "The table could not be reckoned. Reload the app and try again.",
	reckoning: "Reckoning the table…",
	/** `gauge`: as read, null where nobody looked. */
	gaugeNow: (gauge: string | null) => `Gauge now: ${gauge ?? "not looked"}`,
	gauge: "Fuel gauge now",
	gaugeHint:
		"Without a look the tank may hold anything from nothing to what the last entry left, and the ranges are wide for it.",
	/** Of the two fuels. */
	inOrder: (first: string, second: string) => `${first}, then ${second}`,
	firstFuel: "First fuel",
	thenFuel: "Then",
	boughtAt: "Bought at",
	unnamedPlace: "A place that is not named",
	otherWay: "The other way round",
	boughtLast: "Bought last",
	nothingFits: "None of these amounts fits into the tank: look at the gauge again.",

	table: "Table of mixes",
	heading: "What a mix makes of this tank",
	drawn: "The table drawn",
	carAt: (car: string, when: string) => `${car}, ${when}`,
	fuels: (first: string, second: string, place: string | null) =>
		`${first}. ${second}.${place === null ? "" : ` Bought at ${place}.`}`,
	/** A fuel and what its label allows. */
	fuel: (name: string, range: string) => `${name}: ${range}`,
	label: (first: string, second: string, finding: string | null) =>
		`What amounts of “${first}” and then “${second}” make of this tank. ${finding ?? ""} The same stands below in words.`,
	/** In the name of the picture's file. */
	fileName: (car: string) => `mixes ${car}`,
	savedAs: (name: string) => `Saved as ${name}.`,
	noPicture: "This browser could not make a picture of it. Printing works all the same.",
	send: "Send as a picture",
	save: "Save as a picture",
	print: "Print it",
	inWords: "The same in words",
	tableInWords: "The table in words",
	toClick: "to the click",
	/** Of what goes in to the click, behind what it leads to. */
	about: (sentence: string, amount: string) => `${sentence} (about ${amount})`,

	caution:
		"An estimate for this tank at this moment only: it stands on what was entered and on what labels allow. It is no measurement, and your tuner’s limits come first.",
	verdicts: {
		inside: "inside the window as surely as asked",
		lean: "maybe too much ethanol: lean",
		knock: "maybe too little ethanol: knock",
	} satisfies Record<MixVerdict, string>,
	shortVerdicts: { inside: "inside", lean: "lean", knock: "knock" } satisfies Record<MixVerdict, string>,
	hardlyFits: "hardly fits",
	goesIn: (chance: string) => `goes in ${chance}`,
	notes:
		"Numbers: percent of ethanol in the tank afterwards, 9 in 10. Click: filled until the nozzle clicks, with what then goes in. –: hardly fits. *: the nozzle may click before.",
	/** Over the rows and over the columns. */
	rows: (unit: string, fuel: string) => `↓ ${unit} of ${fuel}`,
	columns: (unit: string, fuel: string) => `→ then ${unit} of ${fuel}`,
	/** Over a column of about six letters. */
	click: "click",
	assumed: (content: string, range: string, level: string) =>
		`In the tank: about ${content} ethanol, 9 in 10: ${range}. Level: ${level}.`,
	levelUnknown: (most: string) => `anything from empty to ${most}, for nobody looked at the gauge`,
	level: (gauge: string, volume: string, capacity: string) => `gauge ${gauge}, about ${volume} of ${capacity}`,
	noWindow: "No calibration is entered, so no mix is held against a window.",
	window: (name: string, window: string, lean: string, knock: string) =>
		`Window of “${name}”: ${window}. Accepted: too much ${lean}, too little ${knock}.`,
	fromTo: (from: string, to: string) => `${from} to ${to}`,
	found: (first: string, second: string, amounts: string) =>
		`Filled up with “${second}”, ${amounts} of “${first}” before it ends inside the window as surely as asked.`,
	foundNone: (first: string, second: string) =>
		`Filled up with “${second}”, no amount of “${first}” in this table ends inside the window as surely as asked.`,
};

export type Words = typeof words;
