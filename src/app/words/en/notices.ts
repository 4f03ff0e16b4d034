/** What is amiss with the log itself: what is missing, and what came back. */
export const words = {
	missing: "Part of the log is missing on this phone",
	lost: "The phone’s storage has lost something that was saved. Until it is back, the numbers may be wrong.",
	look: "See what is missing",
	aCar: "A car",
	aCarAmong: "a car",
	ofCar: (what: string) => `: ${what}`,
	bringAll: "Bring everything back",
	bringSome: "Bring back what there is",
	goOn: "Go on without it",
	inOrder: "The log is in order again.",
	returned: "It had been removed, and the phone’s storage brought an older state of it back.",
	carGone: "The car itself is missing.",
	entriesMissing: (count: number) => `${entries(count)} ${count === 1 ? "is" : "are"} missing.`,
	entriesChanged: (count: number) => `${entries(count)} no longer ${count === 1 ? "says" : "say"} what was saved.`,
	strays: (count: number) => `${entries(count)} ${count === 1 ? "belongs" : "belong"} to another car.`,
	oldSettings: "Its name, tank or calibrations are older than what was saved.",
	otherEntries: "Its entries are not those that were saved.",
	noCopy:
		"This browser keeps no second copy on the phone that could be read. A backup file has what was saved up to its day: open it here.",
	wholeCopy: "A second copy on this phone has all of it.",
	nowhere: (count: number) =>
		`${entries(count)} ${count === 1 ? "is" : "are"} nowhere on this phone; a backup file may have ${count === 1 ? "it" : "them"}.`,
	nowhereButRest: (count: number) =>
		`${entries(count)} ${count === 1 ? "is" : "are"} nowhere on this phone; a backup file may have ${count === 1 ? "it" : "them"}. A second copy on this phone has the rest.`,
	backCar: "the car",
	backEntries: (count: number) => entries(count),
	backSettings: "its settings",
	and: (parts: readonly string[]) => parts.join(" and "),
	backOf: (what: string, car: string) => `${what} of “${car}”`,
	back: (what: string) => `Back: ${what}.`,
	notBack: (mended: string, count: number) => `${mended} ${entries(count)} could not be brought back.`,
	newer: "Update the app",
	newerEntries: (count: number) =>
		`A newer version of the app wrote ${count === 1 ? "an entry" : `${count} entries`} that this one can’t read. Nothing is lost, but until the app is updated ${count === 1 ? "it does" : "they do"} not count, and the numbers may be wrong.`,
	clock: "Is the phone’s clock right?",
	clockBehind: (now: string, newest: string) =>
		`It says ${now}, but the newest entry is dated ${newest}. Entries count in the order of their times: what is saved now comes before that one. Set the clock right, or take that entry back and enter it with its true time.`,
	seeLog: "See the log",
};

export type Words = typeof words;

function entries(count: number): string {
	return `${count} ${count === 1 ? "entry" : "entries"}`;
}
