/**
 * Which measurement is worth the trouble: for each that the driver can make, what is to be expected of it before it is made
 * (preposterior analysis: Raiffa, Schlaifer, Applied Statistical Decision Theory, 1961, from memory).
 */
import { edgeWidth } from "../estimator/estimate";
import type { ContentRange, Fraction } from "../quantity";
import { type Ending, endingsOf, expectedWidth, widthOf } from "./ending";
import { instrumentOf, type Reading } from "./instrument";
import { outcomeOf } from "./outcome";
import type { Pouring } from "./pouring";
import { insideAfter, insideNow, prospectsOf } from "./replanning";
import type { Offer, PlanRequest } from "./request";
import { roomOf } from "./room";
import { bestPouring } from "./search";
import type { SoundedStanding } from "./standing";
import { byWorth, type Measures, type When, type Worth } from "./worth";

export interface MeasuresAsk {
	/** On sale here, as in the standing. */
	readonly offers: readonly Offer[];
	/** What the fill is planned by; null where none is, or it can't be judged. */
	readonly request: PlanRequest | null;
	readonly window: ContentRange | null;
	/** Content that the flashed calibration was made for; null where that is not known: a trim then tells nothing. */
	readonly calibratedFor: Fraction | null;
}

/**
 * What every measurement is worth, and the chance of ending inside with none. Of the content after the best plan, which is
 * kept for the narrowing and made anew for the gain; of the tank as it stands where nothing can be planned as asked. A
 * plan to the click is reckoned with what the click will tell, as that comes for nothing.
 */
export function measuresOf(
	standing: SoundedStanding,
	{ offers, request, window, calibratedFor }: MeasuresAsk,
): Measures {
	const best = request && bestPouring(standing, request, roomOf(standing));
	const pouring = best?.ok ? best.value.pouring : null;
	const endings = endingsOf(standing, pouring);
	const width = meanOf(endings, widthOf);
	const gauge: Reading[] = standing.gauge ? [{ kind: "gauge" }] : [];
	const before = [...gauge, ...ofTank("before", calibratedFor)];
	const narrowed = (measure: Reading): Worth => {
		const instrument = instrumentOf(measure, standing);
		const after = meanOf(endings, (ending) => expectedWidth(ending, instrument));
		return { measure, narrowing: shrinking(width, after), gain: 0 };
	};
	if (!(request && pouring)) {
		const inside = window && insideOf(standing, window);
		return { filling: false, width, inside, worths: before.map(narrowed).sort(byWorth) };
	}
	const prospects = prospectsOf(standing, request, pouring);
	const inside = insideNow(prospects);
	const samples = offers.map(({ product }, offer): Reading => ({ kind: "pumpSample", offer, product }));
	const worths = [
		...[...samples, ...before].map((measure) => ({
			...narrowed(measure),
			gain: insideAfter(prospects, instrumentOf(measure, standing)) - inside,
		})),
		...ofTank("after", calibratedFor).map(narrowed),
		...clickWorth(standing, request, pouring, width),
	];
	return { filling: true, width, inside, worths: worths.sort(byWorth) };
}

function ofTank(when: When, calibratedFor: Fraction | null): Reading[] {
	const trim: Reading[] = calibratedFor === null ? [] : [{ kind: "trim", when, calibratedFor }];
	return [{ kind: "tankSample", when }, { kind: "analyser", when }, ...trim];
}

/** Filling to the click instead, planned anew for that; none where it breaks the lean budget, and the plan as asked does not. */
function clickWorth(standing: SoundedStanding, request: PlanRequest, pouring: Pouring, width: number): Worth[] {
	const room = roomOf(standing);
	if (pouring.total > room.median) return [];
	const best = bestPouring(standing, { ...request, fullness: { kind: "click" } }, room);
	if (!best.ok) return [];
	const { window, budgets } = request.target;
	const [asked, clicked] = [outcomeOf(standing, pouring, window), best.value.chances];
	if (clicked.above > budgets.lean && asked.above <= budgets.lean) return [];
	const after = meanOf(endingsOf(standing, best.value.pouring), widthOf);
	return [{ measure: { kind: "click" }, narrowing: shrinking(width, after), gain: clicked.inside - asked.inside }];
}

function insideOf({ content, weight }: SoundedStanding, [low, high]: ContentRange): number {
	let [inside, all] = [0, 0];
	for (let i = 0; i < content.length; i++) {
		all += weight[i];
		if (content[i] >= low - edgeWidth && content[i] <= high + edgeWidth) inside += weight[i];
	}
	return inside / all;
}

/** Equally likely endings: their mean is what is to be expected. */
function meanOf(endings: readonly Ending[], figure: (ending: Ending) => number): number {
	return endings.reduce((sum, ending) => sum + figure(ending), 0) / endings.length;
}

/** A content that is known already can't be known better. */
function shrinking(before: number, after: number): number {
	return before > 0 ? 1 - after / before : 0;
}
