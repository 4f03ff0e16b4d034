import { useMemo } from "preact/hooks";
import type { FuelSystem } from "../../../domain/engine/fuelSystem";
import { type LeanEdge, limitsOf } from "../../../domain/engine/limits";
import type { Estimate } from "../../../domain/estimator/estimate";
import type { Calibration, Car } from "../../../domain/vehicle";
import { budgetsOf } from "../../../domain/warnings";
import { flooredEdge } from "../../calibrationDraft";
import { percentRange } from "../../format";
import { againstWindow, compareTenths, edgeTitle, edgeWords } from "../../fuelSystemWords";
import { fuelSystemWords } from "../../words/fuelSystem";
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
	const words = fuelSystemWords();
	const calibratedFor = calibration?.calibratedFor ?? null;
	const { lean } = budgetsOf(calibration);
	const found = useMemo(() => limitsOf(system, calibratedFor, lean), [JSON.stringify(system), calibratedFor, lean]);
	const upper = calibration?.window[1] ?? null;
	const { leanEdge, limits } = found;
	const known = Object.values(limits).some((limit) => limit !== null);
	return (
		<section class="card" aria-label={words.limits}>
			<h2>{words.limits}</h2>
			{known ? (
				<LimitBars found={found} system={system} calibrated={calibration !== null} tank={tank} upper={upper} />
			) : (
				<p>{words.tooLittle}</p>
			)}
			{known && !leanEdge && <p>{words.none}</p>}
			{leanEdge && <Edge car={car} edge={leanEdge} tank={tank} calibration={calibration} upper={upper} />}
			<h3>{words.mind}</h3>
			<ul class="cautions">
				{found.cautions.map((caution) => (
					<li key={caution}>{words.cautions[caution]}</li>
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
	const words = fuelSystemWords();
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
				{words.binding[edge.binding]} {edgeWords(edge)}
			</p>
			{tank && tank.high > content && !short && (
				<p class="fault">{words.reachesPast(percentRange(tank.low, tank.high))}</p>
			)}
			{short ? (
				<>
					<p class="fault">{words.shortFault}</p>
					<p>{words.shortWhy}</p>
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
