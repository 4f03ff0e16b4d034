/** What the blend asks of the calibration, the injectors and the pump, and which blend a demand belongs to. */
import { blendDensity, fuelDemand } from "../fuel";
import { type Fraction, fraction } from "../quantity";
import { type Gasoline, usualGasoline } from "./gasoline";

/** 1 cc/min in L/h, exact. */
export const litresPerHourPerCcPerMin = 0.06;

/**
 * Lambda where nothing corrects the mixture, on a calibration made for `calibratedFor` that commands `commanded`. The same
 * injected volume is taken for granted: that a denser blend flows slightly less (0.3 % from E10 to E20) is left out.
 */
export function openLoopLambda(
	commanded: number,
	content: Fraction,
	calibratedFor: Fraction,
	base: Gasoline = usualGasoline,
): number {
	return commanded * fuelDemand(content, calibratedFor, base);
}

/** Trim that brings lambda back to what was commanded; below 0 with less ethanol than calibrated for. */
export function trimNeeded(content: Fraction, calibratedFor: Fraction, base: Gasoline = usualGasoline): number {
	return fuelDemand(content, calibratedFor, base) - 1;
}

/**
 * What the pump must deliver for the same air and lambda, relative to gasoline, by volume. Scaling by heat instead of air
 * asks for up to 0.7 % less.
 */
export function pumpDemand(content: Fraction, base: Gasoline = usualGasoline): number {
	return fuelDemand(content, 0, base);
}

/**
 * How much longer injectors must stay open than on gasoline, at the same pressure: the volume, and the flow through an orifice
 * that falls with the root of the density (Bernoulli; Heywood, Internal Combustion Engine Fundamentals, ch. 7).
 */
export function injectorDemand(content: Fraction, base: Gasoline = usualGasoline): number {
	return pumpDemand(content, base) * Math.sqrt(blendDensity(content, base) / base.density);
}

/** Flow through an injector at another pressure across it, in the unit of `flow`: with the root of the pressure (Bernoulli). */
export function flowAtPressure(flow: number, ratedKPa: number, actualKPa: number): number {
	return flow * Math.sqrt(actualKPa / ratedKPa);
}

/** The content at which `fuelDemand` is `demand`; null where none from 0 to 1 has it. */
export function contentAtDemand(
	demand: number,
	calibratedFor: Fraction,
	base: Gasoline = usualGasoline,
): Fraction | null {
	// Air per litre falls linearly with the content, and the demand is its inverse.
	const ofEthanol = 1 / fuelDemand(1, 0, base);
	const needed = 1 / (demand * fuelDemand(calibratedFor, 0, base));
	const content = (1 - needed) / (1 - ofEthanol);
	return content >= 0 && content <= 1 ? fraction(content) : null;
}
