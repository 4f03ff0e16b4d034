/** What every amount of one more product would lead to, in a single pass over the sample. */
import type { FillEvent } from "../event";
import type { ContentRange, Litres } from "../quantity";
import { seedsFor } from "../random";
import type { Tank } from "../vehicle";
import { arrivedAt, closed } from "./absorb";
import type { Belief } from "./belief";
import { overfillLimit } from "./constants";
import { drawsFor } from "./draws";
import { edgeWidth } from "./estimate";
import type { Outlook } from "./stretch";

/** A fill that has not been made: all but the amount. */
export type Pour = Omit<FillEvent, "litres" | "toClick" | "kind">;

const steps = 240;

/** Share of the sample that must still hold an amount for it to be listed. */
const fits = 0.02;

/**
 * The chances after 0, 1, 2 … steps of litres of the product, up to what the tank may hold. Every particle crosses an edge
 * of the window at one amount at most, (V·E + a·P)/(V + a) running one way in a; the crossings are counted.
 */
export function outlookOf(before: Belief, pour: Pour, tank: Tank, window: ContentRange): Outlook {
	const draws = drawsFor(before.weight.length, seedsFor(pour.id));
	const { belief: arrived, delivered } = arrivedAt(before, { ...pour, kind: "fill" }, tank, draws);
	const { belief } = closed(arrived, tank, draws);
	const step = (overfillLimit * tank.capacityL) / steps;
	const [held, unclicked] = [new Float64Array(steps + 2), new Float64Array(steps + 2)];
	const sides = window.map(() => new Float64Array(steps + 2));
	const signs = [-1, 1] as const;
	const edges = [window[0] - edgeWidth, window[1] + edgeWidth];
	for (let i = 0; i < delivered.length; i++) {
		const weight = belief.weight[i];
		const level = belief.level[i];
		const room = overfillLimit * tank.capacityL * belief.capacityFactor[i] - level;
		const end = Math.min(steps + 1, Math.max(0, Math.floor(room / step) + 1));
		held[0] += weight;
		held[end] -= weight;
		const full = tank.capacityL * belief.capacityFactor[i];
		unclicked[0] += weight;
		unclicked[Math.min(steps + 1, Math.max(1, Math.floor((full - level) / step) + 1))] -= weight;
		for (let side = 0; side < 2; side++) {
			// How far outside on this side: the content in the tank, and the content that is poured.
			const now = signs[side] * (belief.content[i] - edges[side]);
			const poured = signs[side] * (delivered[i] - edges[side]);
			// Steps until the mix is on the edge; it never gets there where what is poured lies on it.
			const reach = Math.abs((level * now) / (poured * step)) || 0;
			let [from, to] = [0, 0];
			if (now > 0) to = poured > 0 ? end : Math.min(end, Math.ceil(reach));
			else if (poured > 0) [from, to] = [Math.min(end, Math.floor(reach) + 1), end];
			sides[side][from] += weight;
			sides[side][to] -= weight;
		}
	}
	const [below, above] = sides;
	const listed: { fits: number[]; above: number[]; below: number[] } = { fits: [], above: [], below: [] };
	const sums = { held: 0, unclicked: 0, below: 0, above: 0 };
	let all = 0;
	for (let k = 0; k <= steps; k++) {
		sums.held += held[k];
		sums.unclicked += unclicked[k];
		sums.below += below[k];
		sums.above += above[k];
		if (k === 0) all = sums.held;
		if (!(sums.held > fits * all)) break;
		listed.fits.push(Math.min(1, Math.max(0, sums.unclicked / all)));
		listed.above.push(Math.min(1, Math.max(0, sums.above / sums.held)));
		listed.below.push(Math.min(1, Math.max(0, sums.below / sums.held)));
	}
	return { step: step as Litres, ...listed };
}
