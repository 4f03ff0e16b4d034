/** Two phones, one tank: what one hands over, the other takes. */
const entries = (count: number) => (count === 1 ? "1 entry" : `${count} entries`);

export const words = {
	reading: "Reading the log…",
	handTitle: "Hand over entries",
	handAbout: (car: string) =>
		`Entries of “${car}” for another phone that keeps the same car’s account. Both then show the same numbers.`,
	what: "What is to be handed over?",
	lastStop: "The last stop",
	lastStopMore: "and what came after it",
	sinceLast: "Since the last time",
	sinceLastMore: (when: string) => `handed over ${when}`,
	sinceDay: "Since a day",
	day: "From this day on",
	all: "Everything",
	allMore: "for a phone that does not have this car yet",
	lacking: "What the other phone lacks",
	lackingMore: "as its code says",
	howMany: (count: number, codes: number) => `${entries(count)} in ${codes === 1 ? "one code" : `${codes} codes`}.`,
	nothing: "Nothing: the other phone has all there is.",
	noEntries: "There is no such entry.",
	tooMany: (count: number, codes: number) =>
		`${entries(count)} would take ${codes} codes, which nobody scans: send the log as a file.`,
	otherCar: "The other phone’s code is of a car that is not on this one: nothing can be handed over to it.",
	showOther: "Scan or open it on the other phone:",
	scanWhat: "On the other phone choose Car → Scan or open, and let it scan this. It asks before it keeps anything.",
	longLink: "This is too long for a link: let the other phone scan the codes, or send the log as a file.",
	codesFileHead: (car: string) => `Entries of “${car}” for Heeltap. Open this file in the app, or the link:`,
	codesFileName: (car: string) => `${car}-entries`,
	wholeFile: "The whole log as a file:",
	done: "The other phone has it",
	doneMore: "Next time begin where this ends.",
	noted: "Noted: next time what is newer is handed over.",
	knowExactly: "Hand over exactly what is lacking",
	knowExactlyMore:
		"The other phone can show a code of what it has: there Car → Scan or open → Show what this phone has. Scan that code here.",
	toScan: "Scan the other phone’s code",

	takeTitle: "Scan or open",
	takeAbout:
		"A calibration card, entries from another phone, a log, or what makes a car live. You see what it is before anything is kept.",
	openFile: "Open a file",
	paste: "Or paste a link",
	pasteGo: "Open the link",
	some: (got: number, count: number) => `${got} of ${count} codes are here.`,
	missing: (which: string) => `Still missing: ${which}.`,
	anyOrder: "They may come in any order, today or tomorrow.",
	begun: "This code is of another hand-over: it was begun anew.",
	again: "This code was here already.",
	forget: "Forget these codes",
	gone: "No file was handed to the app, or it was taken already.",
	haveTitle: "Show what this phone has",
	haveAbout: (car: string) =>
		`The other phone scans this and hands over what “${car}” lacks here. The code holds no entry and no number of yours.`,

	previewTitle: (car: string) => `From another phone: “${car}”`,
	isReport: (made: string) =>
		`This is a tank report, made ${made}. “Keep” takes the log in it: what you see below is what that changes here. To only read it, open it under`,
	toReports: "Reports of other cars",
	looking: "Looking what it would change…",
	of: (count: number, car: string, added: number) =>
		`${entries(count)} of “${car}”, ${added === 0 ? "none of them new" : added === count ? "all new" : `${added} new`}.`,
	carIsNew: "This car is new on this phone.",
	lacks: (count: number) =>
		`At least ${entries(count)} written before these ${count === 1 ? "is" : "are"} missing here: ask for more, best by “Show what this phone has”.`,
	unreckoned: "These are so many that the phone works out what they come to only once you keep them.",
	newCalibration: (name: string) => `A calibration: “${name}”`,
	flashed: (name: string) => `Flashed: “${name}”`,
	takenBack: "An entry is taken back",
	more: (count: number) => `and ${count} more`,
	estimate: "Most likely",
	rangeNine: "Nine times in ten",
	from: (before: string, after: string) => `${before} → ${after}`,
	stays: (value: string) => `${value}, as before`,
	decidedTitle: "Settings that differ",
	decidedOwn: (setting: string, own: string, other: string) =>
		`${setting}: “${own}” here, “${other}” there. This phone’s counts, on both.`,
	decidedOther: (setting: string, own: string, other: string) =>
		`${setting}: “${own}” here, “${other}” there. The other phone’s counts, on both.`,
	decidedWhy: "Of two the one changed last counts; both phones come to the same.",
	noValue: "nothing",
	tankParts: { gaugeSd: "Doubt of the gauge", clickSd: "Doubt of the nozzle’s click" },
	notNew: "There is nothing new in it.",
	keep: "Keep",
	leave: "Don’t keep it",
	kept: (added: number, car: string) => `${entries(added)} of “${car}” kept.`,
	close: "Back to the tank",
	faults: {
		otherCar:
			"These are some entries of a car that this phone does not have: let the other phone hand over “Everything”.",
		calibrationLacking:
			"These entries belong to a calibration that this phone does not have: let the other phone hand over what is lacking, or “Everything”.",
		entryLacking:
			"These entries take back one that this phone does not have: let the other phone hand over what is lacking, or “Everything”.",
	},
	notPutBy: "The phone had no room to put by what was shared: make some, then share it again.",
	unreadable: "The phone would not give what was handed to the app: choose it again.",
	tooLong: (most: string) => `The file is over ${most}, which no log and no card is: choose another one.`,

	carTitle: "Other phones and cards",
	carHand: "Hand over entries",
	carTake: "Scan or open",
	carLive: "Live, through a server of your own",
};

export type Words = typeof words;
