/** A blend's ethanol content by mass and by amount of substance. */
import { blendDensity } from "../fuel";
import type { Fraction } from "../quantity";
import { ethanol, type Gasoline, usualGasoline } from "./gasoline";

/** Mass fraction of ethanol, from the volume fraction. */
export function massFraction(content: Fraction, base: Gasoline = usualGasoline): number {
	return (content * ethanol.density) / blendDensity(content, base);
}

/** Mole fraction of ethanol, from the volume fraction. */
export function moleFraction(content: Fraction, base: Gasoline = usualGasoline): number {
	const ethanolMoles = (content * ethanol.density) / ethanol.molarMass;
	const gasolineMoles = ((1 - content) * base.density) / base.molarMass;
	return ethanolMoles / (ethanolMoles + gasolineMoles);
}
