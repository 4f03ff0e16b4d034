const things = {
	reading: "reading",
	test: "test",
	trim: "fuel trim",
	stop: "stop",
	level: "gauge note",
	start: "start",
	gauge: "gauge",
	toClick: "click",
	odometerKm: "odometer",
};
/** An entry, or a part of one. */
export type Thing = keyof typeof things;
type Part = "gauge" | "toClick" | "odometerKm";

/** A contradiction: what disagrees, what may be behind it and how likely, and what settles it. */
export const words = {
	title: "The last entries contradict each other",
	verdict: { line: "Boost: not now", more: "The last entries contradict each other: settle that first." },
	settle: "Settle it",
	untilSettled: "Until it is settled, do not rely on the tank’s number: stay out of boost, and ask your tuner.",

	failed: "The entries could not be weighed. Reload the app and try again.",
	toTank: "Back to the tank",
	weighing: "Weighing what may have gone wrong…",
	goTogether: "The last entries go together",
	nothingContradicts: (now: { readonly content: string; readonly range: string } | null) =>
		`Nothing among them contradicts the rest.${now ? ` The tank holds about ${now.content}, 9 in 10: ${now.range}.` : ""}`,
	inQuestion: "The entries in question",
	behind: "What may be behind it",
	noSlip: "No single slip explains these entries. Look through them, or measure again.",
	others: (count: number, weight: string) => `${count === 1 ? "One more" : `All ${count} others`} together: ${weight}.`,
	howLikely:
		"How likely each is comes from how often such slips happen and how well the entries then go together. One thing at a time is supposed wrong.",
	again: "Measure again",
	enter: "Enter a measurement",
	checkTitle: "All of it is right?",
	checkAbout:
		"Then say so: the badge, the notifications and the list of cars leave it alone until a new entry comes. The Tank screen goes on telling, for the numbers still do not go together.",
	check: "I checked",
	checked:
		"You have gone through it: badge, notifications and the list of cars leave it alone until a new entry comes.",

	leftAlone:
		"If you leave it as it is, it is called out until two or three more stops are in the log. What you change here stays in the log as void, and can be brought back.",

	togetherUnlikely: (chance: string) =>
		`Taken together, the last entries hardly fit: that nothing is wrong with them has a chance of ${chance}.`,
	disagrees: (entry: string, chance: string) => `${entry} disagrees with the account: a chance of ${chance}.`,
	impossibleLevel: (on: string) => `What was said of the level on ${on} does not fit in the tank.`,
	impossibleDistance: (odometer: string) => `${odometer} does not go with the fuel that was in the tank.`,
	nothingLeftOut: "The account takes every entry as it stands; nothing is left out.",
	treatments: {
		disagrees: (rubbishOneIn: number) =>
			`The account takes one reading in ${rubbishOneIn} for rubbish. It still weighs the one that disagrees, but the less it fits, the less it counts.`,
		impossibleLevel: () => "What was said of the level there is left out of the account; a fill itself counts.",
		impossibleDistance: () => "That odometer is left out of the account; all else in the entry counts.",
	},
	/** An entry's own mark among the others. */
	marks: {
		disagrees: (chance: string) => `disagrees: a chance of ${chance}`,
		impossibleLevel: "does not fit in the tank",
		impossibleDistance: "distance does not fit",
	},

	/** Entries as the beginning of a sentence. */
	tankReading: (content: string, on: string) => `The reading of ${content} on ${on}`,
	trimReading: (trim: string, on: string) => `The fuel trim of ${trim} on ${on}`,
	pumpReading: (fuel: string, place: string, content: string, on: string) =>
		`The test of “${fuel}” at ${place}, ${content}, on ${on}`,
	levelNote: (share: string, on: string) => `The gauge note of ${share} on ${on}`,
	fill: (on: string) => `The fill on ${on}`,
	start: (on: string) => `The start on ${on}`,
	odometer: (on: string, distance: string | null) =>
		`The odometer of ${on}${distance === null ? "" : `, ${distance},`}`,

	isWrong: (entry: string) => `${entry} is wrong.`,
	misread: (entry: string) => `${entry} was misread or mistyped.`,
	gaugeMisread: (on: string, share: string | null) =>
		`The gauge noted on ${on}${share === null ? "" : `, ${share} of the tank,`} was misread or mistyped.`,
	clickedEarly: (on: string) => `The nozzle clicked too early on ${on}, or the tank was not filled until it did.`,
	mistyped: (odometer: string) => `${odometer} is mistyped.`,
	startWrong: (contents: string | null) =>
		`The tank did not hold at the start what was said${contents === null ? "" : `, ${contents}`}.`,
	otherAmount: (really: string, fuel: string, on: string, said: string, slip: "point" | "gallons" | "litres") => {
		const slips = {
			point: "the decimal point slipped",
			gallons: "gallons were taken for litres",
			litres: "litres were taken for gallons",
		};
		return `You poured ${really} of “${fuel}” on ${on}, not ${said}: ${slips[slip]}.`;
	},
	/** `really`, `said`: as `product` tells them. */
	otherProduct: (amount: string, on: string, really: string, said: string) =>
		`The ${amount} of ${on} were ${really}, not ${said}.`,
	exchanged: (one: string, other: string, on: string) => `The amounts of ${one} and ${other} on ${on} were exchanged.`,
	/** `limits`: where the name alone does not tell it from another. */
	product: (name: string, limits: { readonly low: string; readonly high: string } | null) =>
		`“${name}”${limits ? ` (${limits.low} to ${limits.high})` : ""}`,
	outsideLabel: (fuel: string, on: string) =>
		`What the pump gave as “${fuel}” on ${on} was far outside its label, or it was another hose.`,
	neverEntered: (fuel: string, before: "stop" | "level", on: string) =>
		`A fill of “${fuel}” before the ${before === "stop" ? "stop" : "gauge note"} of ${on} was never entered.`,
	nothingWrong: "Nothing is wrong: all of them are right, and it is chance.",
	noSlipShort: "No single slip explains it.",

	sure: { almost: "Almost surely", very: "Very likely", probably: "Probably", perhaps: "Perhaps" },
	likely: (how: string, weight: string, sentence: string) => `${how} (${weight}): ${sentence}`,
	over99: "over 99\u00a0%",
	oneIn: (count: string) => `1 in ${count}`,
	lessThanOneIn: (count: string) => `less than 1 in ${count}`,

	takeBack: (thing: Thing) => `Take the ${things[thing]} back`,
	correct: (thing: Thing) => `Correct the ${things[thing]}`,
	correctAmount: (amount: string) => `Correct it to ${amount}`,
	correctProduct: (fuel: string) => `Correct it to “${fuel}”`,
	exchange: "Exchange the amounts",
	enterFill: "Enter that fill",
	testPump: (place: string | undefined) => (place === undefined ? "Test the pump" : `Test the pump at ${place}`),
	isVoid: (thing: Thing) => `The ${things[thing]} is void.`,
	countsWithout: (thing: Thing, part: Part) => `The ${things[thing]} counts without its ${things[part]}.`,
	isCorrected: (thing: Thing) => `The ${things[thing]} is corrected.`,
	filledIn: "It is filled in: check it, and save.",
	begun: "Here is what you had begun to type.",

	measureAgain: {
		another:
			"Measure the tank again, best with another instrument. If it says the same, the reading is right and something else is wrong; if it says what the account says, the reading was wrong.",
		gauge: "Look at the gauge once more, and note it: where it stands now tells a wrong amount from a wrong note.",
		tank: "Measure the tank: its content tells most of these apart.",
	},
};

export type Words = typeof words;
