import { useMemo, useRef } from "preact/hooks";
import { percent } from "../format";
import { findingOf, type HistoryPoint, type Shown } from "../historyView";
import { useMeasures } from "../useMeasures";
import { locale } from "../words/language";
import { logScreenWords } from "../words/log";
import { ChartKey } from "./ChartKey";
import { bandPath, contentTicks, type Step, scale, stepPath, thinned, timeTicks } from "./chartScale";
import { axisFor, type Side } from "./dotLayout";
import "./HistoryChart.css";

/** Points beyond this are thinned out; beyond the other, those inside the window get no mark of their own. */
const mostDrawn = 300;
const mostMarked = 60;

const marks: Readonly<Record<Side, string>> = {
	inside: "M-5 0a5 5 0 1 0 10 0a5 5 0 1 0 -10 0",
	above: "M-7.5 5.5H7.5L0 -8Z",
	below: "M-7.5 -5.5H7.5L0 8Z",
};

/** The ethanol content over time: the median in steps, the range around it, the window in force, and what was measured. */
export function HistoryChart({ shown }: { readonly shown: Shown }) {
	const figure = useRef<HTMLElement>(null);
	const { width, text } = useMeasures(figure);
	const drawing = useMemo(() => drawingOf(shown), [shown]);
	const { steps, readings, corridors, axis, total } = drawing;

	const plot = { left: text * 3 + 8, right: width - 12, top: 10, bottom: 200 };
	const x = scale(shown.from, shown.to, plot.left + 8, plot.right);
	const y = scale(axis.from, axis.to, plot.bottom, plot.top);
	const heights = steps.map(({ at, low, median, high }) => ({ at, low: y(low), y: y(median), high: y(high) }));
	const rows = Math.floor((plot.bottom - plot.top) / (text * 1.5));
	const widthOf = (label: string) => label.length * text * 0.6;
	const times = timeTicks(shown.from, shown.to, x, widthOf);
	const dense = steps.length > mostMarked;
	const r = dense ? 3 : 6;
	// Where a reading stands, its own sign is mark enough; what is outside is always marked.
	const marked = steps.filter(
		({ point }) => point !== shown.held && (point.side !== "inside" || (!dense && point.reading === null)),
	);

	return (
		<figure class={dense ? "history dense" : "history"} ref={figure}>
			<svg width={width} height={plot.bottom + text * 1.5 + 10} role="img" aria-label={findingOf(shown)}>
				{corridors.map(({ from, to, window }) => (
					<rect
						class="corridor"
						key={from}
						x={x(from)}
						width={x(to) - x(from)}
						y={y(window[1])}
						height={y(window[0]) - y(window[1])}
					/>
				))}
				{contentTicks(axis, rows).map((tick) => (
					<g key={tick}>
						<line class="grid" x1={plot.left} x2={plot.right} y1={y(tick)} y2={y(tick)} />
						<text x={plot.left - 6} y={y(tick) + text * 0.35} text-anchor="end" font-size={text}>
							{percent(tick)}
						</text>
					</g>
				))}
				<path class="band" d={bandPath(heights, x, shown.to)} />
				{corridors.map(({ from, to, window }) => (
					<path class="edge" key={from} d={window.map((end) => `M${x(from)} ${y(end)}H${x(to)}`).join("")} />
				))}
				<path class="median" d={stepPath(heights, x, shown.to)} />
				<line class="axis" x1={plot.left} x2={plot.right} y1={plot.bottom} y2={plot.bottom} />
				{times.map(({ at, label }) => (
					<g key={at}>
						<line class="axis" x1={x(at)} x2={x(at)} y1={plot.bottom} y2={plot.bottom + 6} />
						<text
							{...labelPlace(x(at), widthOf(label) / 2, plot.right + 12)}
							y={plot.bottom + text + 10}
							font-size={text}
						>
							{label}
						</text>
					</g>
				))}
				{marked.map(({ at, median, point }) => (
					<path
						class={`mark ${point.side}`}
						key={point.id}
						d={marks[point.side]}
						transform={`translate(${x(at)} ${y(median)})`}
					/>
				))}
				{readings.map(({ at, low, median, high }) => (
					<g key={at} class="reading">
						<path d={`M${x(at)} ${y(low)}V${y(high)}m${-r} 0h${2 * r}M${x(at) - r} ${y(low)}h${2 * r}`} />
						<path class="diamond" d={`M${x(at)} ${y(median) - r}l${r} ${r}l${-r} ${r}l${-r} ${-r}Z`} />
					</g>
				))}
			</svg>
			<Keys
				sides={new Set(marked.map(({ point }) => point.side))}
				window={corridors.length > 0}
				reading={readings.length > 0}
			/>
			{total > steps.length && (
				<p class="small soft">{logScreenWords().thinned(steps.length, total.toLocaleString(locale))}</p>
			)}
		</figure>
	);
}

interface Entry extends Step {
	readonly point: HistoryPoint;
}

/** What is to be drawn, whatever the size. */
function drawingOf({ points, held, windows, from, to }: Shown) {
	const all = [...(held ? [held] : []), ...points].map(
		(point): Entry => ({
			at: Math.max(from, point.at),
			low: point.figures.low,
			median: point.figures.median,
			high: point.figures.high,
			point,
		}),
	);
	const steps = thinned(all, mostDrawn);
	const readings = thinned(
		points.flatMap(({ at, reading }) =>
			reading
				? [
						{
							at,
							low: Math.max(0, reading.value - reading.sd),
							median: reading.value,
							high: Math.min(1, reading.value + reading.sd),
						},
					]
				: [],
		),
		mostMarked,
	);
	const corridors = windows.flatMap(({ from: since, window }, i) => {
		const until = Math.min(to, windows[i + 1]?.from ?? to);
		return window ? [{ from: Math.max(from, since), to: until, window }] : [];
	});
	const contents = [
		...steps.flatMap(({ low, high }) => [low, high]),
		...readings.flatMap(({ low, high }) => [low, high]),
		...corridors.flatMap(({ window }) => window),
	];
	return { steps, readings, corridors, axis: axisFor(contents, null), total: all.length };
}

/** Labels at the ends stay inside the drawing. */
function labelPlace(x: number, half: number, end: number) {
	if (x + half > end) return { x: end, "text-anchor": "end" } as const;
	return x - half < 0 ? ({ x: 0, "text-anchor": "start" } as const) : ({ x, "text-anchor": "middle" } as const);
}

interface KeysProps {
	readonly sides: ReadonlySet<Side>;
	readonly window: boolean;
	readonly reading: boolean;
}

/** What the signs mean; only those that are there. */
function Keys({ sides, window, reading }: KeysProps) {
	const { key } = logScreenWords();
	return (
		<ul class="keys small">
			<ChartKey label={key.median}>
				<path class="median" d="M0 12H28" />
			</ChartKey>
			<ChartKey label={key.range}>
				<path class="band" d="M0 4H28V20H0Z" />
			</ChartKey>
			{window && (
				<ChartKey label={key.window}>
					<path class="corridor" d="M0 5H28V19H0Z" />
					<path class="edge" d="M0 5H28M0 19H28" />
				</ChartKey>
			)}
			{sides.has("above") && (
				<ChartKey label={key.above}>
					<path class="mark above" d={marks.above} transform="translate(14 12)" />
				</ChartKey>
			)}
			{sides.has("below") && (
				<ChartKey label={key.below}>
					<path class="mark below" d={marks.below} transform="translate(14 12)" />
				</ChartKey>
			)}
			{reading && (
				<ChartKey label={key.reading}>
					<g class="reading">
						<path d="M14 1V23M9 1H19M9 23H19" />
						<path class="diamond" d="M14 6l6 6l-6 6l-6 -6Z" />
					</g>
				</ChartKey>
			)}
		</ul>
	);
}
