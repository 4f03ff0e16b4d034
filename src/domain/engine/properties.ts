import { blendDensity, blendStoichiometricRatio, fuelDemand, heatPerLitre } from "../fuel";
import type { Fraction } from "../quantity";
import { massFraction, moleFraction } from "./fractions";
import { ethanol, type Gasoline, usualGasoline } from "./gasoline";
import { octaneOf } from "./octane";
import { heatOfVaporisation, heatPerKg, perKgOfMixture } from "./vaporisation";
import { vapourPressure } from "./vapourPressure";

/** One row of the table for screens; the unit is in the name. */
export interface BlendProperties {
	readonly content: Fraction;
	readonly ethanolMassFraction: number;
	readonly ethanolMoleFraction: number;
	readonly oxygenMassFraction: number;
	readonly densityKgPerL: number;
	/** By mass. */
	readonly stoichiometricRatio: number;
	readonly lowerHeatingValueMJPerKg: number;
	readonly lowerHeatingValueMJPerL: number;
	readonly lowerHeatingValueMJPerKgOfMixture: number;
	readonly heatOfVaporisationKJPerKg: number;
	readonly heatOfVaporisationKJPerKgOfMixture: number;
	readonly vapourPressureKPa: number;
	readonly ron: number;
	readonly mon: number;
	/** (RON + MON)/2, as on pumps in the United States. */
	readonly antiknockIndex: number;
	/** Fuel volume for the same air, relative to the gasoline alone. */
	readonly volumeDemand: number;
}

/** All that the blend does to the engine, for a content and the gasoline in it. */
export function propertiesOf(content: Fraction, base: Gasoline = usualGasoline): BlendProperties {
	const { ron, mon } = octaneOf(content, base);
	const perKg = heatPerKg(content, base);
	const vaporisation = heatOfVaporisation(content, base);
	return {
		content,
		ethanolMassFraction: massFraction(content, base),
		ethanolMoleFraction: moleFraction(content, base),
		oxygenMassFraction: massFraction(content, base) * ethanol.oxygen,
		densityKgPerL: blendDensity(content, base),
		stoichiometricRatio: blendStoichiometricRatio(content, base),
		lowerHeatingValueMJPerKg: perKg,
		lowerHeatingValueMJPerL: heatPerLitre(content, base),
		lowerHeatingValueMJPerKgOfMixture: perKgOfMixture(perKg, content, base),
		heatOfVaporisationKJPerKg: vaporisation,
		heatOfVaporisationKJPerKgOfMixture: perKgOfMixture(vaporisation, content, base),
		vapourPressureKPa: vapourPressure(content, base.vapourPressure),
		ron,
		mon,
		antiknockIndex: (ron + mon) / 2,
		volumeDemand: fuelDemand(content, 0, base),
	};
}
