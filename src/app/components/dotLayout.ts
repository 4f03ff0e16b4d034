/** Where the dots stand. */
import type { ContentRange } from "../../domain/quantity";

export type Side = "below" | "inside" | "above";

export interface Dot {
	readonly content: number;
	/** Centre, in the drawing's units; y counts upwards from the axis. */
	readonly x: number;
	readonly y: number;
	readonly side: Side;
}

export function sideOf(content: number, window: ContentRange | null): Side {
	if (!window) return "inside";
	return content < window[0] ? "below" : content > window[1] ? "above" : "inside";
}

/** An axis in whole tens of percent (or fives) that shows all dots and the window. */
export function axisFor(contents: readonly number[], window: ContentRange | null) {
	const shown = [...contents, ...(window ?? [])];
	const low = Math.max(0, Math.min(...shown) - 0.03);
	const high = Math.min(1, Math.max(...shown) + 0.03);
	const step = high - low > 0.25 ? 0.1 : 0.05;
	// Multiples of the step, reckoned in whole percent to keep out the crumbs of binary fractions.
	const percentStep = Math.round(step * 100);
	const from = Math.floor((low * 100) / percentStep) * percentStep;
	const to = Math.min(100, Math.ceil((high * 100) / percentStep) * percentStep);
	return { from: from / 100, to: to / 100, step };
}

const largestRadius = 8.5;

/**
 * Dots in ascending order piled into columns one dot wide, as large as the height allows
 * (Wilkinson, The American Statistician 53 (1999) 276).
 */
export function stackedDots(
	contents: readonly number[],
	window: ContentRange | null,
	xOf: (content: number) => number,
	height: number,
): { readonly dots: readonly Dot[]; readonly radius: number } {
	for (let radius = largestRadius; ; radius -= 0.5) {
		const dots: Dot[] = [];
		let highest = 0;
		let column = { x: -Infinity, side: "inside" as Side, count: 0 };
		for (const content of contents) {
			const x = xOf(content);
			const side = sideOf(content, window);
			// A column never mixes sides, and the next one makes room for it: upwards, which is still its own side of the edge.
			if (side !== column.side) column = { x: Math.max(x, column.x + 2 * radius), side, count: 0 };
			else if (x - column.x > 2 * radius) column = { x, side, count: 0 };
			column.count++;
			dots.push({ content, x: column.x, y: (2 * column.count - 1) * radius + 2, side });
			highest = Math.max(highest, 2 * column.count * radius + 2);
		}
		if (highest <= height || radius <= 3) return { dots, radius };
	}
}
