/** A plan in words: what to pump, in which order and why, and what to do where none will do. */
import type { Drive } from "../domain/plan/ahead";
import type { Plan, PlannedPour, Unplannable } from "../domain/plan/request";
import type { ContentRange } from "../domain/quantity";
import { fromLitres, type VolumeUnit } from "../domain/units";
import type { Calibration } from "../domain/vehicle";
import type { PlanAnswer } from "../keeper/view";
import type { ArrivalPart } from "./arrival";
import type { Guided, Rest } from "./fillPlan";
import {
	distanceUnit,
	exactPercentRange,
	exactVolume,
	fromKm,
	inTwenty,
	percent,
	percentRange,
	volume,
} from "./format";
import { productName } from "./text";

/** "12.5 L of Gasoline E10" or "Flex fuel to the click, about 9.0 L". */
export function pourWords({ product, litres, toClick }: PlannedPour, unit: VolumeUnit): string {
	const name = productName(product);
	return toClick ? `${name} to the click, about ${volume(litres, unit)}` : `${exactVolume(litres, unit)} of ${name}`;
}

/** What must follow where the strong product comes first; null where it does not. */
export function beforeDrivingWords({ pours: [first, second] }: Plan): string | null {
	if (!first || !second || middle(first.product.range) <= middle(second.product.range)) return null;
	return `${productName(second.product)} belongs in before you drive: until then the blend may be past the lean limit.`;
}

/** Chances no further apart are alike to a driver. */
const alike = 0.01;

/** Why this order, by what the other one would bring; null for a single pour. */
export function orderWords({ pours, chances, swapped }: Plan): string | null {
	const [first, second] = pours;
	if (!first || !second || !swapped) return null;
	const [name, other] = [productName(first.product), productName(second.product)];
	const leaner = swapped.above - chances.above > alike;
	const otherWay = leaner
		? `The other way round, too much: ${inTwenty(swapped.above)}.`
		: chances.inside - swapped.inside > alike
			? `The other way round, inside: ${inTwenty(swapped.inside)}.`
			: "";
	const firstIsWeaker = middle(first.product.range) < middle(second.product.range);
	if (firstIsWeaker && swapped.above >= chances.above - alike) {
		return `${name} first: if the nozzle clicks early, what is missing is ${other}, and the blend stays on the safe side. ${otherWay}`;
	}
	if (second.toClick && otherWay !== "") {
		return `${name} first, so that its amount is sure: how much fits in the end nobody knows, and ${other} takes up the difference. ${otherWay}`;
	}
	if (otherWay !== "") return `${name} first. ${otherWay}`;
	return `${name} first; the other way round would do as well.`;
}

function middle([low, high]: ContentRange): number {
	return (low + high) / 2;
}

/** What no plan can do, said before the best one. */
export interface Short {
	readonly title: string;
	readonly more: string;
	/** Whatever is known or not, these products do not reach the window. */
	readonly outOfReach: boolean;
}

/** Null where the plan is inside. */
export function verdictLine({ planned, calibration }: PlanAnswer): Short | null {
	if (!planned.ok) return null;
	const { verdict, reach, plan } = planned.value;
	const [low, high] = calibration.window;
	const window = exactPercentRange(low, high);
	if (reach[1] < low || reach[0] > high) {
		const side = reach[1] < low ? "more" : "less";
		return {
			outOfReach: true,
			title: "Out of reach with these products",
			more: `At this stop they bring the tank to ${percentRange(...reach)}, whatever you pump; the window is ${window}. It takes a product with ${side} ethanol, or a calibration made for ${side === "more" ? "less" : "more"}. This comes nearest:`,
		};
	}
	if (verdict === "lean") {
		return {
			outOfReach: false,
			title: "No plan keeps the lean risk as low as you asked",
			more: `With this one, the least risky, too much ethanol is still ${inTwenty(plan.chances.above)}. Stay out of boost after it.`,
		};
	}
	if (verdict === "knock") {
		return {
			outOfReach: false,
			title:
				plan.chances.inside > 0.5
					? "Likely inside, not as surely as you asked"
					: "No plan makes it strong enough for sure",
			more: `It keeps the lean risk low; too little ethanol is ${inTwenty(plan.chances.below)}. What is unknown leaves no more room: “What would settle it?” says what to test. Stay out of boost until a test says otherwise.`,
		};
	}
	return null;
}

/** What to burn before a plan comes inside, L, and how far that takes the car; null: none does, or nobody knows. */
export function burnWords(burnFirst: number | null, km: number | null, unit: VolumeUnit): string {
	if (burnFirst === null)
		return "Driving some off first does not do it alone: even with a nearly empty tank no plan comes inside.";
	const distance = km === null ? "" : `, some ${distanceWords(km, unit)} of driving`;
	return `Burn about ${volume(burnFirst, unit)} first${distance}, out of boost, and fill then: the less is left, the more the new fuel counts, and a plan comes inside.`;
}

/** Several stops in a row. `reached`: the last one comes inside. */
export function driveWords({ gauge, days }: Drive, stops: number, reached: boolean): string {
	const between = `driving down to about ${percent(gauge)} of the tank and ${days} days in between`;
	if (stops < 2) return "Stops in a row can’t be planned from here.";
	return reached
		? `In ${stops} stops it comes inside, ${between}:`
		: `Even ${stops} stops in a row do not come inside, ${between}:`;
}

function distanceWords(km: number, unit: VolumeUnit): string {
	const distance = fromKm(km, unit);
	const tens = distance < 20 ? 1 : 10;
	return `${Math.max(1, Math.round(distance / tens) * tens)}\u00a0${distanceUnit(unit)}`;
}

/** Why nothing can be planned, and what to change. */
export function unplannableWords(why: Unplannable, unit: VolumeUnit): string {
	switch (why.code) {
		case "nothingOnSale":
			return "Tick at least one product that is on sale here.";
		case "tooLittle":
			return why.least > 0
				? `The dispenser sells no less than ${volume(why.least, unit)}: ask for more, or lower the least sale under “Details”.`
				: "Ask for more than nothing.";
		case "doesNotFit":
			return `So much may not fit: ${volume(why.room, unit)} surely do. Ask for that, or fill to the click.`;
		case "full":
			return fromLitres(why.room, unit) < 0.05
				? "The tank is full: drive some of it off first. If it is not, note the gauge as it stands."
				: `Only about ${volume(why.room, unit)} still fit, less than the dispenser sells: drive some off first. If that can’t be, check the gauge that you noted and the tank’s capacity under Car.`;
		case "noPrice":
			return `Type what ${productName(why.product)} costs: without it nobody knows what the money buys.`;
		case "tooLittleMoney":
			return "The money does not buy the least that the dispenser sells: raise the sum, or lower the least sale under “Details”.";
	}
}

const partWords: Readonly<Record<ArrivalPart, string>> = {
	gauge: "the gauge",
	place: "the place",
	time: "the time",
	odometer: "the odometer",
};

/** Why a plan need not hold any more: what was noted otherwise since. */
export function outdatedWords(
	changed: readonly ArrivalPart[],
	pours: readonly PlannedPour[],
	unit: VolumeUnit,
): string {
	const parts = changed.map((part) => partWords[part]).join(" and ");
	return `Planned before you changed ${parts}: ${pours.map((pour) => pourWords(pour, unit)).join(", then ")}.`;
}

/** What became of the plan after the first pour; null where it went as planned. `poured`: of the first, L. */
export function restWords({ plan }: Guided, poured: number, unit: VolumeUnit): string | null {
	const { rest, made } = plan;
	if (!rest) return null;
	if (rest.kind === "none") return noneWords(rest.why, unit);
	const [first, second] = made.pours;
	const size = poured > first.litres ? "larger" : "smaller";
	const cause = `the first came out ${size}, ${exactVolume(poured, unit)} instead of ${exactVolume(first.litres, unit)}`;
	const off = Math.abs(poured - first.litres) > 0.005;
	if (rest.kind === "unknown") {
		return off ? `As planned before ${cause}: it could not be reckoned anew in time.` : null;
	}
	const now = rest.planned.plan.pours[0];
	const changed = volume(now.litres, unit) !== volume(second.litres, unit);
	if (!off) return changed ? `Planned ${volume(second.litres, unit)}, now ${volume(now.litres, unit)}.` : null;
	if (!changed) return `Still ${volume(now.litres, unit)}, though ${cause}.`;
	return `Planned ${volume(second.litres, unit)}, now ${volume(now.litres, unit)}, because ${cause}.`;
}

function noneWords(why: Extract<Rest, { kind: "none" }>["why"], unit: VolumeUnit): string {
	switch (why.code) {
		case "usedUp":
			return "The first product took all that you asked for: save the stop as it is.";
		case "full":
			return "Nothing more fits that the dispenser sells: save the stop as it is. The dots show what that leaves you with.";
		case "doesNotFit":
			return `What is left of the plan does not surely fit any more: ${volume(why.room, unit)} do. Save the stop, or leave the plan and pump the second product to the first click.`;
		case "tooLittle":
		case "tooLittleMoney":
			return "What is left is less than the dispenser sells: save the stop as it is.";
		default:
			return unplannableWords(why, unit);
	}
}

/** Where the nozzle clicked on the first product of a plan. `planned`, `poured`: of it, L. */
export function clickedWords(planned: number, poured: number, unit: VolumeUnit): string {
	const full = "If the tank is full, leave it there and save: squeezing in more can spill, and harm the car";
	if (!(poured < planned - 0.005)) return `It clicked before the second product. ${full}.`;
	return `It clicked ${volume(planned - poured, unit)} early. If the tank can’t be full yet, the nozzle sat badly or the fuel foamed: seat it anew, go on, and take the click back below. ${full}.`;
}

/** What the plan is made for. */
export function targetWords({ name, window }: Calibration): string {
	return `For “${name}”, window ${exactPercentRange(window[0], window[1])}`;
}
