/** The Tank screen, and the picture of the dots. */
export const words = {
	reading: "Reading the log…",
	nothingTitle: "Nothing is known of this tank yet",
	nothing: "Record a fill, and the account begins. Until then any content is possible.",
	record: "Record a fill",
	verdict: "Verdict",
	median: "Most likely about",
	nineInTen: "9 in 10",
	plan: "What to pump",
	enterCalibration: "Enter the calibration",
	why: "Why this number",
	lastChange: "Last change",
	changed: (when: string, what: string) => `${when}: ${what}.`,
	stays: (content: string) => `It stays about ${content}.`,
	became: (from: string, to: string) => `About ${from} became about ${to}.`,
	measure: "Enter a measurement",
	reckoning: (percent: number) => `Reckoning the log anew: ${percent} % done. What you see is from before.`,
	settle: "What would settle it?",
	running: "How far it goes",
	inside: (inTwenty: string) => `Inside: ${inTwenty}`,
	outside: (above: string, below: string) => `, too much: ${above}, too little: ${below}.`,
	reaching: (volume: string, distance: string, from: number, to: number) =>
		`The engine gets the new blend after the old fuel in the lines is burned, ${volume} or some ${distance}, and the tank has mixed, ${from} to ${to} minutes of driving (common practice). Keep out of boost until then.`,
	behind: "What may be behind it",
	whyTold: "Why am I told?",
	/** What the bracket marks. */
	brackets: { window: "window", label: "label" },
	within: { window: "inside the window", label: "inside the label" },
	spread: (low: string, high: string) => `Twenty equally likely ethanol contents from ${low} to ${high}.`,
	sides: (inside: number, within: string, range: string, above: number, below: number) =>
		`${inside} of them lie ${within} of ${range}, ${above} above and ${below} below.`,
};

export type Words = typeof words;
