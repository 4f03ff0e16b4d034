/** What every amount of one more product would lead to, in a single pass over the sample. */
import type { FillEvent } from "../event";
import type { ContentRange, Litres } from "../quantity";
import { seedsFor } from "../random";
import type { Tank } from "../vehicle";
import { arrivedAt, closed } from "./absorb";
import type { Belief } from "./belief";
import { overfillLimit } from "./constants";
import { drawsFor } from "./draws";

/** A fill that has not been made: all but the amount. */
export type Pour = Omit<FillEvent, "litres" | "toClick" | "kind">;

/** Chances at evenly spaced amounts, the first of them nothing. */
export interface Outlook {
	/** Distance between amounts, L. */
	readonly step: Litres;
	/** Chance of being above the window after each amount. */
	readonly above: readonly number[];
	readonly below: readonly number[];
}

const steps = 240;

/** Share of the sample that must still hold an amount for it to be listed. */
const fits = 0.02;

/**
 * The chances after 0, 1, 2 … steps of litres of the product, up to what the tank may hold. Every particle crosses an edge
 * of the window at one amount at most, (V·E + a·P)/(V + a) running one way in a; the crossings are counted.
 */
export function outlookOf(before: Belief, pour: Pour, tank: Tank, window: ContentRange): Outlook {
	const draws = drawsFor(before.order, seedsFor(pour.id));
	const { belief: arrived, delivered } = arrivedAt(before, { ...pour, kind: "fill" }, tank, draws);
	const { belief } = closed(arrived, tank, draws);
	const step = (overfillLimit * tank.capacityL) / steps;
	const held = new Float64Array(steps + 2);
	const sides = window.map(() => new Float64Array(steps + 2));
	const signs = [-1, 1] as const;
	for (let i = 0; i < delivered.length; i++) {
		const weight = belief.weight[i];
		const level = belief.level[i];
		const room = overfillLimit * tank.capacityL * belief.capacityFactor[i] - level;
		const end = Math.min(steps + 1, Math.max(0, Math.floor(room / step) + 1));
		held[0] += weight;
		held[end] -= weight;
		for (let side = 0; side < 2; side++) {
			// How far outside on this side: the content in the tank, and the content that is poured.
			const now = signs[side] * (belief.content[i] - window[side]);
			const poured = signs[side] * (delivered[i] - window[side]);
			const crossing = now > 0 !== poured > 0 ? Math.min(end, Math.ceil((level * now) / (-poured * step))) : end;
			const [from, to] = now > 0 ? [0, crossing] : poured > 0 ? [crossing, end] : [0, 0];
			sides[side][from] += weight;
			sides[side][to] -= weight;
		}
	}
	const [below, above] = sides;
	const listed: { above: number[]; below: number[] } = { above: [], below: [] };
	const sums = { held: 0, below: 0, above: 0 };
	let all = 0;
	for (let k = 0; k <= steps; k++) {
		sums.held += held[k];
		sums.below += below[k];
		sums.above += above[k];
		if (k === 0) all = sums.held;
		if (!(sums.held > fits * all)) break;
		listed.above.push(Math.min(1, Math.max(0, sums.above / sums.held)));
		listed.below.push(Math.min(1, Math.max(0, sums.below / sums.held)));
	}
	return { step: step as Litres, ...listed };
}

/** Budgets for the two sides, as chances. */
export interface Budgets {
	readonly lean: number;
	readonly knock: number;
}

/** The amounts between which both chances are within budget, L; null where none is. The first such stretch counts. */
export function insideStretch(
	outlook: Outlook,
	budgets: Budgets,
): { readonly from: Litres; readonly to: Litres } | null {
	const inside = (k: number) => outlook.above[k] <= budgets.lean && outlook.below[k] <= budgets.knock;
	const count = outlook.above.length;
	let from = 0;
	while (from < count && !inside(from)) from++;
	if (from === count) return null;
	let to = from;
	while (to + 1 < count && inside(to + 1)) to++;
	return { from: (from * outlook.step) as Litres, to: (to * outlook.step) as Litres };
}

/** The first amount after which the lean chance exceeds the budget, having kept to it before, L; null where that never happens. */
export function leanLimit(outlook: Outlook, budgets: Budgets): Litres | null {
	const at = outlook.above.findIndex((chance) => chance > budgets.lean);
	return at < 0 ? null : ((at * outlook.step) as Litres);
}
