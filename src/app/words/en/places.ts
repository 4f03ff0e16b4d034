/** What is known of the places where fuel was bought or tested, and of their pumps. */
export const words = {
	reading: "Looking through the log…",
	failed: "What is known of the places could not be reckoned. Reload the app and try again.",
	none: "No place is named yet",
	noneMore:
		"Name the place of a fill, and what its pumps gave is remembered here. A place that is not named teaches nothing for the next visit.",
	record: "Record a fill",
	places: "Places",
	place: "Place",
	all: "All places",
	notHere: (car: string, place: string) => `No fill and no test in the log of “${car}” names the place “${place}”.`,
	/** Of a pump, in a line. */
	delivers: (fuel: string, content: string, range: string) => `${fuel}: about ${content}, 9 in 10: ${range}`,
	restsOn: "What this rests on",
	restsOnMore:
		"Pumps of one area buy from the same terminals, so a test at one place says a little of all of them. What is known of a place’s own fuel fades: after 45 days about a third of it is left (common practice). About one delivery in ten lies outside its label (SAE 2013-01-9071).",
	median: "Most likely about",
	range: "9 in 10",
	labelAllows: "Label allows",
	boughtHere: "Bought here",
	testedHere: "Tested here",
	never: "never",
	times: (count: number, last: string) => `${count === 1 ? "once" : `${count} times`}, last ${last}`,
	lastPrice: "Last price",
	priceOn: (price: string, date: string) => `${price}, ${date}`,
	noPrice: "none entered",
	growing: "How wide 9 in 10 span, with no visit and no test from today on:",
	labelAlone: "The label alone",

	points: (count: string) => `${count}\u00a0${count === "1" ? "point" : "points"}`,
	nothingOpen: "The label leaves nothing open.",
	/** Sentences that begin with how often a pump was tested. */
	tested: (samples: number, last: string) =>
		samples === 1 ? `Tested once, ${last}` : `Tested ${samples} times, last ${last}`,
	labelAsGood: (tested: string) => `${tested}: by now the label says as much.`,
	neverTested: "Never tested: the label is all that is known.",
	narrower: (tested: string, width: string, label: string) =>
		`${tested}: 9 in 10 span ${width} where the label alone leaves ${label}.`,
	narrowerUntested: (width: string, label: string) =>
		`Never tested. What the tank and other pumps showed narrows it: 9 in 10 span ${width} where the label alone leaves ${label}.`,
	now: "Now",
	inDays: (days: number) => `In ${days} days`,
	inMonths: (months: number) =>
		months === 1
			? "In a month"
			: months === 3
				? "In three months"
				: months === 6
					? "In half a year"
					: `In ${months} months`,
	visits: (last: string, fills: number, samples: number) => {
		const filled = fills === 0 ? "Never filled" : fills === 1 ? "One fill" : `${fills} fills`;
		const tested = samples === 0 ? "never tested" : samples === 1 ? "one test" : `${samples} tests`;
		return `Last visit ${last}. ${filled}, ${tested}.`;
	},
};

export type Words = typeof words;
