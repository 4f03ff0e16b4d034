import type { Column } from "./belief";

/** Quantile function of a weighted column taken in ascending order, linear between the middles of the particles' weights. */
export function quantilesOf(values: Column, weight: Column, order: Uint32Array): (chance: number) => number {
	const size = values.length;
	const middle = new Float64Array(size);
	let reached = 0;
	for (let i = 0; i < size; i++) {
		const w = weight[order[i]];
		middle[i] = reached + w / 2;
		reached += w;
	}
	const total = reached;
	return (chance) => {
		const mark = chance * total;
		let low = 0;
		let high = size - 1;
		while (low < high) {
			const between = (low + high) >> 1;
			if (middle[between] < mark) low = between + 1;
			else high = between;
		}
		if (low === 0 || middle[low] <= mark) return values[order[low]];
		const step = (mark - middle[low - 1]) / (middle[low] - middle[low - 1]);
		const from = values[order[low - 1]];
		return from + step * (values[order[low]] - from);
	};
}
