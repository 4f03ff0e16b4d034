import { useMemo, useRef } from "preact/hooks";
import type { Finding } from "../../../domain/datalog/finding";
import { ChartKey } from "../../components/ChartKey";
import { contentTicks, scale } from "../../components/chartScale";
import { durationWords } from "../../dataLogWords";
import { signedPercent } from "../../shownByte";
import { useMeasures } from "../../useMeasures";
import { dataLogWords } from "../../words/dataLog";
import { timeMarks, trimAxis } from "./trimAxis";
import { bandOf, barsOf, lineOf, mergedSpans } from "./trimPaths";
import "./TrimChart.css";

/** The trims over the log, with the stretches that count. */
export function TrimChart({ steady }: { readonly steady: NonNullable<Finding["steady"]> }) {
	const { chart } = dataLogWords();
	const figure = useRef<HTMLElement>(null);
	const { width, text } = useMeasures(figure);
	const { plot, stretches, found } = steady;
	const axis = trimAxis(plot);
	const box = { left: text * 3.4 + 8, right: width - 12, top: 14, bottom: 200 };
	const x = scale(0, plot.seconds, box.left, box.right);
	const y = scale(axis.from, axis.to, box.bottom, box.top);
	const rows = Math.floor((box.bottom - box.top) / (text * 1.3));
	const spans = useMemo(() => mergedSpans(stretches, x), [stretches, width, text]);
	return (
		<figure class="trimchart" ref={figure}>
			<svg width={width} height={box.bottom + text * 1.5 + 12} role="img" aria-label={summaryOf(steady)}>
				{/* One path each: a long log has hundreds of stretches. */}
				<path class="stretch" d={barsOf(spans, box.top, box.bottom)} />
				<path class="bar" d={barsOf(spans, box.top - 8, box.top - 2)} />
				{contentTicks(axis, rows).map((tick) => (
					<g key={tick}>
						<line class={tick === 0 ? "grid zero" : "grid"} x1={box.left} x2={box.right} y1={y(tick)} y2={y(tick)} />
						<text x={box.left - 6} y={y(tick) + text * 0.35} text-anchor="end" font-size={text}>
							{signedPercent(tick)}
						</text>
					</g>
				))}
				<path class="band" d={bandOf(plot, x, y, axis)} />
				<path class="mean" d={lineOf(plot, x, y, axis)} />
				{found && <line class="found" x1={box.left} x2={box.right} y1={y(found.value)} y2={y(found.value)} />}
				<line class="axis" x1={box.left} x2={box.right} y1={box.bottom} y2={box.bottom} />
				{timeMarks(plot.seconds, (box.right - box.left) / (text * 3.6)).map(({ at, label }) => (
					<g key={at}>
						<line class="axis" x1={x(at)} x2={x(at)} y1={box.bottom} y2={box.bottom + 6} />
						<text {...labelPlace(x(at), label.length * text * 0.3, width)} y={box.bottom + text + 10} font-size={text}>
							{label}
						</text>
					</g>
				))}
			</svg>
			<ul class="keys small">
				<ChartKey label={chart.mean}>
					<path class="mean" d="M0 12H28" />
				</ChartKey>
				<ChartKey label={chart.band}>
					<path class="band" d="M0 4H28V20H0Z" />
				</ChartKey>
				{spans.length > 0 && (
					<ChartKey label={chart.steady}>
						<rect class="stretch" width={28} y={8} height={16} />
						<rect class="bar" width={28} y={2} height={6} />
					</ChartKey>
				)}
				{found && (
					<ChartKey label={chart.median}>
						<path class="found" d="M0 12H28" />
					</ChartKey>
				)}
			</ul>
		</figure>
	);
}

/** Labels at the ends stay inside the drawing. */
function labelPlace(at: number, half: number, width: number) {
	if (at + half > width) return { x: width, "text-anchor": "end" } as const;
	return { x: at, "text-anchor": "middle" } as const;
}

function summaryOf({ plot, stretches, found }: NonNullable<Finding["steady"]>): string {
	const least = plot.low.reduce((a, b) => (b < a ? b : a), Infinity);
	const most = plot.high.reduce((a, b) => (b > a ? b : a), -Infinity);
	const { chart } = dataLogWords();
	const range = most >= least ? [chart.range(signedPercent(least), signedPercent(most))] : [];
	const counted = found
		? chart.counted(durationWords(found.seconds), stretches.length, signedPercent(found.value))
		: chart.nowhere;
	return [chart.over(durationWords(plot.seconds)), ...range, counted].join(" ");
}
