/** A property over 0 to 100 % ethanol as a drawing of 100 by 40, the higher value on top. */
import { type Fraction, fraction } from "../../../domain/quantity";
import type { BlendProperty } from "./blendProperty";

export const plot = { width: 100, height: 40 } as const;
const margin = 4;
const steps = 100;

export interface Curve {
	/** Of the usual gasoline. */
	readonly line: string;
	/** Between the unlike gasolines; null where there are none. */
	readonly shade: string | null;
	/** The line from one content to another. */
	readonly part: (low: number, high: number) => string;
	readonly point: (content: number) => readonly [x: number, y: number];
}

export function curveOf({ of, unlike }: BlendProperty): Curve {
	const contents = Array.from({ length: steps + 1 }, (_, i) => fraction(i / steps));
	const sides = unlike?.map((base) => contents.map((content) => of(content, base)));
	const all = [...contents.map((content) => of(content)), ...(sides?.flat() ?? [])];
	const [least, most] = [Math.min(...all), Math.max(...all)];
	const y = (value: number) =>
		plot.height - margin - ((value - least) / (most - least || 1)) * (plot.height - 2 * margin);
	const at = (content: number, value: number) => `${rounded(content * plot.width)} ${rounded(y(value))}`;
	const along = (points: readonly Fraction[]) => `M${points.map((content) => at(content, of(content))).join("L")}`;
	const side = (values: readonly number[]) => values.map((value, i) => at(contents[i], value));
	return {
		line: along(contents),
		shade: sides ? `M${[...side(sides[0]), ...side(sides[1]).reverse()].join("L")}Z` : null,
		part: (low, high) =>
			along([fraction(low), ...contents.filter((content) => content > low && content < high), fraction(high)]),
		point: (content) => [content * plot.width, y(of(fraction(content)))],
	};
}

function rounded(value: number): number {
	return Math.round(value * 100) / 100;
}
