/**
 * The planner's oracle: every plan of the grid tried out in plain loops, particle by particle, and the best picked by
 * comparing each with all. Shares no code with the search.
 */
import type { PlanRequest } from "../../../src/domain/plan/request";
import type { Standing } from "../../../src/domain/plan/standing";

export interface BrutePlan {
	readonly products: readonly string[];
	readonly litres: readonly number[];
	readonly toClick: boolean;
	readonly below: number;
	readonly inside: number;
	readonly above: number;
	readonly cost: number | null;
	readonly verdict: string;
	/** The same amounts in the other order: chances below and above; null for one product. */
	readonly swapped: readonly [below: number, above: number] | null;
}

interface Tried extends Omit<BrutePlan, "swapped"> {
	readonly mix: number;
	readonly other: (() => Tried) | null;
}

const near = 1e-9;

/** The best plan, or the code of why there is none. */
export function bruteForcePlan(standing: Standing, request: PlanRequest): BrutePlan | string {
	const { offers, fullness, handling, target } = request;
	const prices = offers.map((offer) => offer.pricePerLitre);
	const sure = quantile(standing, 0.05);
	const median = quantile(standing, 0.5);
	const least = Math.max(handling.minimum, 2 * near);
	const afford = (money: number, price: number) => Math.floor(money / price / handling.step + near) * handling.step;

	if (offers.length === 0) return "nothingOnSale";
	if (fullness.kind === "money") {
		if (prices.some((price) => price === undefined)) return "noPrice";
		if (prices.every((price) => afford(fullness.amount, price!) < least - near)) return "tooLittleMoney";
	}
	if (fullness.kind === "litres" && fullness.litres < least - near) return "tooLittle";
	if (median < least - near) return "full";
	if (fullness.kind === "litres" && fullness.litres > Math.min(median, sure + handling.step / 2) + near)
		return "doesNotFit";

	const best = (plans: readonly Tried[], ...measures: ((plan: Tried) => number)[]): BrutePlan => {
		const { other, mix: _mix, ...plan } = first(plans, measures);
		const turned = other?.();
		return { ...plan, swapped: turned ? [turned.below, turned.above] : null };
	};
	const tried: Tried[] = [];
	for (let i = 0; i < offers.length; i++) {
		for (let j = 0; j < offers.length; j++) {
			if (i !== j && request.pours === 1) continue;
			for (let k = i === j ? 0 : 1; k * handling.step <= sure + near || k === 0; k++) {
				if (i === j && k > 0) break;
				const one = k * handling.step;
				let two = Number.POSITIVE_INFINITY;
				if (fullness.kind === "litres") two = fullness.litres - one;
				if (fullness.kind === "money") two = afford(fullness.amount - one * prices[i]!, prices[j]!);
				const shown = Math.min(two, median - one);
				if ((k > 0 && one < least - near) || shown < least - near) continue;
				tried.push(attempt(standing, request, i, j, one, two, shown, median));
			}
		}
	}
	const within = tried.filter((plan) => plan.above <= target.budgets.lean);
	const distance = (plan: Tried) => Math.abs(plan.mix - target.aim);
	const counts = fullness.kind !== "money" && prices.every((price) => price !== undefined);
	const money = (plan: Tried) => (counts ? plan.cost! : 0);
	const count = (plan: Tried) => plan.litres.length;
	if (within.length === 0) {
		const smallest = Math.min(...tried.map(({ above }) => above));
		return best(
			tried.filter(({ above }) => above <= smallest + 0.005),
			distance,
			money,
			count,
		);
	}
	const likeliest = Math.max(...within.map(({ inside }) => inside));
	if (likeliest < 0.05) return best(within, distance, money, count);
	return best(
		within.filter(({ inside }) => inside >= likeliest - 0.005),
		money,
		count,
		({ inside }) => -inside,
	);
}

function attempt(
	standing: Standing,
	{ offers, target }: PlanRequest,
	i: number,
	j: number,
	one: number,
	two: number,
	shown: number,
	median: number,
): Tried {
	const sums = { all: 0, below: 0, above: 0, ethanol: 0, volume: 0 };
	for (let n = 0; n < standing.weight.length; n++) {
		const w = standing.weight[n];
		const room = Math.max(0, standing.room[n]);
		const a = Math.min(one, room);
		const b = Math.min(two, room - a);
		const volume = standing.level[n] + a + b;
		const ethanol =
			standing.level[n] * standing.content[n] + a * standing.delivered[i][n] + b * standing.delivered[j][n];
		const content = ethanol / volume;
		sums.all += w;
		if (content < target.window[0] - 1e-6) sums.below += w;
		if (content > target.window[1] + 1e-6) sums.above += w;
		sums.ethanol += w * ethanol;
		sums.volume += w * volume;
	}
	const above = sums.above / sums.all;
	const below = sums.below / sums.all;
	const [p, q] = [offers[i].pricePerLitre, offers[j].pricePerLitre];
	const cost = i === j ? shown * (q ?? Number.NaN) : one * (p ?? Number.NaN) + shown * (q ?? Number.NaN);
	return {
		products: i === j ? [offers[j].product.id] : [offers[i].product.id, offers[j].product.id],
		litres: i === j ? [shown] : [one, shown],
		toClick: one + two > median,
		below,
		inside: (sums.all - sums.below - sums.above) / sums.all,
		above,
		cost: Number.isNaN(cost) ? null : cost,
		verdict: above > target.budgets.lean ? "lean" : below > target.budgets.knock ? "knock" : "inside",
		mix: sums.ethanol / sums.volume,
		other:
			i === j
				? null
				: () => attempt(standing, { offers, target } as PlanRequest, j, i, shown, one + two - shown, one, median),
	};
}

/** The plan that no other beats, the earliest of those. */
function first(plans: readonly Tried[], measures: readonly ((plan: Tried) => number)[]): Tried {
	return plans.reduce((best, plan) => {
		for (const measure of measures) {
			const gain = measure(best) - measure(plan);
			if (Math.abs(gain) > near) return gain > 0 ? plan : best;
		}
		return best;
	});
}

/** Quantile of the room, linear between the middles of the particles' weights. */
function quantile({ room, weight }: Standing, chance: number): number {
	const sorted = Array.from(room, (litres, n) => ({ litres: Math.fround(Math.max(0, litres)), w: weight[n] })).sort(
		(a, b) => a.litres - b.litres,
	);
	const mark = chance * sorted.reduce((sum, { w }) => sum + w, 0);
	let [reached, before] = [0, { middle: Number.NaN, litres: Number.NaN }];
	for (const { litres, w } of sorted) {
		const middle = reached + w / 2;
		if (middle >= mark) {
			if (Number.isNaN(before.middle)) return litres;
			return before.litres + ((litres - before.litres) * (mark - before.middle)) / (middle - before.middle);
		}
		reached += w;
		before = { middle, litres };
	}
	return before.litres;
}
