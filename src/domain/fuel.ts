/**
 * What ethanol does to the fuel: density, heat, stoichiometric air–fuel ratio, fuel demand. Blends mix by volume, heat and
 * air demand by mass. Gasoline varies; the values are those the whole project works with.
 */
import type { Fraction } from "./quantity";

/** Density, kg/L. Gasoline as used by Zope et al., ACC 2011, table I; ethanol at 20 °C, NIST (from memory). */
export const density = { gasoline: 0.745, ethanol: 0.789 } as const;

/** Stoichiometric air–fuel ratio by mass: DOE AFDC fuel properties (gasoline 14.7) and Zope et al. (14.6); ethanol 9.0. */
export const stoichiometricRatio = { gasoline: 14.6, ethanol: 9.0 } as const;

/** Lower heating value, MJ/kg: DOE AFDC fuel properties (18,676 and 11,585 Btu/lb). */
export const lowerHeatingValue = { gasoline: 43.44, ethanol: 26.95 } as const;

/** The ethanol-free gasoline of a blend, where it is not the usual one. */
export interface GasolineForHeat {
	/** kg/L. */
	readonly density: number;
	/** kg of air per kg. */
	readonly stoichiometricRatio: number;
	/** MJ/kg. */
	readonly lowerHeatingValue: number;
}

const usual: GasolineForHeat = {
	density: density.gasoline,
	stoichiometricRatio: stoichiometricRatio.gasoline,
	lowerHeatingValue: lowerHeatingValue.gasoline,
};

/** Density of a blend, kg/L, without excess volume (a few tenths of a percent at most). */
export function blendDensity(content: Fraction, base = usual): number {
	return base.density * (1 - content) + density.ethanol * content;
}

/** Stoichiometric air–fuel ratio of a blend, by mass. */
export function blendStoichiometricRatio(content: Fraction, base = usual): number {
	return airPerLitre(content, base) / blendDensity(content, base);
}

/** Lower heating value of a litre of the blend, MJ. */
export function heatPerLitre(content: Fraction, base = usual): number {
	const gasoline = base.lowerHeatingValue * base.density;
	const ethanol = lowerHeatingValue.ethanol * density.ethanol;
	return gasoline * (1 - content) + ethanol * content;
}

/** Air that a litre of the blend burns at stoichiometry, kg/L: linear in the content, since both parts add by mass. */
function airPerLitre(content: number, base: GasolineForHeat): number {
	const gasoline = base.stoichiometricRatio * base.density;
	const ethanol = stoichiometricRatio.ethanol * density.ethanol;
	return gasoline * (1 - content) + ethanol * content;
}

/**
 * Fuel volume needed for the same air, relative to what a calibration made for `calibratedFor` delivers: K(E)/K(E₀).
 * Above 1 the engine runs lean by this factor wherever nothing corrects it.
 */
export function fuelDemand(content: number, calibratedFor: number, base = usual): number {
	return airPerLitre(calibratedFor, base) / airPerLitre(content, base);
}
