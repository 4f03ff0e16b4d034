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
 * Dots piled into columns one dot wide, as large as the height allows (Wilkinson, The American Statistician 53 (1999) 276).
 * The columns are counted from the window's lower edge and fill it evenly, so that none straddles an edge.
 */
export function stackedDots(
	contents: readonly number[],
	window: ContentRange | null,
	xOf: (content: number) => number,
	height: number,
): { readonly dots: readonly Dot[]; readonly radius: number } {
	const [low, high] = window ? window.map(xOf) : [xOf(0), xOf(1)];
	for (let largest = largestRadius; ; largest -= 0.5) {
		const width = (high - low) / Math.max(1, Math.round((high - low) / (2 * largest)));
		const radius = Math.min(largest, width / 2);
		const piled = new Map<number, number>();
		const dots = contents.map((content): Dot => {
			const side = sideOf(content, window);
			const at = Math.floor((xOf(content) - low) / width);
			// What lies just on an edge goes to its own side of it.
			const last = Math.round((high - low) / width) - 1;
			const column =
				side === "below"
					? Math.min(at, -1)
					: side === "above"
						? Math.max(at, last + 1)
						: Math.min(Math.max(at, 0), last);
			const count = (piled.get(column) ?? 0) + 1;
			piled.set(column, count);
			return { content, x: low + (column + 0.5) * width, y: (2 * count - 1) * radius + 2, side };
		});
		if (Math.max(...piled.values()) * 2 * radius + 2 <= height || largest <= 3) return { dots, radius };
	}
}
