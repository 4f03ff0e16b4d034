/** All cars at a glance, and what is told of one outside the app. */
const cars = (count: number) => (count === 1 ? "1 car" : `${count} cars`);

export const words = {
	title: "All cars",
	about: "What needs attention stands first. A tap opens the car.",
	looking: "Looking at the cars…",
	noCars: "There is no car on this phone.",
	over: (over: number, all: number) =>
		over === 0
			? `None of ${cars(all)} is over a limit.`
			: `${over} of ${cars(all)} ${over === 1 ? "is" : "are"} over a limit, or ${over === 1 ? "its" : "their"} entries contradict each other.`,
	reckoning: (count: number) => `${cars(count)} still to be reckoned…`,
	list: "Cars, what needs attention first",
	onScreen: "on the screen now",
	invented: "invented",
	openReports: "Open reports of other cars",
	toCars: "See all cars",
	/** On the Tank screen. */
	others: (count: number) => (count === 1 ? "Another car needs attention" : `${count} other cars need attention`),

	needs: {
		outside: "Likely outside the window",
		doubt: "Entries contradict each other",
		maybe: "Maybe outside the window",
		odd: "The last entry does not fit",
		silent: "Not heard of for long",
		noWindow: "No calibration, so no window",
		nothing: "Nothing known of the tank",
		reckoning: "Being reckoned…",
		failed: "Could not be reckoned: open it",
		fine: "Inside the window",
	},
	/** Beside a need that is graver. */
	doubtToo: "Its last entries contradict each other: settle that first.",
	oddToo: "Its last entry does not fit the account.",
	checked: "What is odd about its last entries was gone through.",
	figures: (content: string, range: string) => `About ${content}, 9 in 10: ${range}.`,
	chances: (above: string, below: string) => `Too much ethanol: ${above}, too little: ${below}.`,
	window: (name: string, window: string) => `Window ${window} (“${name}”).`,
	lastEntry: (when: string) => `Last entry ${when}.`,
	silent: (days: number) =>
		`Not heard of for ${days} days: it may have been filled since, so do not go by this number.`,

	/** In a notification. */
	contradiction: "The last entries contradict each other",
	contradictionMore: "Settle that first, and keep out of boost until then.",
	told: (what: string, more: string) => `${what}: ${more}`,
};

export type Words = typeof words;
