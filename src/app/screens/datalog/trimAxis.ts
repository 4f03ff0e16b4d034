/** Axes of the drawing of trims. */
import type { Plot } from "../../../domain/datalog/plot";
import { clockWords } from "../../dataLogWords";

/** Trims beyond this are drawn at the edge. */
const widest = 0.4;

/** Ends that hold what is drawn and nothing, with steps of five percent or more. */
export function trimAxis({ low, high }: Plot): { readonly from: number; readonly to: number; readonly step: number } {
	let [least, most] = [0, 0];
	for (const value of low) if (value < least) least = value;
	for (const value of high) if (value > most) most = value;
	const step = 0.05;
	const from = Math.max(-widest, Math.floor(least / step - 0.2) * step);
	const to = Math.min(widest, Math.ceil(most / step + 0.2) * step);
	return { from, to: Math.max(to, from + 2 * step), step };
}

const steps = [10, 30, 60, 120, 300, 600, 1200, 1800, 3600, 7200, 14_400, 36_000, 86_400];

/** Marks along the log's time, not more than so many. */
export function timeMarks(seconds: number, most: number): readonly { readonly at: number; readonly label: string }[] {
	const step = steps.find((each) => seconds / each <= Math.max(1, most - 1)) ?? steps[steps.length - 1];
	return Array.from({ length: Math.floor(seconds / step) + 1 }, (_, i) => ({
		at: i * step,
		label: clockWords(i * step),
	}));
}
