/** Where everything of the picture of origins lies, in CSS pixels. */
import type { Origin } from "../../../domain/why/origins";
import { percent } from "../../format";

const gap = 2;

/**
 * One column for each origin, as wide as its share of the fuel and as high as its content, so that its area is its ethanol.
 * The scale ends at the next tenth above the strongest, and room for its labels is left on the right.
 */
export function originPicture(origins: readonly Origin[], content: number, width: number, text: number) {
	const most = Math.min(
		1,
		Math.ceil(10 * Math.max(0.1, content, ...origins.map((origin) => origin.content.high))) / 10,
	);
	const [plot, margin] = [170, text + 8];
	const height = margin + plot + margin;
	const y = (value: number) => margin + plot * (1 - Math.min(1, value / most));
	const free = width - 3.5 * text;
	let x = 0;
	const columns = origins.map((origin, i) => {
		const wide = Math.max(1, origin.share * free - gap);
		const mean = origin.share > 0 ? origin.ethanol / origin.share : 0;
		const column = {
			x,
			width: wide,
			top: y(mean),
			bottom: y(0),
			low: y(origin.content.low),
			high: y(origin.content.high),
			// A column too narrow for its number is known by its place in the row.
			number: wide >= text * 0.7 ? String(i + 1) : null,
		};
		x += origin.share * free;
		return column;
	});
	const lines = [0, most / 2, most].map((value) => ({ y: y(value), label: percent(value) }));
	return { height, columns, lines, level: { y: y(content), width: free } };
}
