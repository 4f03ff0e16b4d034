/** The ways of measuring, and what all their forms have around the figures. */
export const words = {
	openingLog: "Opening the log…",
	openingForm: "Opening the form…",
	title: "Enter a measurement",
	asked: "How did you measure? Before anything is saved you see what it would change.",
	ways: {
		analyser: { name: "Ethanol analyser or sensor gauge", worth: "The tank, give or take 2.5 points." },
		tube: { name: "Water test", worth: "The tank or a pump’s fuel, give or take 2 to 4 points." },
		reported: { name: "The car’s own report", worth: "By a scan tool; give or take 3 to 8 points." },
		trim: { name: "Fuel trims", worth: "By a scan tool; a check, give or take 8 points." },
		gauge: { name: "A look at the gauge", worth: "How much is left; it sharpens the next fill." },
	},
	dataLog: {
		name: "A data log",
		worth: "Any logger’s CSV: the trims of a whole drive, and lambda under load.",
	},
	otherWays: "Other ways to measure",
	howTo: "How to do it",
	cautions: "Cautions",
	figures: "The figures",
	when: (when: string) => `When: ${when}`,
	now: "now",
	mend: "Something above needs mending; nothing is saved yet.",
	save: "Save it",
	startOver: "Start this form over",
	emptied: "The form is empty.",
	undo: "Undo",
	sd: "Give or take, points",
	sdMeans: (why: string) => `The truth is within this two times in three. ${why}`,

	wouldDo: "What it would do",
	incomplete: "Once the figures above are complete, you see here what they would change.",
	reckoning: "Reckoning…",
	strokes: "Short strokes on the axis: the dots as they stand now.",
	mostLikely: "Most likely",
	nineInTen: "9 in 10",
	verdict: "Verdict",
	inTank: "In the tank",
	carTrims: "This car trims on its own fuel",
	notKnown: "not known",
	pumpGives: "This pump gives",
	giveOrTake: (value: string, sd: string) => `${value}, give or take ${sd}`,
	fits: "It fits the account.",
	leftOut: (title: string, sure: string, now: readonly string[]) =>
		`${title}. ${sure} ${now.join(" ")} Saved like this, it is left out of the account.`,
	disagrees:
		"It does not fit the account: such a reading had less than 1 chance in 100. Measure again. If it stands, look through the log for a fill that is missing or mistyped.",

	saved: "Saved.",
	savedStays: (content: string) => `Saved. It stays about ${content}.`,
	savedChanged: (from: string, to: string) => `Saved. About ${from} became about ${to}.`,
};

export type Words = typeof words;
