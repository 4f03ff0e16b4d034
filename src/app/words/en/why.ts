/** A look at the level that was not taken at a stop. */
export type Way = "gauge" | "odometer" | "click";

const ways: Readonly<Record<Way, string>> = {
	gauge: "note the gauge before you fill",
	odometer: "note the odometer",
	click: "fill to the nozzle’s first click",
};

function listed(all: readonly Way[]): string {
	const said = all.map((way) => ways[way]);
	return said.length < 2 ? said.join("") : `${said.slice(0, -1).join(", ")} and ${said[said.length - 1]}`;
}
const upper = (text: string) => text[0].toUpperCase() + text.slice(1);
const lower = (text: string) => text[0].toLowerCase() + text.slice(1);

/** Why the number is what it is. */
export const words = {
	failed: "The account could not be taken apart. Reload the app and try again.",
	reckoning: "Taking the account apart…",
	nothingTitle: "Nothing is known of this tank yet",
	nothing: "Record a fill, and its account is told here.",
	record: "Record a fill",
	why: "Why this number",
	title: (content: string, range: string) => `Why about ${content}, 9 in 10: ${range}`,
	helpMost: "What would help most",
	measure: "Enter a measurement",
	measureNow: "What a measurement now is worth",

	/** What is not known, as the beginning of a line. */
	startOf: (on: string) => `What the tank held at the start, ${on}`,
	beforeFirst: "What the tank held before the first entry",
	older: (before: string) => `What the tank held before the stop of ${before}`,
	/** `where`: date and place. */
	delivered: (fuel: string, where: string) => `What the “${fuel}” of ${where} really was`,
	heel: (before: string) => `How much was left in the tank before the stop of ${before}`,
	area: (fuel: string) => `How strong “${fuel}” is in the area`,
	capacity: "How much the tank truly holds",
	gauge: "How far the gauge is off",
	consumption: "What the car burns",
	trims: (calibratedFor: string) => `How far the fuel trims are off on the calibration for ${calibratedFor}`,
	dateAndPlace: (date: string, place: string) => `${date} at ${place}`,

	points: (points: string) => `${points}\u00a0points`,
	nextToNothing: "next to nothing would go",
	wouldBecome: (now: string, then: string) => `${now} would become ${then}`,
	known: "Next to nothing is left open: what the tank holds is known.",
	manySmall: "No single thing stands out: many small ones make the doubt together.",
	/** `source`: the line that tells it; `most`: more than half of the doubt hangs on it. */
	reason: (most: boolean, source: string, after: string, before: string) =>
		`${most ? "Most" : "The largest part"} of the doubt is one question: ${lower(source)}. Were that known exactly, 9 in 10 would span about ${after} instead of ${before}.`,

	measureOnce: "Measure the tank once, by a water test or an analyser: what came before then hardly counts any more.",
	testPump: (fuel: string, place: string | undefined) =>
		`Test the “${fuel}” ${place === undefined ? "at the pump" : `at ${place}`} before you fill the next time, and name the place: what a test says is remembered, and it tells of this fill as well. For the tank as it stands a measurement of the tank tells more.`,
	tellLevel: (all: readonly Way[]) => `${upper(listed(all))}: then the account knows how much was left.`,
	fillWhenEmpty:
		"Fill when the tank is as empty as you dare: the less is left, the less its amount counts: then the account knows how much was left.",
	learnTank:
		"Note the gauge before you fill, and fill to the nozzle’s first click: from both the account learns the tank and the gauge.",
	learnConsumption: "Note the odometer at every stop: from one to the next the account learns what the car burns.",
	learnTrims:
		"Take the fuel trims when the tank was just measured, or holds plain gasoline: from then on the account knows how far they are off.",

	doubtFrom: "What the doubt comes from",
	doubtBar: (span: string) =>
		`A full bar is the doubt now: 9 in 10 span ${span}. The dark part would go, on average, if that one thing were known exactly. The parts overlap and do not add up to the whole: one known fill also tells of others from the same pumps.`,
	olderFuel: (before: string) =>
		`Fuel from before the stop of ${before} makes less than 2\u00a0% of the variance by now.`,
	shares: "The same as shares of the variance",
	sharesCaption: "Share of the variance of the content that goes once one thing is known, and the range that is left",
	shareHeads: ["Known exactly", "Share", "9 in 10 span then"],
	rest: (count: number, beside: boolean) =>
		`${beside ? "All the rest together" : "All of it together"}, ${count === 1 ? "one thing" : `${count} things`}`,

	evidenceFailed: "What the readings do could not be reckoned. Reload the app and try again.",
	evidenceReckoning: "Running the account again without each reading…",
	helps: "What already helps",
	noEvidence:
		"No reading, no gauge, no click and no odometer is in this part of the account. Each of them would make the range narrower.",
	evidenceBar:
		"Each was left out in turn and the account run again without it. A full bar is the doubt without it, the dark part what it takes off.",
	untried: (count: number) => `${count === 1 ? "One older entry was" : `${count} older entries were`} not tried.`,
	gaugeNoted: (on: string) => `The gauge noted on ${on}`,
	clicked: (on: string) => `The nozzle’s click on ${on}`,
	odometerNoted: (on: string) => `The odometer noted on ${on}`,
	pumpTest: (fuel: string, place: string, on: string) => `The test of “${fuel}” at ${place} on ${on}`,
	tankMeasured: (on: string) => `The measurement of the tank on ${on}`,
	trimRead: (on: string) => `The fuel trim read on ${on}`,
	without: (without: string, now: string) => `without it 9 in 10 would span ${without} instead of ${now}`,
	widens: (without: string, now: string) =>
		`without it 9 in 10 would span ${without} instead of ${now}: it does not quite fit the rest, and makes the range wider`,
	/** `more`: beside others that were told. */
	silent: (count: number, more: boolean) =>
		`${count}${more ? " more" : ""} ${count === 1 ? "changes" : "change"} next to nothing alone: others say the same, or it is long ago.`,

	origins: "Where the fuel in the tank comes from",
	picture: (content: string) =>
		`A column for each fuel in the tank, as wide as its share and as high as its ethanol content; the line across is the mix, ${content}. The list below says the same in words.`,
	pictureKey:
		"Wide is much fuel, high is much ethanol. What stands above the line fills what is missing below it: the line is the mix. The upright strokes are 9 in 10.",
	origin: (fuel: string, where: string) => `“${fuel}” of ${where}`,
	olderOrLess: "All that is older, or less",
	/** `ofEthanol`: its share of all ethanol in the tank. */
	originShare: (share: string, volume: string, content: string, ofEthanol: string | null) =>
		`${share} of the fuel, ${volume}, at ${content}${ofEthanol === null ? "" : `: ${ofEthanol} of the ethanol`}`,

	stops: "Stop by stop",
	stopsHow:
		"As it is believed now, the last first: later entries speak of earlier stops too, so this may differ from what the log said then. In brackets is where the truth lies nine times in ten.",
	first: "First",
	left: (volume: string, content: string) => `${volume} left, at ${content}`,
	poured: (volume: string, fuel: string, content: string) => `${volume} of “${fuel}”, ${content}`,
};

export type Words = typeof words;
