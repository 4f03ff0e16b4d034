import type { ComponentChildren } from "preact";
import type { LimitKind } from "../../../domain/engine/capability";
import type { FuelSystem } from "../../../domain/engine/fuelSystem";
import type { FuelSystemLimits } from "../../../domain/engine/limits";
import type { Estimate } from "../../../domain/estimator/estimate";
import { flooredEdge } from "../../calibrationDraft";
import { exactPercent, percent, percentRange } from "../../format";
import { limitWords, missingWords } from "../../fuelSystemWords";
import { fuelSystemWords } from "../../words/fuelSystem";

const kinds: readonly LimitKind[] = ["injectors", "pump", "trim", "lambda"];

interface LimitBarsProps {
	readonly found: FuelSystemLimits;
	readonly system: FuelSystem;
	readonly calibrated: boolean;
	readonly tank: Estimate | null;
	/** Upper edge of the calibration's window. */
	readonly upper: number | null;
}

/** Each limit with its spread on one scale from 0 to 100 %, and above them the tank. */
export function LimitBars({ found: { limits, leanEdge }, system, calibrated, tank, upper }: LimitBarsProps) {
	const texts = fuelSystemWords();
	const edge = leanEdge && flooredEdge(leanEdge.content);
	return (
		<div class="limits">
			<ul>
				{tank && (
					<li>
						<p>
							<strong>{texts.tank}:</strong> {texts.about(percent(tank.median))}{" "}
							<span class="nowrap">({percentRange(tank.low, tank.high)})</span>
						</p>
						<Bar {...tank} edge={edge} upper={upper} kind="tank" />
					</li>
				)}
				{kinds.map((kind) => {
					const limit = limits[kind];
					const words = limit ? limitWords(limit) : { is: missingWords(kind, system, calibrated) };
					return (
						<li key={kind}>
							<p>
								<strong>{texts.kinds[kind]}:</strong> {words.is}{" "}
								{words.range && <span class="nowrap">({words.range})</span>}
								{leanEdge?.binding === kind && <strong class="binds">{texts.binds}</strong>}
							</p>
							{limit && <Bar {...limit} edge={edge} upper={upper} kind="limit" />}
						</li>
					);
				})}
			</ul>
			<div class="ends small" aria-hidden="true">
				<span>E0</span>
				<span>E50</span>
				<span>E100</span>
			</div>
			<ul class="keys small">
				<li>
					<BarSign>
						<rect class="span" x={0} y={6} width={100} height={18} />
						<line class="middle" x1={50} x2={50} y1={3} y2={27} />
					</BarSign>
					{texts.keys.span}
				</li>
				{edge !== null && (
					<li>
						<BarSign>
							<line class="edge" x1={50} x2={50} y1={0} y2={30} />
						</BarSign>
						{texts.keys.edge(exactPercent(edge))}
					</li>
				)}
				{upper !== null && (
					<li>
						<BarSign>
							<path class="upper" d={bracket(50, 12)} />
						</BarSign>
						{texts.keys.window(exactPercent(upper))}
					</li>
				)}
			</ul>
		</div>
	);
}

interface BarProps {
	readonly low: number;
	readonly median: number;
	readonly high: number;
	readonly edge: number | null;
	readonly upper: number | null;
	readonly kind: "tank" | "limit";
}

/** What it says stands in words above it. */
function Bar({ low, median, high, edge, upper, kind }: BarProps) {
	const x = (content: number) => content * 100;
	return (
		<svg class={kind} viewBox="0 0 100 30" preserveAspectRatio="none" aria-hidden="true">
			<line class="rail" x1={0} x2={100} y1={15} y2={15} />
			<rect class="span" x={x(low)} width={Math.max(0.6, x(high) - x(low))} y={6} height={18} />
			<line class="middle" x1={x(median)} x2={x(median)} y1={3} y2={27} />
			{upper !== null && <path class="upper" d={bracket(x(upper), 2)} />}
			{edge !== null && <line class="edge" x1={x(edge)} x2={x(edge)} y1={0} y2={30} />}
		</svg>
	);
}

/** The window's bracket is closed there. */
function bracket(x: number, arm: number): string {
	return `M${x - arm} 1H${x}V29H${x - arm}`;
}

function BarSign({ children }: { readonly children: ComponentChildren }) {
	return (
		<svg class="sign" viewBox="0 0 100 30" preserveAspectRatio="none" aria-hidden="true">
			{children}
		</svg>
	);
}
