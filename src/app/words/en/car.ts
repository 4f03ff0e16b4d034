/** The car, its list of calibrations, how the app looks, and how a car goes. */
import type { Theme } from "../../settings";

export const words = {
	reading: "Reading the log…",
	engine: "The engine",
	toEngine: "What the blend does, and the fuel system",
	tells: "What the log tells",
	toReport: "Tank report, to print or to send",
	toCars: "All cars, what needs attention first",
	toReports: "Open tank reports of other cars",
	toPlaces: "Places and their pumps",
	toCosts: "Costs and consumption",
	toTable: "Table of mixes",
	another: "Another car",
	setUpAnother: "Set up another car",
	about: "About",
	aboutApp: (version: string) =>
		`Heeltap ${version} keeps the account of the ethanol in a tank. What it says is an estimate. Your tuner’s limits come first.`,
	privacyLive:
		"Entries of live cars go sealed to the server that you chose. Nothing else leaves this phone: no account, nobody counts what you do.",
	privacy: "Nothing leaves this phone: no account, no network needed, nobody counts what you do.",
	whichCar: "Which car?",
	invented: "invented",
	display: "Display",
	lightOrDark: "Light or dark",
	sunHint: "“Sun” is black on white, and heavier.",
	themes: { auto: "Follow the phone", light: "Light", dark: "Dark", sun: "Sun" } satisfies Record<Theme, string>,
	undo: "Undo",

	thisCar: "This car",
	name: "Name of the car",
	noName: "Give the car a name, such as “The grey one”.",
	capacityCounts: "A new capacity counts for the whole log: the account is then reckoned anew.",
	save: "Save the car",
	saved: "The car is saved.",

	remove: "Remove this car",
	removeThis: (car: string) => `Remove “${car}”…`,
	removeQuestion: (car: string) => `Remove “${car}”?`,
	removing: (entries: number, calibrations: number) =>
		`Its ${entries === 1 ? "one entry" : `${entries} entries`} and ${calibrations === 1 ? "its calibration" : `${calibrations} calibrations`} go from this phone, and nothing brings them back but a backup.`,
	backupFirst: "Save a backup first",
	removeForGood: "Remove it for good",
	keep: "Keep the car",
	inventedGone: "The invented car is gone.",
	isInvented: "This car is invented",
	isInventedMore: "It is here to look around with. Its stops, places and readings never were.",
	setUpOwn: "Set up your own car",
	removeInvented: "Remove the invented car",

	calibrations: "Calibrations",
	noCalibration: "None is entered yet, so there is no window to hold the blend against and nothing to warn of.",
	flashedNow: "Flashed now",
	flashThis: "This one is flashed now",
	isFlashed: (name: string) => `“${name}” is flashed from now on.`,
	/** On a button whose full name says which one. */
	change: "Change",
	changeWhich: (name: string) => `Change “${name}”`,
	newCalibration: "A new calibration",
	calibrationFacts: (madeFor: string, window: string, tooMuch: string, tooLittle: string) =>
		`Made for ${madeFor}, window ${window}. Accepted: too much ${tooMuch}, too little ${tooLittle}.`,
	lastFlashed: (date: string) => `Last flashed ${date}.`,
};

export type Words = typeof words;
