/** What the screens are called, in the window's title and for those who hear where they have come to. */
export const words = {
	tank: "Tank",
	fill: "Fill",
	plan: "What to pump",
	log: "Log",
	entry: "Entry of the log",
	correct: "Correct a stop",
	car: "Car",
	calibration: "Calibration",
	costs: "Costs",
	places: "Places",
	place: "Place",
	table: "Table of mixes",
	measure: "Measurement",
	datalog: "Data log",
	engine: "Engine",
	why: "Why this number",
	doubt: "What may be behind it",
	report: "Tank report",
	cars: "All cars",
	reports: "Reports of other cars",
	card: "Calibration card",
	take: "Take over",
	hand: "Hand over",
	setup: "Set up a car",
};

export type Words = typeof words;
