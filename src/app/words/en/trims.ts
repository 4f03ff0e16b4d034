import { strong } from "../../emphasis";

/** Fuel trims off a scan tool, and what a trim would mean by itself. */
export const words = {
	title: "Fuel trims",
	about:
		"In closed loop the engine adds fuel where there is more ethanol than it is calibrated for. But trims are often off by 3 % for other reasons, and that looks like 8 points of ethanol: this is a check of plausibility, until trims on known blends have taught what this car is off by itself.",
	steps: (from: number, to: number, distance: string) => [
		`After a fill drive ${from} to ${to}\u00a0minutes and some ${distance}, until the long-term trim stands still.`,
		"Engine warm, in closed loop, at a steady cruise on a level road, out of boost.",
		"Let a passenger note short-term and long-term trim of each bank, as means over some ten seconds.",
		"Type them with their signs.",
	],
	cautions: [
		"The driver watches the road, not the tool.",
		"Trims that look right do not make full load safe: many engines do not carry them there (13 of 25 cars screened, CRC E-87-1).",
	],
	banks: "Banks of cylinders",
	oneBank: "One bank",
	oneBankMore: "engines in line",
	twoBanks: "Two banks",
	twoBanksMore: "V and flat engines",
	shownAs: "They are shown as",
	fields: {
		short1: "Short term, bank 1",
		long1: "Long term, bank 1",
		short2: "Short term, bank 2",
		long2: "Long term, bank 2",
	},
	calibratedFor: "Calibrated for, % ethanol",
	calibratedForHint: "Of the calibration that is flashed when you measure.",
	sd: "Give or take, % of trim",
	why: "3 is common practice. Most of it is this car’s own and the same every time: trims on a known blend teach it, and later ones then count for more.",
	tooLow: "No engine runs at a trim this low: check the signs and the numbers.",
	together: (trim: string, banks: 1 | 2) => `Together ${strong(trim)}${banks === 2 ? ", the mean of both banks" : ""}.`,
	implied: (content: string, points: string) =>
		`On its own that would be ${content} ethanol, give or take ${points}\u00a0points.`,
	unexplained: (side: "below" | "above") =>
		`No blend explains that: it lies ${side} what any content would bring. Look for another cause.`,
	atLimit: "A long-term trim this large is where most engine computers stop correcting: the truth may lie further out.",
};

export type Words = typeof words;
