/** The trims of a log, few enough to be drawn. */
import type { Grid } from "./grid";

/** Ends and mean of the trims in equal parts of the log's time; NaN where nothing is logged. */
export interface Plot {
	readonly seconds: number;
	readonly low: Float32Array;
	readonly mean: Float32Array;
	readonly high: Float32Array;
}

export function plotOf(values: Float32Array, { stepS, steps }: Grid, most: number): Plot {
	const parts = Math.min(most, steps);
	const [low, mean, high] = [0, 1, 2].map(() => new Float32Array(parts).fill(Number.NaN));
	for (let part = 0; part < parts; part++) {
		let [sum, count] = [0, 0];
		const to = Math.floor(((part + 1) * steps) / parts);
		for (let i = Math.floor((part * steps) / parts); i < to; i++) {
			const value = values[i];
			if (Number.isNaN(value)) continue;
			sum += value;
			count++;
			if (!(value >= low[part])) low[part] = value;
			if (!(value <= high[part])) high[part] = value;
		}
		mean[part] = sum / count;
	}
	return { seconds: steps * stepS, low, mean, high };
}
