import { useMemo } from "preact/hooks";
import type { Estimate } from "../../../domain/estimator/estimate";
import { fraction } from "../../../domain/quantity";
import { curveWords, propertyValue } from "../../engineWords";
import { percent } from "../../format";
import type { BlendProperty } from "./blendProperty";
import { curveOf, plot } from "./curve";

interface PropertyCurveProps {
	readonly property: BlendProperty;
	readonly tank: Estimate | null;
	readonly calibratedFor: number | null;
	readonly chosen: number;
}

/** A property over all contents; the tank's range is a band, and the part of the curve in it is thick. */
export function PropertyCurve({ property, tank, calibratedFor, chosen }: PropertyCurveProps) {
	const curve = useMemo(() => curveOf(property), [property]);
	const { id, of } = property;
	const ends = [of(fraction(0)), of(fraction(1))] as const;
	const band = tank && { low: percent(tank.low), high: percent(tank.high) };
	const x = (content: number) => content * plot.width;
	return (
		<div class="curve">
			<svg
				viewBox={`0 0 ${plot.width} ${plot.height}`}
				preserveAspectRatio="none"
				role="img"
				aria-label={curveWords(id, ends, band)}
			>
				{tank && (
					<rect
						class="band"
						x={x(tank.low)}
						width={Math.max(0.5, x(tank.high) - x(tank.low))}
						y={0}
						height={plot.height}
					/>
				)}
				{curve.shade && <path class="unlike" d={curve.shade} />}
				<line class="axis" x1={0} x2={plot.width} y1={plot.height} y2={plot.height} />
				<path class="line" d={curve.line} />
				{tank && <path class="line likely" d={curve.part(tank.low, tank.high)} />}
				{calibratedFor !== null && <Spot kind="calibrated" at={curve.point(calibratedFor)} />}
				{tank && <Spot kind="tank" at={curve.point(tank.median)} />}
				<Spot kind="chosen" at={curve.point(chosen)} />
			</svg>
			<div class="ends small" aria-hidden="true">
				<span>E0: {propertyValue(id, ends[0])}</span>
				<span>E100: {propertyValue(id, ends[1])}</span>
			</div>
		</div>
	);
}

export type SpotKind = "tank" | "calibrated" | "chosen";

/** A stroke without length is a dot or a square of the stroke's width, whatever the drawing is stretched to. */
function Spot({ kind, at: [x, y] }: { readonly kind: SpotKind; readonly at: readonly [number, number] }) {
	const d = `M${x} ${y}h0.001`;
	return (
		<>
			<path class={`spot ${kind}`} d={d} />
			{kind === "chosen" && <path class="spot hole" d={d} />}
		</>
	);
}

/** The same spot beside its meaning. */
export function SpotSign({ kind }: { readonly kind: SpotKind }) {
	return (
		<svg class="spotsign" viewBox="0 0 20 20" width="1em" height="1em" aria-hidden="true">
			<Spot kind={kind} at={[10, 10]} />
		</svg>
	);
}
