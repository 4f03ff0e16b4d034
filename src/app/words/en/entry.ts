/** One entry of the log, and how it is put right. */
import type { ToldEvent } from "../../logView";

type Kind = ToldEvent["kind"];

const kinds: Readonly<Record<Kind, string>> = {
	fill: "stop",
	start: "start",
	level: "gauge note",
	reading: "reading",
	calibration: "flash",
};

export const words = {
	back: "Back to the log",
	notHere: (car: string) => `This entry is not in the log of “${car}”.`,
	says: "What it says",
	/** After the stamp "void". */
	since: (date: string) => `since ${date}`,
	ids: (ids: readonly string[]) => `${ids.length === 1 ? "Id" : "Ids"}: ${ids.join(", ")}`,
	knownOf: (place: string) => `What is known of ${place}`,
	afterIt: "After it",
	about: (content: string) => `about ${content}`,

	putRight: "Put it right",
	wrong: "Something wrong with it?",
	correct: (kind: Kind) => `Correct this ${kinds[kind]}`,
	voidThis: (kind: Kind) => `Void this ${kinds[kind]}`,
	/** `without`: what the account loses. */
	voiding: (without: string, _kind: Kind) => `${without} It stays in the log and can be brought back.`,
	isVoid: (kind: Kind) => `The ${kinds[kind]} is void.`,
	isCorrected: (kind: Kind) => `The ${kinds[kind]} is corrected.`,
	replaced: (kind: Kind) =>
		`A corrected ${kinds[kind]} counts in its place. If you bring this one back, that one will be void.`,
	seeCorrected: (kind: Kind) => `See the corrected ${kinds[kind]}`,
	countsNot: "It counts for nothing now. Brought back, it counts as if it had never been void.",

	did: "What it did",
	inForce: "The calibration in force",
	noneInForce: "No calibration was in force, so there is no window to hold this against.",
	labelsAllowMore:
		"“Labels allow” is where the content lies if every pump kept to its label and every look at the gauge was within three standard deviations; readings of the content do not count there.",
	behind: "What may be behind it",
	figures: {
		median: "Most likely",
		range: "9 in 10",
		above: "Above the window",
		below: "Below the window",
		lawful: "Labels allow",
	},
	noWindow: "no window",

	facts: {
		when: "When",
		place: "Place",
		notNamed: "not named",
		gaugeBefore: "Gauge before",
		gauge: "Gauge",
		notLooked: "not looked",
		ofTank: (share: string) => `${share} of the tank`,
		displayed: "Displayed",
		exactly: (shown: string, litres: string) => `${shown} (exactly ${litres})`,
		labelAllows: "Label allows",
		price: "Price",
		filled: "Filled",
		toClick: "to the nozzle’s first click",
		inTank: "In the tank",
		ethanol: (content: string) => `${content} ethanol`,
		measured: "Measured",
		how: "How",
		onCalibration: "On a calibration for",
		fuel: "Fuel",
		labelled: (fuel: string, range: string) => `${fuel} (label: ${range})`,
		odometer: "Odometer",
		calibration: "Calibration",
		madeFor: "Made for",
		window: "Window",
		accepted: "Accepted chance",
		acceptedChances: (above: string, below: string) => `above: ${above}, below: ${below}`,
	},

	form: {
		opening: "Opening the form…",
		save: "Save the correction",
		leave: "Leave it as it was",
		gaugeThen: "Fuel gauge then",
		noGauge: "Say where the gauge stood, or void the note.",
		wasInTank: "What was in the tank?",
		limits: "Between two limits",
		measuredWay: "Measured",
		low: "At least, % ethanol",
		high: "At most, % ethanol",
		measured: "Measured, % ethanol",
		sd: "Give or take, points",
		sdHint: "The truth is within this two times in three.",
		trim: "Fuel trim, %",
		trimSd: "Give or take, % of trim",
		calibratedFor: "Calibrated for, % ethanol",
		method: "How it was measured",
		mayBeEmpty: "May stay empty.",
		noPlace: "Name the place where it was taken.",
	},
};

export type Words = typeof words;
