import { useMemo } from "preact/hooks";
import type { FuelSystem } from "../../../domain/engine/fuelSystem";
import { type LeanEdge, limitsOf } from "../../../domain/engine/limits";
import type { Estimate } from "../../../domain/estimator/estimate";
import type { Calibration, Car } from "../../../domain/vehicle";
import { budgetsOf } from "../../../domain/warnings";
import { flooredEdge } from "../../calibrationDraft";
import { percentRange } from "../../format";
import {
	againstWindow,
	bindingWords,
	cautionWords,
	compareTenths,
	edgeTitle,
	edgeWords,
	shortOfCalibration,
} from "../../fuelSystemWords";
import { LimitBars } from "./LimitBars";
import { ProposeEdge } from "./ProposeEdge";

interface LimitsProps {
	readonly car: Car;
	/** The card as typed. */
	readonly system: FuelSystem;
	readonly tank: Estimate | null;
	readonly calibration: Calibration | null;
}

/** How much ethanol the fuel system is good for, which part gives out first, and the edge that follows. */
export function Limits({ car, system, tank, calibration }: LimitsProps) {
	const calibratedFor = calibration?.calibratedFor ?? null;
	const { lean } = budgetsOf(calibration);
	const found = useMemo(() => limitsOf(system, calibratedFor, lean), [JSON.stringify(system), calibratedFor, lean]);
	const upper = calibration?.window[1] ?? null;
	const { leanEdge, limits } = found;
	const known = Object.values(limits).some((limit) => limit !== null);
	return (
		<section class="card" aria-label="Limits of the fuel system">
			<h2>Limits of the fuel system</h2>
			{known ? (
				<LimitBars found={found} system={system} calibrated={calibration !== null} tank={tank} upper={upper} />
			) : (
				<p>Too little is known for any limit: fill in the card above as far as you can.</p>
			)}
			{known && !leanEdge && <p>Nothing that is known here sets a limit below pure ethanol.</p>}
			{leanEdge && <Edge car={car} edge={leanEdge} tank={tank} calibration={calibration} upper={upper} />}
			<h3>Mind</h3>
			<ul class="cautions">
				{found.cautions.map((caution) => (
					<li key={caution}>{cautionWords(caution)}</li>
				))}
			</ul>
		</section>
	);
}

interface EdgeProps {
	readonly car: Car;
	readonly edge: LeanEdge;
	readonly tank: Estimate | null;
	readonly calibration: Calibration | null;
	readonly upper: number | null;
}

function Edge({ car, edge, tank, calibration, upper }: EdgeProps) {
	const content = flooredEdge(edge.content);
	const adopted = upper !== null && compareTenths(content, upper) === 0;
	const short =
		edge.belowCalibration || (calibration !== null && compareTenths(content, calibration.calibratedFor) < 0);
	return (
		<>
			<p class="leanedge">
				<strong>{edgeTitle(content)}</strong>
			</p>
			<p>
				{bindingWords[edge.binding]} {edgeWords(edge)}
			</p>
			{tank && tank.high > content && !short && (
				<p class="fault">
					The tank’s range, {percentRange(tank.low, tank.high)}, reaches past it: stay out of boost until a test or the
					next fill has settled it.
				</p>
			)}
			{short ? (
				<>
					<p class="fault">{shortOfCalibration.fault}</p>
					<p>{shortOfCalibration.why}</p>
				</>
			) : (
				<>
					<p>{againstWindow(content, upper)}</p>
					{!adopted && <ProposeEdge car={car} calibration={calibration} content={content} />}
				</>
			)}
		</>
	);
}
