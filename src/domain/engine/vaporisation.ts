/** Heat that the fuel takes from the charge as it evaporates, and the heat that the charge holds. */
import { blendDensity, blendStoichiometricRatio, heatPerLitre } from "../fuel";
import type { Fraction } from "../quantity";
import { massFraction } from "./fractions";
import { ethanol, type Gasoline, usualGasoline } from "./gasoline";

/**
 * Heat of vaporisation of a kg of the blend, kJ: by mass, without the heat of mixing (about 10 kJ/kg at most, from memory).
 * NREL measured 650 to 700 for E50, where this gives 644.
 */
export function heatOfVaporisation(content: Fraction, base: Gasoline = usualGasoline): number {
	const share = massFraction(content, base);
	return base.heatOfVaporisation * (1 - share) + ethanol.heatOfVaporisation * share;
}

/** Lower heating value of a kg of the blend, MJ. */
export function heatPerKg(content: Fraction, base: Gasoline = usualGasoline): number {
	return heatPerLitre(content, base) / blendDensity(content, base);
}

/** What belongs to a kg of fuel, for a kg of its stoichiometric mixture with air. */
export function perKgOfMixture(perKgOfFuel: number, content: Fraction, base: Gasoline = usualGasoline): number {
	return perKgOfFuel / (1 + blendStoichiometricRatio(content, base));
}
