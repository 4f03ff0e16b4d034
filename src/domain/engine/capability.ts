/** How much fuel demand a part of the fuel system can meet, with its doubt. */
import type { Fraction } from "../quantity";
import { flowAtPressure, injectorDemand, litresPerHourPerCcPerMin, pumpDemand } from "./fuelling";
import { type FuelSystem, type Spreads, usualDutyLimit, usualSpreads } from "./fuelSystem";
import { usualGasoline } from "./gasoline";

export type LimitKind = "injectors" | "pump" | "trim" | "lambda";

/** Demands are relative to gasoline. All doubt is of factors, so that the logarithm of `most` is normal. */
export interface Capability {
	readonly demand: (content: Fraction) => number;
	/** Median of the demand that can be met. */
	readonly most: number;
	/** Relative sd that injectors and pump have in common: how much fuel the engine wants. */
	readonly sharedSd: number;
	readonly ownSd: number;
}

/** No rating is known better than to one percent, whatever the card says (common practice). */
const leastSd = 0.01;

/** One for each limit; null where the card, or the calibration, does not say enough. */
export function capabilitiesOf(
	system: FuelSystem,
	calibratedFor: Fraction | null,
): Readonly<Record<LimitKind, Capability | null>> {
	const spreads: Spreads = { ...usualSpreads, ...system.spreads };
	const gasoline = gasolineLPerH(system);
	const wanted = together(spreads.power, spreads.consumption);
	const injectors = injectorsLPerH(system);
	const { pumpFlowLPerH, trimAuthority, commandedLambda, leanestLambda } = system;
	const flow = (available: number | null, demand: Capability["demand"], sd: number): Capability | null =>
		available === null || gasoline === null
			? null
			: { demand, most: available / gasoline, sharedSd: wanted, ownSd: Math.max(sd, leastSd) };
	const mixture = (most: number | null, sd: number): Capability | null =>
		most === null || calibratedFor === null
			? null
			: { demand: pumpDemand, most: most * pumpDemand(calibratedFor), sharedSd: 0, ownSd: Math.max(sd, leastSd) };
	return {
		// Flow goes with the root of the pressure, which halves its relative sd.
		injectors: flow(injectors, injectorDemand, together(spreads.injectorFlow, spreads.pressure / 2)),
		pump: flow(pumpFlowLPerH ?? null, pumpDemand, spreads.pumpFlow),
		trim: mixture(trimAuthority === undefined ? null : 1 + trimAuthority, spreads.trim),
		lambda: mixture(
			leanestLambda === undefined || commandedLambda === undefined ? null : leanestLambda / commandedLambda,
			spreads.lambda,
		),
	};
}

/** What the engine would burn of gasoline at its largest power, L/h. */
function gasolineLPerH({ powerKW, consumptionGPerKWh }: FuelSystem): number | null {
	if (powerKW === undefined || consumptionGPerKWh === undefined) return null;
	return (powerKW * consumptionGPerKWh) / 1000 / usualGasoline.density;
}

/** What all injectors deliver of gasoline within their duty limit, L/h. */
function injectorsLPerH(system: FuelSystem): number | null {
	const { injectorFlowCcPerMin, injectorCount, injectorRatedKPa, injectorFullLoadKPa } = system;
	if (injectorFlowCcPerMin === undefined || injectorCount === undefined) return null;
	const rated = injectorFlowCcPerMin * litresPerHourPerCcPerMin * injectorCount;
	const flow =
		injectorRatedKPa === undefined || injectorFullLoadKPa === undefined
			? rated
			: flowAtPressure(rated, injectorRatedKPa, injectorFullLoadKPa);
	return flow * (system.dutyLimit ?? usualDutyLimit);
}

/** Relative sd of a product of two independent factors. */
export function together(one: number, other: number): number {
	return Math.sqrt(one * one + other * other);
}
