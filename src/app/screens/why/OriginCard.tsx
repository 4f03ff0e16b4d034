import { useRef } from "preact/hooks";
import type { VolumeUnit } from "../../../domain/units";
import type { Why } from "../../../domain/why/why";
import { percent } from "../../format";
import { useMeasures } from "../../useMeasures";
import { originName, originWords } from "../../whyWords";
import { whyWords } from "../../words/why";
import { originPicture } from "./originPicture";

interface OriginCardProps {
	readonly why: Why;
	readonly unit: VolumeUnit;
	/** Median content of the tank. */
	readonly content: number;
}

/** Where the fuel and its ethanol come from: drawn, and said in a list. */
export function OriginCard({ why: { origins, stops }, unit, content }: OriginCardProps) {
	const figure = useRef<HTMLElement>(null);
	const { width, text } = useMeasures(figure);
	if (stops.length === 0) return null;
	const words = whyWords();
	const all = origins.reduce((sum, { ethanol }) => sum + ethanol, 0);
	const { height, columns, lines, level } = originPicture(origins, content, width, text);
	return (
		<section class="card why" aria-label={words.origins}>
			<h2>{words.origins}</h2>
			<figure ref={figure}>
				<svg
					class="origins"
					viewBox={`0 0 ${width} ${height}`}
					width={width}
					height={height}
					role="img"
					aria-label={words.picture(percent(content))}
				>
					{lines.map(({ y, label }) => (
						<g key={label}>
							<line class="grid" x1={0} x2={width} y1={y} y2={y} />
							<text x={width} y={y - 3} font-size={text} text-anchor="end">
								{label}
							</text>
						</g>
					))}
					{columns.map(({ x, width: wide, top, bottom, low, high, number }) => (
						<g key={x}>
							<rect class="ethanol" x={x} width={wide} y={top} height={Math.max(1, bottom - top)} />
							{high < low - 2 &&
								["spread halo", "spread"].map((kind) => (
									<path key={kind} class={kind} d={spreadPath(x + wide / 2, Math.min(8, wide / 3), low, high)} />
								))}
							{number && (
								<text x={x + wide / 2} y={height - 3} font-size={text} text-anchor="middle">
									{number}
								</text>
							)}
						</g>
					))}
					<line class="mix" x1={0} x2={level.width} y1={level.y} y2={level.y} />
				</svg>
				<figcaption class="small">{words.pictureKey}</figcaption>
			</figure>
			<ol class="origin">
				{origins.map((origin) => (
					<li key={origin.fill?.id ?? "older"}>
						<strong>{originName(origin)}</strong>
						<span class="small">{originWords(origin, all, unit)}</span>
					</li>
				))}
			</ol>
		</section>
	);
}

/** An upright stroke with its ends. */
function spreadPath(x: number, arm: number, low: number, high: number): string {
	return `M${x - arm} ${high}H${x + arm}M${x} ${high}V${low}M${x - arm} ${low}H${x + arm}`;
}
