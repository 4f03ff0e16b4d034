/**
 * Density of ethanol and water mixed, at 20 °C: the general formula of OIML R 22 (1975), International Alcoholometric Tables,
 * with its coefficients A₁ … A₁₂. Ten degrees more or less change how much the mixture shrinks by under a tenth.
 */

/** kg/m³, by ascending powers of the mass fraction of ethanol. */
const coefficients = [
	998.20123, -192.9769495, 389.1238958, -1668.103923, 13522.15441, -88292.78388, 306287.4042, -613838.1234, 747017.2998,
	-547846.1354, 223446.0334, -39032.85426,
];

/** Density, kg/m³, of a mixture with this mass fraction of ethanol, 0 to 1. */
export function mixtureDensity(massFraction: number): number {
	return coefficients.reduceRight((sum, coefficient) => sum * massFraction + coefficient, 0);
}

/** By how much that density grows with the mass fraction, kg/m³. */
export function densitySlope(massFraction: number): number {
	let sum = 0;
	for (let k = coefficients.length - 1; k > 0; k--) sum = sum * massFraction + k * coefficients[k];
	return sum;
}
