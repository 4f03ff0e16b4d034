/** What a blend is made of, as far as the engine is concerned. Gasoline varies, so it is an argument; ethanol does not. */
import { density, type GasolineForHeat, lowerHeatingValue, stoichiometricRatio } from "../fuel";

/** Gasoline without ethanol. */
export interface Gasoline extends GasolineForHeat {
	/** kJ/kg. */
	readonly heatOfVaporisation: number;
	/** Mean molar mass, g/mol. */
	readonly molarMass: number;
	readonly ron: number;
	readonly mon: number;
	/** Octane beyond the molar-linear rule, as in `octane.ts`; 0 where nobody knows. */
	readonly ronInteraction: number;
	readonly monInteraction: number;
	/** Dry vapour pressure equivalent at 37.8 °C, kPa. */
	readonly vapourPressure: number;
}

/**
 * A gasoline that just meets EN 228 and Directive 98/70/EC, annex I: RON 95, MON 85, 60 kPa in summer. Heat of
 * vaporisation: middle of the 325 to 375 kJ/kg that NREL measured (OSTI 1242469); DOE AFDC has about 150 Btu/lb (349). Molar
 * mass: middle of the 100 to 105 g/mol of DOE AFDC.
 */
export const usualGasoline: Gasoline = {
	density: density.gasoline,
	stoichiometricRatio: stoichiometricRatio.gasoline,
	lowerHeatingValue: lowerHeatingValue.gasoline,
	heatOfVaporisation: 350,
	molarMass: 102.5,
	ron: 95,
	mon: 85,
	ronInteraction: 0,
	monInteraction: 0,
	vapourPressure: 60,
};

/**
 * Ethanol: DOE AFDC fuel properties (46.07 g/mol, 396 Btu/lb, 2.3 psi). Octane as a part of a blend: Anderson et al., Energy
 * & Fuels 24 (2010) 6576 (from memory; AFDC has 108 and 92). Oxygen: 15.999/46.07, as in 18 AAC 53.030.
 */
export const ethanol = {
	density: density.ethanol,
	stoichiometricRatio: stoichiometricRatio.ethanol,
	lowerHeatingValue: lowerHeatingValue.ethanol,
	heatOfVaporisation: 921,
	molarMass: 46.07,
	ron: 109,
	mon: 90,
	vapourPressure: 15.9,
	oxygen: 0.3473,
} as const;
