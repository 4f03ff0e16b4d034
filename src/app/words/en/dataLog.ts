import { strong } from "../../emphasis";

const rows = (count: number, shown: string) => `${shown} ${count === 1 ? "row" : "rows"}`;
const stretches = (count: number) => `${count} ${count === 1 ? "stretch" : "stretches"}`;

/** A data log: taking it in, its columns, and what it tells of the fuel. */
export const words = {
	openingLog: "Opening the log…",
	openingForm: "Opening the form…",
	choose: "Choose a data log",
	refused: (why: string) => `${why} Nothing was changed.`,
	refusals: {
		empty: "There is nothing in this file: export the log once more, and choose that.",
		picture: "This is a picture: choose the file that your logger saves as CSV or text.",
		pdf: "This is a PDF, which holds pages and no rows: let your logger save the log as CSV.",
		packed: "This is a packed file or a spreadsheet: unpack it, or save the sheet as CSV, and choose that.",
		binary: "This file is no text, perhaps your logger’s own format: let it save the log as CSV.",
		json: "This is JSON, which has no columns: let your logger save the log as CSV. A backup of Heeltap is opened under Car.",
		markup: "This is a web page or XML, which has no columns: let your logger save the log as CSV.",
		oneColumn:
			"Only one column was found at the beginning of this file: let your logger separate the columns by comma, semicolon or tab.",
		noNumbers:
			"No rows of numbers were found at the beginning of this file: choose the log itself, with one row for each moment.",
		unreadable:
			"The phone would not give the file to its end: copy it to the phone’s own storage, and choose it from there.",
		broken: "The app could not read it. Reload the app and try again.",
	},
	tooWide: (most: number) =>
		`More than ${most} columns were found at the beginning of this file: choose the log itself, as your logger saves it.`,
	opening: "Looking into the file…",
	anotherFile: "Another file",
	anotherLog: "Another log",
	reading: "Reading the log",
	readingFile: (name: string) => `Reading “${name}”…`,
	shareRead: "Share of the log that is read",
	stop: "Stop",

	about: "A reading from a data log",
	aboutAny:
		"Any logger’s CSV will do, with one row for each moment: time, short-term and long-term fuel trims, coolant, speed, and throttle or load. With measured and commanded lambda it tells of full load as well.",
	aboutSteady: (warmC: number, windowS: number) =>
		`What counts is steady driving: warm (from ${warmC}\u00a0°C), in closed loop, at part load, for ${windowS}\u00a0s or more at a time. The file stays on this phone, and nothing is saved until you tap.`,
	aboutSafety:
		"The driver watches the road, not the logger. Trims that look right do not make full load safe: many engines do not carry them there (13 of 25 cars screened, CRC E-87-1).",
	otherWays: "Other ways to measure",
	noCalibration:
		"A trim tells of the fuel only against the blend that the car is calibrated for, and no calibration is entered.",
	enterCalibration: "Enter the calibration",

	columns: {
		title: "What is in the columns?",
		once: "Tell it once: files with the same headers are then read the same way. What you do not know can stay out.",
		complete: "All that is needed is there.",
		lacking: (lacks: readonly string[]) => `For a fuel trim there is still missing: ${lacks.join("; ")}.`,
		taken: (header: string, role: string) => `“${header}” is no longer read as ${role}.`,
		useless: "Nothing can be read off the log yet: tell at least the columns that are missing above.",
		read: "Read the log like this",
		itIs: "It is",
		notNeeded: "not needed",
		in: "In",
		asSuggested: "as the values suggest",
		samples: (values: readonly string[]) => `Such as ${values.join(" · ")}`,
		noSample: "Empty at the beginning of the log.",
	},
	roles: {
		time: "Time",
		rpm: "Engine speed",
		speed: "Vehicle speed",
		coolant: "Coolant temperature",
		throttle: "Throttle",
		load: "Engine load",
		manifold: "Manifold pressure",
		short1: "Bank 1: short-term fuel trim",
		long1: "Bank 1: long-term fuel trim",
		short2: "Bank 2: short-term fuel trim",
		long2: "Bank 2: long-term fuel trim",
		total: "Total fuel trim, short and long term in one",
		lambda: "Measured lambda or air–fuel ratio",
		commanded: "Commanded lambda or air–fuel ratio",
		fuelSystem: "Open or closed loop",
		ethanol: "Ethanol content as the car reports it",
	},
	/** Those that are words; all others are told by their sign. */
	units: {
		s: "seconds",
		ms: "milliseconds",
		min: "minutes",
		clock: "time of day",
		fraction: "a share (0.05 for 5 %)",
		factor: "a factor (1.05 for +5 %)",
		AFR: "air–fuel ratio (14.7 at lambda 1)",
		lambda: "lambda",
		state: "as logged",
		rpm: "rpm",
	},
	lacks: {
		time: "the time",
		trims: "short-term and long-term fuel trim of one bank",
		driving: "throttle, engine load or manifold pressure",
	},

	log: "The log",
	isRead: (name: string, counts: boolean) =>
		`“${name}” is read. ${counts ? "This log already counts: a reading of it is in the account." : "Nothing is saved yet."}`,
	facts: {
		read: "Read",
		averaged: (count: number, shown: string, step: string) => `${rows(count, shown)}, averaged over ${step}`,
		time: "Time",
		recordings: (duration: string, recordings: number) => `${duration} in ${recordings} recordings`,
		skipped: "Skipped",
		nothing: "nothing",
		rows,
	},
	halfSeconds: "half seconds",
	seconds: "seconds",
	longSteps: (usual: string) => `The log is so long that it was averaged over longer steps than the usual ${usual}.`,
	skips: {
		noTime: "without a time that can be read",
		backwards: "whose time runs backwards",
		noValues: "without any number",
		otherWidth: "with more or fewer fields than the header",
	},
	skipped: (count: number, shown: string, why: string, line: string) =>
		`${rows(count, shown)} ${why}, the first in line ${line}`,
	howRead: "How the columns were read",
	guessed: (unit: string) => `${unit}, as the values suggest`,
	tellColumns: "Tell what the columns are",

	steady: "Fuel trim of steady driving",
	noTrims: "The log has no fuel trims, or not the short-term and the long-term one of the same bank.",
	trimLead: (trim: string, sd: string) => `${strong(trim)} fuel, give or take ${sd}`,
	noCoolant: "Coolant is not in the log: that the engine was warm is taken for granted. Was it?",
	noSpeed: "Neither vehicle nor engine speed is in the log: idle could not be told from driving, and its trims differ.",
	nothingSteady: (advice: string) =>
		`No stretch of this log is warm, in closed loop and steady for long enough. ${advice}`,
	steadyFor: "Steady for",
	inStretches: (duration: string, count: number) => `${duration} in ${stretches(count)}`,
	bothBanks: "Bank 1 and 2",
	and: (one: string, other: string) => `${one} and ${other}`,
	trimAtLimit:
		"A trim this large is where most engine computers stop correcting: the truth may lie further out. Stay out of boost, and let your tuner look.",
	sdFrom: "Where the give or take comes from",
	sdParts: {
		model: "Fuel or car?",
		modelIs: (sd: string) => `${sd}: what a trim tells of the fuel at all`,
		between: "Stretches",
		within: "Within them",
		banks: "Banks",
		apart: (sd: string) => `${sd}: how far they lie apart`,
	},
	sdAdded: "All are standard uncertainties, added in squares.",
	implied: (content: string, points: string, calibration: string, madeFor: string) =>
		`On its own that would be ${content} ethanol, give or take ${points}\u00a0points, on “${calibration}”, made for ${madeFor}.`,
	unexplained: (side: "below" | "above", calibration: string, madeFor: string) =>
		`No blend explains that on “${calibration}”, made for ${madeFor}: it lies ${side} what any content would bring. Look for another cause.`,
	didNotCount: "What did not count",
	notCounted: (duration: string, why: string) => `${duration}: ${why}`,
	reasons: {
		missing: "not all was logged",
		openLoop: "open loop",
		unsteady: "foot, load or speed were moving",
		frozen: "the trims stood at zero, as when they are switched off",
		lambdaOff: "lambda was not at 1, as in open loop",
		unsettled: "the trims were still moving",
	},
	idle: (speed: string) => `idle, or slower than ${speed}`,
	cold: (warmC: number) => `the engine was below ${warmC}\u00a0°C`,
	tooShort: (windowS: number) => `less than ${windowS}\u00a0s at a time`,
	advice: {
		missing: "Log all of it over the same time: trims, coolant, speed, and throttle or load.",
		cold: "Log once the engine is warm.",
		idle: "Log on the road: at idle the trims are other ones.",
		openLoop: "Log at part load, where the loop is closed.",
		tooShort: "Keep at a steady speed for half a minute at a time.",
		unsteady: "Keep at a steady speed on a level road for half a minute at a time.",
		frozen: "The trims were not at work: log at part load with a warm engine.",
		lambdaOff:
			"If lambda is logged as an air–fuel ratio that is not 14.7 at lambda 1, leave its column out; else log at part load.",
		unsettled: "Drive on for some minutes, until the trims stand still.",
	},
	table: "The steady stretches in numbers",
	tableCaption: "The longest stretches first",
	heads: ["From", "Length", "Trim"],
	banks: ["Bank 1", "Bank 2"],
	chart: {
		over: (duration: string) => `Fuel trims over ${duration}.`,
		range: (least: string, most: string) => `They went from ${least} to ${most}.`,
		counted: (duration: string, count: number, median: string) =>
			`Steady for ${duration} in ${stretches(count)}, median there ${median}.`,
		nowhere: "Nowhere steady.",
		mean: "trims, mean",
		band: "from least to most",
		steady: "steady: it counts",
		median: "their median",
	},

	load: "Lambda under load",
	loadLead: (value: string, sd: string) => `${strong(value)} against what is commanded, give or take ${sd}`,
	leanUnderLoad: "Leaner than commanded under load: stay out of boost until your tuner has seen this log.",
	pulls: "Pulls",
	pullsIn: (count: number, duration: string) => `${count}, ${duration} in all`,
	commanded: "Commanded",
	lambda: (lambda: string) => `lambda ${lambda}`,
	steadyTrim: "Steady trim",
	longTrim: "Long-term trim shown meanwhile",
	agreements: {
		agree:
			"It says the same as the trims, within what both can tell: so this car does not seem to carry its trims into open loop, where lambda then shows what nothing corrects.",
		carried:
			"Under load the mixture is about as commanded, although the trims correct. So this car seems to carry its trims into open loop, and lambda under load says nothing about the fuel. The trim is the reading to save.",
		differ:
			"It does not go with the trims. A car that carries a part of its trims, fuel pressure that drops, air that is metered otherwise at high flow, or a sensor may be the cause. Let your tuner look before you trust either; save one at most.",
		alone:
			"There is no trim to hold it against. It is a reading of the fuel only if this car does not carry its trims into open loop: otherwise it shows just what the trims leave over.",
	},
	allCorrected:
		"Under load the short-term trims were at work all the time: what they correct cannot be seen in lambda, and the trims themselves are the reading.",
	noLoad:
		"Nothing here to read: it takes some seconds at high load, warm, with a commanded mixture that is clearly rich. Only where it is safe and lawful, and your tuner agrees.",
	corrected: (count: number) =>
		`${count} more ${count === 1 ? "pull was" : "pulls were"} left out: the short-term trims were at work there.`,

	ethanol: "The car’s own report",
	ethanolLead: (content: string) => `${strong(content)} ethanol`,
	began: (content: string) => `It began at ${content}; what it came to in the end is taken.`,
	ethanolAbout:
		"The standard (SAE J1979, PID 52) fixes how it is coded, not how true it is. A figure that never changes from fill to fill is not measured: leave it out.",
	restsOnTrims: "If it rests on the trims, it says again what they say: save one of the two, not both.",

	saveForm: "Save a reading",
	take: "Take a reading into the account",
	which: "Which one?",
	whichHint: "They look at the same fuel in different ways, and are never averaged. One is enough.",
	savedOffer: (amount: string) => `${amount}, saved`,
	when: "When was it recorded? It counts for what was in the tank then: mend the time if it lies on the wrong side of a fill.",
	savedBefore:
		"This log already counts: it was saved before, and is not saved twice. To save it anew, take that entry back first.",
	savedNow: "It is in the account.",
	toEntry: "To its entry",
	toTank: "To the tank",
	twice:
		"Another reading of this log is in the account: saving this one too counts the same drive twice, and makes the estimate look surer than it is.",
	perhapsCorrected:
		"A reading of this log was saved before and does not count any more. If it was corrected in the log, the correction counts: saving this one too counts the same drive twice.",
	save: (amount: string) => `Save ${amount}`,
};

export type Words = typeof words;
