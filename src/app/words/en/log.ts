/** The log, its chart, and what it means to take something back. */
import type { Span } from "../../historyView";
import type { ToldEvent } from "../../logView";

export type Kind = ToldEvent["kind"];

/** What an entry is called in a sentence. */
export const kinds: Readonly<Record<Kind, string>> = {
	fill: "stop",
	start: "start",
	level: "gauge note",
	reading: "reading",
	calibration: "flash",
};

export const words = {
	reading: "Reading the log…",
	reckoning: (percent: string) => `Reckoning the log: ${percent} done.`,
	reckoningAnew: (percent: string) => `Reckoning the log anew: ${percent} done.`,
	fromBefore: (percent: string) => `Reckoning the log anew: ${percent} done. What you see is from before.`,
	unreadable: (count: number) =>
		`${count === 1 ? "One entry was" : `${count} entries were`} written by a newer version of the app. They are kept, but count and show only once this app is updated.`,
	nothing: "Nothing is in the log yet",
	nothingMore: "Every fill and every measurement is told here, with what it did to the estimate.",
	record: "Record a fill",
	overTime: "Ethanol content over time",
	costs: "What it cost",
	showVoid: (count: number) => `Show void entries (${count})`,
	older: (count: string) => `Older entries (${count})`,
	bringBack: "Bring back",
	bringBackThis: (entry: string) => `Bring back: ${entry}`,
	void: "void",
	shown: "Time shown",
	spans: { stops: "Last 10 stops", months: "3 months", all: "All" } satisfies Record<Span, string>,
	/** A button; what a toast says after it. */
	undo: "Undo",
	asBefore: "As it was before.",
	countsAgain: (kind: Kind) => `The ${kinds[kind]} counts again.`,
	countsInstead: (kind: Kind) => `The ${kinds[kind]} counts again, in place of its correction.`,

	windowFrom: (window: string) => `Window ${window} from here on`,
	nineInTen: "9 in 10:",
	flashed: (name: string) => `Flashed: ${name}`,
	outside: (side: "above" | "below", chance: string) => `${side === "above" ? "Above" : "Below"} the window: ${chance}`,
	/** Beside a content outside the window. */
	side: { above: "above", below: "below" },
	surprise: {
		disagrees: "Does not fit the account",
		impossibleLevel: "Does not fit in the tank",
		impossibleDistance: "Distance does not fit",
	},
	unlikely: (oneIn: string) => `A reading that far out had a chance of about 1 in ${oneIn}.`,
	veryUnlikely: "A reading that far out had a chance of less than 1 in 10,000.",

	/** What the account loses without an entry. */
	without: {
		fill: "Without it, this fuel counts as never poured: right for a stop that was not made, or that belongs to another car.",
		laterStart:
			"Without it, the account goes on from what came before, as if nobody had said what was in the tank here.",
		firstStart: (unknown: string) =>
			`Without it, nobody vouches for what the tank held at first: the contents count as unknown, ${unknown}, until fills and readings narrow them down.`,
		level: "Without it, the fuel left at that time is less well known, and so is what the next fill did.",
		reading: "Without it, the estimate goes by the fills and the other readings alone.",
		calibration: (before: string) => `Without it, the window of “${before}” stays in force until the next flash.`,
	},

	key: {
		median: "most likely",
		range: "9 in 10",
		window: "the calibration’s window",
		above: "above it",
		below: "below it",
		reading: "measured, ± one sd",
	},
	thinned: (drawn: number, all: string) =>
		`Drawn from ${drawn} of ${all} entries; the highest and the lowest are among them.`,
	numbers: "The same in numbers",
	heads: ["When", "Most likely", "9 in 10", "Window", "Measured"],
	noWindow: "none",

	/** What the chart says, in sentences after the time that it shows. */
	finding: (span: "stops" | "months" | "all", from: string, to: string, said: string) => {
		const spans = { stops: "The last 10 stops", months: "The last 3 months", all: "The whole log" };
		return `${spans[span]}, ${from} to ${to}: ${said}`;
	},
	noEntries: "no entries.",
	stayed: (content: string) => `no entries, so the content stayed at about ${content}.`,
	likely: (content: string) => `the most likely content is about ${content}.`,
	likelyBetween: (low: string, high: string, last: string) =>
		`the most likely content lies between ${low} and ${high}, at the end about ${last}.`,
	allInside: (entries: number) => `${entries === 1 ? "It lies" : `All ${entries} entries lie`} inside the window.`,
	someInside: (inside: number, entries: number, above: number, below: number) => {
		const outside = [...(above > 0 ? [`${above} above it`] : []), ...(below > 0 ? [`${below} below it`] : [])];
		return `${inside} of ${entries} ${entries === 1 ? "entry" : "entries"} inside the window, ${outside.join(", ")}.`;
	},
};

export type Words = typeof words;
