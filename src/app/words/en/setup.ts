/** The first car, or another one. */
export const words = {
	opening: "Opening the form…",
	partMissing: "A part of the app could not be loaded: reload it once there is a network.",
	form: "Set up a car",
	name: "Name of the car",
	nameHint: "So that you know whose account you read. May stay empty.",
	/** Of a car without a name. */
	unnamed: "My car",
	gauge: "Fuel gauge now",
	gaugeHint: "How much is in there says how far the next fill moves the blend.",
	unknown: "I don’t know",
	calibration: "Is there a calibration for a fixed blend?",
	calibrationHint: "The warnings hold the tank against what it tolerates.",
	calibrationYes: "Yes, one is flashed",
	calibrationNo: "I don’t know / none yet",
	mend: "Something above needs mending; nothing is saved yet.",
	busy: "One moment…",
	start: "Start the account",
	cautions: "Cautions, in short",
	hereBefore: "Been here before?",
	reports: "I am a tuner: open tank reports",
	backup: "I have a backup file",
	first: "Which car, and what is in its tank?",
	another: "Another car",
	welcome:
		"Five questions, under a minute. “I don’t know” is a good answer: the account then begins wider and narrows with every fill. Nothing you type leaves this phone.",
	lookAround: "Look around with an invented car first",
	back: "Back, without another car",

	contents: "What is in the tank now?",
	contentsHint: "The next fill mixes with it.",
	limits: "Between two limits",
	measuredWay: "Measured",
	low: "At least, %",
	high: "At most, %",
	measured: "Measured, %",
	sd: "± points",
	sdHint: "Two measurements in three are within these points of the truth.",
};

export type Words = typeof words;
