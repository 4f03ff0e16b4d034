/** A plan in words: what to pump, in which order and why, and what to do where none will do. */
import type { Drive } from "../domain/plan/ahead";
import type { Plan, PlannedPour, Unplannable } from "../domain/plan/request";
import type { ContentRange } from "../domain/quantity";
import { fromLitres, type VolumeUnit } from "../domain/units";
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
import type { CameOut } from "./words/en/pours";
import { poursWords } from "./words/pours";

/** "12.5 L of Gasoline E10" or "Flex fuel to the click, about 9.0 L". */
export function pourWords({ product, litres, toClick }: PlannedPour, unit: VolumeUnit): string {
	const name = productName(product);
	const words = poursWords();
	return toClick ? words.toClick(name, volume(litres, unit)) : words.of(exactVolume(litres, unit), name);
}

/** Several in a row, in a sentence. */
export function poursInTurn(pours: readonly PlannedPour[], unit: VolumeUnit): string {
	return poursWords().inTurn(pours.map((pour) => pourWords(pour, unit)));
}

/** What must follow where the strong product comes first; null where it does not. */
export function beforeDrivingWords({ pours: [first, second] }: Plan): string | null {
	if (!first || !second || middle(first.product.range) <= middle(second.product.range)) return null;
	return poursWords().beforeDriving(productName(second.product));
}

/** Chances no further apart are alike to a driver. */
const alike = 0.01;

/** Why this order, by what the other one would bring; null for a single pour. */
export function orderWords({ pours, chances, swapped }: Plan): string | null {
	const [first, second] = pours;
	if (!first || !second || !swapped) return null;
	const [name, other] = [productName(first.product), productName(second.product)];
	const leaner = swapped.above - chances.above > alike;
	const words = poursWords();
	const otherWay = leaner
		? words.otherWayAbove(inTwenty(swapped.above))
		: chances.inside - swapped.inside > alike
			? words.otherWayInside(inTwenty(swapped.inside))
			: null;
	const firstIsWeaker = middle(first.product.range) < middle(second.product.range);
	if (firstIsWeaker && swapped.above >= chances.above - alike) {
		const safe = words.safeFirst(name, other);
		return otherWay === null ? safe : `${safe} ${otherWay}`;
	}
	if (otherWay === null) return words.eitherFirst(name);
	return `${second.toClick ? words.sureFirst(name, other) : words.first(name)} ${otherWay}`;
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
	const words = poursWords();
	if (reach[1] < low || reach[0] > high) {
		const side = reach[1] < low ? "more" : "less";
		return {
			outOfReach: true,
			title: words.outOfReach,
			more: words.outOfReachMore(percentRange(...reach), window, side),
		};
	}
	if (verdict === "lean") {
		return {
			outOfReach: false,
			title: words.lean,
			more: words.leanMore(inTwenty(plan.chances.above)),
		};
	}
	if (verdict === "knock") {
		return {
			outOfReach: false,
			title: plan.chances.inside > 0.5 ? words.likelyInside : words.knock,
			more: words.knockMore(inTwenty(plan.chances.below)),
		};
	}
	return null;
}

/** What to burn before a plan comes inside, L, and how far that takes the car; null: none does, or nobody knows. */
export function burnWords(burnFirst: number | null, km: number | null, unit: VolumeUnit): string {
	const words = poursWords();
	if (burnFirst === null) return words.burnInVain;
	return words.burn(volume(burnFirst, unit), km === null ? null : distanceWords(km, unit));
}

/** Several stops in a row. `reached`: the last one comes inside. */
export function driveWords({ gauge, days }: Drive, stops: number, reached: boolean): string {
	const words = poursWords();
	if (stops < 2) return words.noStops;
	return (reached ? words.stopsReach : words.stopsInVain)(stops, percent(gauge), days);
}

function distanceWords(km: number, unit: VolumeUnit): string {
	const distance = fromKm(km, unit);
	const tens = distance < 20 ? 1 : 10;
	return `${Math.max(1, Math.round(distance / tens) * tens)}\u00a0${distanceUnit(unit)}`;
}

/** Why nothing can be planned, and what to change. */
export function unplannableWords(why: Unplannable, unit: VolumeUnit): string {
	const words = poursWords();
	switch (why.code) {
		case "nothingOnSale":
			return words.nothingOnSale;
		case "tooLittle":
			return why.least > 0 ? words.sellsNoLess(volume(why.least, unit)) : words.nothingAsked;
		case "doesNotFit":
			return words.doesNotFit(volume(why.room, unit));
		case "full":
			return fromLitres(why.room, unit) < 0.05 ? words.full : words.nearlyFull(volume(why.room, unit));
		case "noPrice":
			return words.noPrice(productName(why.product));
		case "tooLittleMoney":
			return words.tooLittleMoney;
	}
}

/** Why a plan need not hold any more: what was noted otherwise since. */
export function outdatedWords(
	changed: readonly ArrivalPart[],
	pours: readonly PlannedPour[],
	unit: VolumeUnit,
): string {
	return poursWords().outdated(changed, poursInTurn(pours, unit));
}

/** What became of the plan after the first pour; null where it went as planned. `poured`: of the first, L. */
export function restWords({ plan }: Guided, poured: number, unit: VolumeUnit): string | null {
	const { rest, made } = plan;
	if (!rest) return null;
	if (rest.kind === "none") return noneWords(rest.why, unit);
	const [first, second] = made.pours;
	const words = poursWords();
	const came: CameOut = {
		larger: poured > first.litres,
		poured: exactVolume(poured, unit),
		planned: exactVolume(first.litres, unit),
	};
	const off = Math.abs(poured - first.litres) > 0.005;
	if (rest.kind === "unknown") return off ? words.notAnew(came) : null;
	const [before, now] = [second, rest.planned.plan.pours[0]].map((pour) => volume(pour.litres, unit));
	if (!off) return now === before ? null : words.changed(before, now);
	return now === before ? words.still(now, came) : words.changedBecause(before, now, came);
}

function noneWords(why: Extract<Rest, { kind: "none" }>["why"], unit: VolumeUnit): string {
	const words = poursWords();
	switch (why.code) {
		case "usedUp":
			return words.usedUp;
		case "full":
			return words.nothingFits;
		case "doesNotFit":
			return words.restDoesNotFit(volume(why.room, unit));
		case "tooLittle":
		case "tooLittleMoney":
			return words.restTooLittle;
		default:
			return unplannableWords(why, unit);
	}
}

/** Where the nozzle clicked on the first product of a plan. `planned`, `poured`: of it, L. */
export function clickedWords(planned: number, poured: number, unit: VolumeUnit): string {
	const words = poursWords();
	return poured < planned - 0.005 ? words.clickedEarly(volume(planned - poured, unit)) : words.clicked;
}
