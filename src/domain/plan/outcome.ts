/**
 * Where a pouring ends, on every particle of a standing. The click comes where it comes: an amount poured first is cut only
 * where it does not fit, and what is missing after an early click is missing of the second product.
 */
import type { Column } from "../estimator/belief";
import { edgeWidth } from "../estimator/estimate";
import type { ContentRange } from "../quantity";
import type { Pouring } from "./pouring";
import type { Chances } from "./request";
import type { Standing } from "./standing";

/** The chances after one pouring. */
export function outcomeOf(standing: Standing, pouring: Pouring, window: ContentRange): Chances {
	return chancesAlong(standing, [pouring], window)[0];
}

/**
 * The chances after each pouring of a row: two products, evenly more of the first of them. Nearly every particle runs one
 * way along the row and crosses an edge of the window once at most, near where a straight line would.
 */
export function chancesAlong(standing: Standing, row: readonly Pouring[], window: ContentRange): Chances[] {
	const { weight, level, content, room, delivered } = standing;
	const [first, second] = [delivered[row[0].first], delivered[row[0].second]];
	const [low, high] = [window[0] - edgeWidth, window[1] + edgeWidth];
	const below = crossings(row);
	const above = crossings(row);
	let all = 0;
	for (let i = 0; i < weight.length; i++) {
		const free = room[i] > 0 ? room[i] : 0;
		all += weight[i];
		below.add(weight[i], free, level[i] * (low - content[i]), low - first[i], low - second[i]);
		above.add(weight[i], free, level[i] * (content[i] - high), first[i] - high, second[i] - high);
	}
	let [under, over] = [0, 0];
	return row.map((_, k) => {
		under += below.steps[k];
		over += above.steps[k];
		return { below: under / all, inside: (all - under - over) / all, above: over / all };
	});
}

/** Gathers in `steps` by how much the weight outside one edge of the window grows from each pouring of a row to the next. */
function crossings(row: readonly Pouring[]) {
	const steps = new Float64Array(row.length);
	const amounts = Float64Array.from(row, ({ amount }) => amount);
	const totals = Float64Array.from(row, ({ total }) => total);
	const sameTotal = totals.every((total) => total === totals[0]);
	const last = row.length - 1;

	/** How far outside after the k-th pouring, L; `now` is how far the tank is, `a` and `b` each litre of the two. */
	function distance(k: number, free: number, now: number, a: number, b: number): number {
		const ofFirst = amounts[k] < free ? amounts[k] : free;
		const inAll = totals[k] < free ? totals[k] : free;
		return now + ofFirst * a + (inAll - ofFirst) * b;
	}

	function add(weight: number, free: number, now: number, a: number, b: number): void {
		const start = distance(0, free, now, a, b);
		const end = distance(last, free, now, a, b);
		const outside = start > 0;
		if (outside) steps[0] += weight;
		// As money buys whole steps, two products on the same side may lead to and fro.
		if (!sameTotal && a * b > 0) addEach(weight, free, now, a, b, outside);
		else if (end > 0 !== outside) {
			let k = Math.ceil((last * start) / (start - end));
			while (k > 1 && distance(k - 1, free, now, a, b) > 0 !== outside) k--;
			while (k < last && distance(k, free, now, a, b) > 0 === outside) k++;
			steps[k] += outside ? -weight : weight;
		}
	}

	function addEach(weight: number, free: number, now: number, a: number, b: number, outside: boolean): void {
		let before = outside;
		for (let k = 1; k <= last; k++) {
			const next = distance(k, free, now, a, b) > 0;
			if (next !== before) steps[k] += next ? weight : -weight;
			before = next;
		}
	}

	return { steps, add };
}

/** Level, L, and content of every particle after a pouring. */
export function after(
	standing: Standing,
	{ first, second, amount, total }: Pouring,
): { level: Column; content: Column } {
	const { room, delivered } = standing;
	const [level, content] = [new Float32Array(room.length), new Float32Array(room.length)];
	for (let i = 0; i < room.length; i++) {
		const free = Math.max(0, room[i]);
		const ofFirst = Math.min(amount, free);
		const ofSecond = Math.min(total, free) - ofFirst;
		const before = standing.level[i];
		level[i] = before + ofFirst + ofSecond;
		const ethanol = before * standing.content[i] + ofFirst * delivered[first][i] + ofSecond * delivered[second][i];
		content[i] = level[i] > 0 ? ethanol / (before + ofFirst + ofSecond) : standing.content[i];
	}
	return { level, content };
}

/** Mean ethanol over mean volume after a pouring, fraction. */
export function mixAfter(standing: Standing, { first, second, amount, total }: Pouring): number {
	const { weight, level, content, room, delivered } = standing;
	let [ethanol, volume] = [0, 0];
	for (let i = 0; i < weight.length; i++) {
		const free = room[i] > 0 ? room[i] : 0;
		const ofFirst = amount < free ? amount : free;
		const ofSecond = (total < free ? total : free) - ofFirst;
		ethanol += weight[i] * (level[i] * content[i] + ofFirst * delivered[first][i] + ofSecond * delivered[second][i]);
		volume += weight[i] * (level[i] + ofFirst + ofSecond);
	}
	return ethanol / volume;
}
