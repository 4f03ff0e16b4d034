/** Under the Tank screen: what its numbers and its picture mean. */
export const words = {
	lawfulTitle: "What the labels allow",
	lawful: (range: string) =>
		`${range}, if every pump kept to its label and every look at the gauge was within three standard deviations. Readings of the content do not count here. Some pumps do not keep to their label.`,
	level: (median: string, range: string) => `In the tank: about ${median}, 9 in 10: ${range}.`,
	dotsTitle: "How to read the dots",
	dots: "Each dot is one of twenty equally likely ethanol contents of the tank. Round dots lie inside the calibration’s window, which the bracket marks. A triangle pointing up has too much ethanol, one pointing down too little. So many dots, so many chances in twenty. “9 in 10” is the range that holds the truth nine times in ten, “most likely about” its middle: as often below as above.",
};

export type Words = typeof words;
