/** The pours of a plan: how much of what, in which order and why, and what to do where none will do. */
import type { ArrivalPart } from "../../arrival";

/** How the first pour came out, as amounts. */
export interface CameOut {
	readonly larger: boolean;
	readonly poured: string;
	readonly planned: string;
}

const parts: Readonly<Record<ArrivalPart, string>> = {
	gauge: "the gauge",
	place: "the place",
	time: "the time",
	odometer: "the odometer",
};

const cause = ({ larger, poured, planned }: CameOut) =>
	`the first came out ${larger ? "larger" : "smaller"}, ${poured} instead of ${planned}`;

const leaveFull = "If the tank is full, leave it there and save: squeezing in more can spill, and harm the car.";

export const words = {
	toClick: (fuel: string, amount: string) => `${fuel} to the click, about ${amount}`,
	of: (amount: string, fuel: string) => `${amount} of ${fuel}`,
	/** A pour that is not the first, in a list. */
	thenPour: (pour: string) => `then ${pour}`,
	inTurn: (pours: readonly string[]) => pours.join(", then "),
	beforeDriving: (fuel: string) =>
		`${fuel} belongs in before you drive: until then the blend may be past the lean limit.`,

	otherWayAbove: (chance: string) => `The other way round, too much: ${chance}.`,
	otherWayInside: (chance: string) => `The other way round, inside: ${chance}.`,
	safeFirst: (first: string, second: string) =>
		`${first} first: if the nozzle clicks early, what is missing is ${second}, and the blend stays on the safe side.`,
	sureFirst: (first: string, second: string) =>
		`${first} first, so that its amount is sure: how much fits in the end nobody knows, and ${second} takes up the difference.`,
	first: (fuel: string) => `${fuel} first.`,
	eitherFirst: (fuel: string) => `${fuel} first; the other way round would do as well.`,

	outOfReach: "Out of reach with these products",
	outOfReachMore: (reach: string, window: string, side: "more" | "less") =>
		`At this stop they bring the tank to ${reach}, whatever you pump; the window is ${window}. It takes a product with ${side} ethanol, or a calibration made for ${side === "more" ? "less" : "more"}. This comes nearest:`,
	lean: "No plan keeps the lean risk as low as you asked",
	leanMore: (above: string) =>
		`With this one, the least risky, too much ethanol is still ${above}. Stay out of boost after it.`,
	likelyInside: "Likely inside, not as surely as you asked",
	knock: "No plan makes it strong enough for sure",
	knockMore: (below: string) =>
		`It keeps the lean risk low; too little ethanol is ${below}. What is unknown leaves no more room: “What would settle it?” says what to test. Stay out of boost until a test says otherwise.`,

	burnInVain: "Driving some off first does not do it alone: even with a nearly empty tank no plan comes inside.",
	burn: (amount: string, distance: string | null) =>
		`Burn about ${amount} first${distance === null ? "" : `, some ${distance} of driving`}, out of boost, and fill then: the less is left, the more the new fuel counts, and a plan comes inside.`,
	noStops: "Stops in a row can’t be planned from here.",
	stopsReach: (stops: number, gauge: string, days: number) =>
		`In ${stops} stops it comes inside, driving down to about ${gauge} of the tank and ${days} days in between:`,
	stopsInVain: (stops: number, gauge: string, days: number) =>
		`Even ${stops} stops in a row do not come inside, driving down to about ${gauge} of the tank and ${days} days in between:`,

	nothingOnSale: "Tick at least one product that is on sale here.",
	sellsNoLess: (least: string) =>
		`The dispenser sells no less than ${least}: ask for more, or lower the least sale under “Details”.`,
	nothingAsked: "Ask for more than nothing.",
	doesNotFit: (room: string) => `So much may not fit: ${room} surely do. Ask for that, or fill to the click.`,
	full: "The tank is full: drive some of it off first. If it is not, note the gauge as it stands.",
	nearlyFull: (room: string) =>
		`Only about ${room} still fit, less than the dispenser sells: drive some off first. If that can’t be, check the gauge that you noted and the tank’s capacity under Car.`,
	noPrice: (fuel: string) => `Type what ${fuel} costs: without it nobody knows what the money buys.`,
	tooLittleMoney:
		"The money does not buy the least that the dispenser sells: raise the sum, or lower the least sale under “Details”.",

	outdated: (changed: readonly ArrivalPart[], pours: string) =>
		`Planned before you changed ${changed.map((part) => parts[part]).join(" and ")}: ${pours}.`,
	notAnew: (came: CameOut) => `As planned before ${cause(came)}: it could not be reckoned anew in time.`,
	changed: (before: string, now: string) => `Planned ${before}, now ${now}.`,
	still: (now: string, came: CameOut) => `Still ${now}, though ${cause(came)}.`,
	changedBecause: (before: string, now: string, came: CameOut) =>
		`Planned ${before}, now ${now}, because ${cause(came)}.`,
	usedUp: "The first product took all that you asked for: save the stop as it is.",
	nothingFits:
		"Nothing more fits that the dispenser sells: save the stop as it is. The dots show what that leaves you with.",
	restDoesNotFit: (room: string) =>
		`What is left of the plan does not surely fit any more: ${room} do. Save the stop, or leave the plan and pump the second product to the first click.`,
	restTooLittle: "What is left is less than the dispenser sells: save the stop as it is.",
	clicked: `It clicked before the second product. ${leaveFull}`,
	clickedEarly: (missing: string) =>
		`It clicked ${missing} early. If the tank can’t be full yet, the nozzle sat badly or the fuel foamed: seat it anew, go on, and take the click back below. ${leaveFull}`,
};

export type Words = typeof words;
