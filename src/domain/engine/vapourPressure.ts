/** Vapour pressure of a blend: gasoline and ethanol push each other out of the liquid, so a little ethanol raises it. */
import { exp, log } from "../elementary";
import type { Fraction } from "../quantity";
import { moleFraction } from "./fractions";
import { ethanol } from "./gasoline";

/**
 * Wilson's parameters of gasoline taken as one substance. That it may be: Pumphrey et al., Fuel 79 (2000) 1405 (abstract).
 * The numbers are our fit to Directive 98/70/EC, annex III (0 to 10 %) and to EPA MOVES (10 to 85 %, 48 to 90 kPa), which it
 * meets within 1.5 %.
 */
const ethanolInGasoline = 0.075;
const gasolineInEthanol = 0.406;

/**
 * Dry vapour pressure equivalent (DVPE, practically RVP) at 37.8 °C, kPa, from the gasoline's. Most at 4 to 9 % of ethanol,
 * and back at the gasoline's at 35 to 56 %. Gasolines differ by a few percent at the same base pressure; below 48 and above
 * 90 kPa it is extrapolated.
 */
export function vapourPressure(content: Fraction, ofGasoline: number): number {
	const x = moleFraction(content);
	const y = 1 - x;
	const [a, b] = [ethanolInGasoline, gasolineInEthanol];
	// Wilson, J. Am. Chem. Soc. 86 (1964) 127: activity coefficients of both, then Raoult's law with them.
	const tilt = a / (x + a * y) - b / (y + b * x);
	const ofEthanolPart = x * exp(-log(x + a * y) + y * tilt);
	const ofGasolinePart = y * exp(-log(y + b * x) - x * tilt);
	return ofGasolinePart * ofGasoline + ofEthanolPart * ethanol.vapourPressure;
}
