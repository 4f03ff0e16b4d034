/** What it is worth to plan anew once a reading before the fill is known. */
import { ascending, type Column } from "../estimator/belief";
import { edgeWidth } from "../estimator/estimate";
import { quantilesOf } from "../estimator/quantile";
import type { ContentRange, Litres } from "../quantity";
import { leanLimit } from "./choice";
import type { Instrument } from "./instrument";
import { type Pouring, pouringsOf } from "./pouring";
import type { PlanRequest } from "./request";
import { early } from "./room";
import { classesOf, massOf, outcomesOf, weighted } from "./shown";
import type { Standing } from "./standing";

/** Every plan that may be chosen, and where each particle ends with it. */
export interface Prospects {
	readonly weight: Column;
	/** What goes in until the click, L. */
	readonly room: Column;
	/** Particles in ascending order of room. */
	readonly byRoom: Uint32Array;
	/** Neighbours are much alike. */
	readonly plans: readonly Plan[];
	readonly leanBudget: number;
}

interface Plan {
	/** Room that must be sure for it to be made, L. */
	readonly needs: number;
	/** Particles that end on another side of the window than with the plan before, and both sides. */
	readonly particle: readonly number[];
	readonly from: readonly number[];
	readonly to: readonly number[];
}

/** Sides; before the first plan every particle counts as below. */
const [below, inside, above] = [0, 1, 2];

/** Plans tried at most; of more only every n-th is. */
const mostPlans = 400;

/** Amounts that differ by less differ by rounding alone, L. */
const tiny = 1e-6;

/** What a request allows on a standing, or may allow once more is known; in any case `present`, the plan that is best now. */
export function prospectsOf(standing: Standing, request: PlanRequest, present: Pouring): Prospects {
	const { weight } = standing;
	const { window, budgets } = request.target;
	const room = Float32Array.from(standing.room, (litres) => Math.max(0, litres));
	const byRoom = ascending(room);
	const most = quantilesOf(room, weight, byRoom)(1 - early) as Litres;
	const allowed = pouringsOf(request, { sure: most, median: most });
	const all = allowed.ok ? allowed.value.flat().filter((pouring) => isNews(pouring, request)) : [];
	const each = Math.ceil(all.length / mostPlans);
	const side = new Uint8Array(weight.length);
	const plans = [present, ...all.filter((_, i) => i % each === 0)].map((pouring) => ({
		// So many litres in all fit as they are: else they could not be planned.
		needs: request.fullness.kind === "litres" ? 0 : pouring.amount,
		...changesTo(side, standing, pouring, window),
	}));
	return { weight, room, byRoom, plans, leanBudget: budgets.lean };
}

/** So many litres in all, or so much money, buy the same in either order. */
function isNews({ first, second }: Pouring, { fullness }: PlanRequest): boolean {
	return fullness.kind === "click" || first <= second;
}

/** Brings `side` from the pouring before to this one, and tells what that changed. */
function changesTo(side: Uint8Array, standing: Standing, pouring: Pouring, window: ContentRange): Omit<Plan, "needs"> {
	const { level, content, room, delivered } = standing;
	const { amount, total } = pouring;
	const [first, second] = [delivered[pouring.first], delivered[pouring.second]];
	const [low, high] = [window[0] - edgeWidth, window[1] + edgeWidth];
	const [particle, from, to]: number[][] = [[], [], []];
	for (let i = 0; i < side.length; i++) {
		const free = room[i] > 0 ? room[i] : 0;
		const a = amount < free ? amount : free;
		const b = (total < free ? total : free) - a;
		const volume = level[i] + a + b;
		const ethanol = level[i] * content[i] + a * first[i] + b * second[i];
		const next = ethanol < low * volume ? below : ethanol > high * volume ? above : inside;
		if (next === side[i]) continue;
		particle.push(i);
		from.push(side[i]);
		to.push(next);
		side[i] = next;
	}
	return { particle, from, to };
}

/** The chance of ending inside with the plan that is best now: within the lean budget if any is, and most likely inside. */
export function insideNow(prospects: Prospects): number {
	const of = new Uint16Array(prospects.weight.length);
	const mass = massOf({ of, middle: new Float64Array(1) }, prospects.weight);
	return bestInside(prospects, of, mass, talliesOf(prospects, of, 1), [1]);
}

/** The same to be expected with the plan that is best once an instrument is read before the fill. */
export function insideAfter(prospects: Prospects, instrument: Instrument): number {
	const { weight } = prospects;
	const truth = new Float64Array(weight.length);
	for (let i = 0; i < truth.length; i++) truth[i] = instrument.truth(i, Number.NaN);
	const classes = classesOf(truth);
	const mass = massOf(classes, weight);
	const tallies = talliesOf(prospects, classes.of, mass.length);
	let [expected, told] = [0, 0];
	for (const { chance, likelihood } of outcomesOf(classes, mass, instrument)) {
		expected += chance * bestInside(prospects, classes.of, mass, tallies, likelihood);
		told += chance;
	}
	return expected + (1 - told) * insideNow(prospects);
}

/** Weight that ends inside and above with one plan, by class. */
interface Tally {
	readonly inside: Float64Array;
	readonly above: Float64Array;
}

function talliesOf({ weight, plans }: Prospects, of: Uint16Array, classes: number): Tally[] {
	const sides = [below, inside, above].map(() => new Float64Array(classes));
	for (let i = 0; i < of.length; i++) sides[below][of[i]] += weight[i];
	return plans.map(({ particle, from, to }) => {
		for (let k = 0; k < particle.length; k++) {
			const i = particle[k];
			sides[from[k]][of[i]] -= weight[i];
			sides[to[k]][of[i]] += weight[i];
		}
		return { inside: sides[inside].slice(), above: sides[above].slice() };
	});
}

function bestInside(
	prospects: Prospects,
	of: Uint16Array,
	mass: Float64Array,
	tallies: readonly Tally[],
	likelihood: ArrayLike<number>,
): number {
	const { plans, leanBudget } = prospects;
	const total = weighted(mass, likelihood);
	const sure = sureRoom(prospects, of, likelihood, total) + tiny;
	const left = tallies.filter((_, plan) => plans[plan].needs <= sure);
	const lean = left.map((tally) => weighted(tally.above, likelihood) / total);
	const least = lean.reduce((found, chance) => Math.min(found, chance), 1);
	const limit = leanLimit(least, leanBudget);
	const kept = left.filter((_, plan) => lean[plan] <= limit);
	return kept.reduce((best, tally) => Math.max(best, weighted(tally.inside, likelihood) / total), 0);
}

/** What surely goes in, L, as `roomOf` has it. */
function sureRoom({ weight, room, byRoom }: Prospects, of: Uint16Array, likelihood: ArrayLike<number>, total: number) {
	let left = early * total;
	let k = 0;
	while (k < byRoom.length - 1 && left > 0) {
		left -= weight[byRoom[k]] * likelihood[of[byRoom[k]]];
		if (left > 0) k++;
	}
	return room[byRoom[k]];
}
