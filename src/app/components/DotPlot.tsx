import "./DotPlot.css";
import type { ContentRange } from "../../domain/quantity";
import { exactPercentRange, percent, points } from "../format";
import { tankWords } from "../words/tank";
import { axisFor, type Dot, type Side, stackedDots } from "./dotLayout";

type Bracket = "window" | "label";

export interface DotPlotProps {
	/** Twenty equally likely contents. */
	readonly dots: readonly number[];
	readonly window: ContentRange | null;
	readonly calibratedFor: number | null;
	/** The same before what is being typed; drawn as outlines. */
	readonly before?: readonly number[] | undefined;
	/** Flat, without the window's label: beside the keys. */
	readonly compact?: boolean | undefined;
	/** What the bracket marks, where that is no calibration's window. */
	readonly bracket?: Bracket;
}

const width = 360;

/** Twenty dots over the ethanol axis, standing over the bracket of the calibration's window. */
export function DotPlot({ dots, window, calibratedFor, before, compact, bracket = "window" }: DotPlotProps) {
	const plotHeight = compact ? 74 : 132;
	const baseline = plotHeight + 6;
	const axis = axisFor([...dots, ...(before ?? [])], window);
	const x = (content: number) => 14 + ((content - axis.from) / (axis.to - axis.from)) * (width - 28);
	const layout = stackedDots(dots, window, x, plotHeight);
	const ticks: number[] = [];
	for (let tick = axis.from; tick <= axis.to + 1e-9; tick += axis.step) ticks.push(tick);
	return (
		<figure class="dotplot">
			<svg
				viewBox={`0 0 ${width} ${plotHeight + (compact ? 52 : 74)}`}
				role="img"
				aria-label={summary(layout.dots, window, bracket)}
			>
				{window && <rect class="band" x={x(window[0])} y={0} width={x(window[1]) - x(window[0])} height={baseline} />}
				{before?.map((content, i) => (
					<line class="was" key={i} x1={x(content)} x2={x(content)} y1={baseline - 9} y2={baseline} />
				))}
				{layout.dots.map((dot, i) => (
					<g class="glide" key={i} transform={`translate(${dot.x} ${baseline - dot.y})`}>
						<path class={`dot ${dot.side}`} d={shape(dot.side, layout.radius)} />
					</g>
				))}
				<line class="axis" x1={4} x2={width - 4} y1={baseline} y2={baseline} />
				{ticks.map((tick) => (
					<g key={tick}>
						<line class="axis" x1={x(tick)} x2={x(tick)} y1={baseline} y2={baseline + 5} />
						<text x={x(tick)} y={baseline + 22} text-anchor="middle">
							{points(tick)}
						</text>
					</g>
				))}
				{window && (
					<>
						<path class="bracket" d={`M${x(window[0])} ${baseline + 30} v9 H${x(window[1])} v-9`} />
						{calibratedFor !== null && (
							<line class="bracket" x1={x(calibratedFor)} x2={x(calibratedFor)} y1={baseline + 33} y2={baseline + 39} />
						)}
						{!compact && (
							<text
								class="window"
								x={clampLabel(x((window[0] + window[1]) / 2))}
								y={baseline + 58}
								text-anchor="middle"
							>
								{tankWords().brackets[bracket]} {exactPercentRange(window[0], window[1])}
							</text>
						)}
					</>
				)}
			</svg>
		</figure>
	);
}

function clampLabel(x: number): number {
	return Math.min(width - 76, Math.max(76, x));
}

/** Circles inside; triangles that point the way the content is off. */
function shape(side: Side, radius: number): string {
	const r = radius - 0.75;
	if (side === "inside") return `M${-r} 0a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`;
	const t = r * 1.12;
	return side === "above" ? `M${-t} ${t * 0.8}H${t}L0 ${-t}Z` : `M${-t} ${-t * 0.8}H${t}L0 ${t}Z`;
}

function summary(dots: readonly Dot[], window: ContentRange | null, bracket: Bracket): string {
	const words = tankWords();
	const count = (side: Side) => dots.filter((dot) => dot.side === side).length;
	const spread = words.spread(percent(dots[0].content), percent(dots[dots.length - 1].content));
	if (!window) return spread;
	const range = exactPercentRange(window[0], window[1]);
	return `${spread} ${words.sides(count("inside"), words.within[bracket], range, count("above"), count("below"))}`;
}
