/** What more than one screen says of the blend: products, verdicts, warnings. */
export const words = {
	products: {
		"flex-51-83": "Flex fuel E85 (US)",
		"gasoline-e10": "Gasoline E10 (US)",
		"gasoline-to-10": "Gasoline, up to 10 %",
		"gasoline-e0": "Gasoline, no ethanol",
		"gasoline-e15": "Gasoline E15 (US)",
		"gasoline-e5": "Gasoline E5 (EU)",
		"gasoline-e20": "Gasoline E20 (EU)",
		"flex-e85-eu": "E85 (EU)",
		"flex-e85-au": "E85 (Australia)",
		"gasoline-c": "Gasoline C (Brazil)",
		"ethanol-e98": "Denatured ethanol",
	},
	labelled: (percent: string) => `Flex fuel “${percent}”`,
	soldIn: { US: "United States", EU: "Europe", AU: "Australia", BR: "Brazil", any: "Anywhere" },
	verdicts: {
		yes: { line: "Boost: yes", more: "The blend is inside the calibration’s window, as surely as you asked for." },
		unsure: { line: "Boost: not now", more: "The blend may be outside the calibration’s window." },
		no: { line: "Boost: no", more: "The blend is more likely outside the calibration’s window than inside." },
		noWindow: {
			line: "Boost: unknown",
			more: "No calibration is entered, so there is no window to hold the blend against.",
		},
		fresh: {
			line: "Boost: yes, once it has arrived",
			more: "The new blend is inside the calibration’s window, but the old one is in the lines until some miles are driven.",
		},
	},
	/** ANSI Z535.6 keeps NOTICE for what can harm property but nobody's body; these can only harm the engine. */
	signal: "NOTICE",
	howLikely: (inTwenty: string, chance: string, budget: string) => `${inTwenty} (${chance}), accepted are ${budget}`,
	measure: "Measure, if you can: “What would settle it?” on the Tank screen says which test is worth it.",
	lean: {
		likely: "Too much ethanol: lean under boost",
		possible: "Maybe too much ethanol",
		sure: (likely: string) => `Chance of being above the window: ${likely}.`,
		now: "Stay out of boost and off full throttle.",
		flash: "If your tuner gave you a calibration made for more ethanol, flash it; ask the tuner before you go on.",
		why: (calibration: string) =>
			`Above the window of “${calibration}” the injectors deliver too little fuel wherever the engine does not correct itself. Many engines do not carry what they learned at part load into full load (13 of 25 cars screened, CRC E-87-1).`,
	},
	knock: {
		likely: "Too little ethanol: it may knock",
		possible: "Maybe too little ethanol",
		sure: (likely: string) => `Chance of being below the window: ${likely}.`,
		now: "Stay out of boost.",
		flash: "If your tuner gave you a calibration made for less ethanol, go back to it.",
		why: (calibration: string) =>
			`Below the window of “${calibration}” the fuel resists knock less than its boost and timing ask for.`,
	},
	disagrees: {
		title: "The last reading does not fit the account",
		sure: "Such a reading had less than a 1 in 100 chance.",
		now: ["Measure again.", "Look through the log for a fill that is missing or mistyped."],
		why: "Either this reading is wrong, or a fill is missing or mistyped, or a pump sold fuel outside its label. The estimate leans on both and is wider for it.",
	},
	impossibleLevel: {
		title: "This does not fit in the tank",
		sure: "With what the log says the tank would hold more than it can.",
		now: ["Check the litres or gallons of the last fill, the tank’s capacity and the unit."],
		why: "What was said about the level was left out of the account; the fill itself counts.",
	},
	impossibleDistance: {
		title: "Distance and fuel do not go together",
		sure: "No fuel that was in the tank goes with the distance since the last odometer reading.",
		now: ["Check the odometer of this entry and of the one before.", "Look for a fill that is missing from the log."],
		why: "The odometer was left out of the account; all else in the entry counts.",
	},
};

export type Words = typeof words;
