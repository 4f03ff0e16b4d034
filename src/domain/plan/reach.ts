/** What the tank and the products on sale can reach at all at one stop. */
import { ascending, type Column } from "../estimator/belief";
import { quantilesOf } from "../estimator/quantile";
import { type ContentRange, contentRange } from "../quantity";
import { after } from "./outcome";
import type { Planned } from "./request";
import type { Standing } from "./standing";

/** From the least to the most among the content now and the contents with each product to the click, in nine cases of ten. */
export function reachOf(standing: Standing): ContentRange {
	const range = (content: Column) => {
		const quantile = quantilesOf(content, standing.weight, ascending(content));
		return [quantile(0.05), quantile(0.95)];
	};
	const ends = standing.delivered.flatMap((_, only) =>
		range(after(standing, { first: only, second: only, amount: 0, total: Infinity }).content),
	);
	const all = [...range(standing.content), ...ends];
	return contentRange(Math.min(...all), Math.max(...all));
}

/** Whether nothing that is on sale there brings the tank to the window, whatever is poured; and on which side it stays. */
export function outOfReach({ reach }: Pick<Planned, "reach">, window: ContentRange): "below" | "above" | null {
	if (reach[1] < window[0]) return "below";
	return reach[0] > window[1] ? "above" : null;
}
