/** Octane numbers of a blend by the molar-linear rule: Anderson et al., Energy & Fuels 24 (2010) 6576; Fuel 97 (2012) 585. */
import type { Fraction } from "../quantity";
import { moleFraction } from "./fractions";
import { ethanol, type Gasoline, usualGasoline } from "./gasoline";

export interface Octane {
	readonly ron: number;
	readonly mon: number;
}

/**
 * (1 − x)·gasoline + x·ethanol + Z·x·(1 − x), x being the mole fraction of ethanol. The last term, Anderson and Wallington,
 * Energy & Fuels 34 (2020), doi 10.1021/acs.energyfuels.9b04204, differs from gasoline to gasoline: about 0 for aromatic
 * ones, up to 25 for paraffinic ones, where the plain rule (Z = 0) reads up to 7 % low.
 */
export function octaneOf(content: Fraction, base: Gasoline = usualGasoline): Octane {
	const x = moleFraction(content, base);
	const blended = (gasoline: number, pure: number, z: number) => (1 - x) * gasoline + x * pure + z * x * (1 - x);
	return {
		ron: blended(base.ron, ethanol.ron, base.ronInteraction),
		mon: blended(base.mon, ethanol.mon, base.monInteraction),
	};
}

/**
 * The same gasoline without its ethanol, where only the octane of what the pump gives is known: `pump` at a content of
 * `content`, below 1.
 */
export function withoutEthanol(pump: Octane, content: Fraction, base: Gasoline = usualGasoline): Gasoline {
	const x = moleFraction(content, base);
	const unblended = (blend: number, pure: number, z: number) => (blend - x * pure) / (1 - x) - z * x;
	return {
		...base,
		ron: unblended(pump.ron, ethanol.ron, base.ronInteraction),
		mon: unblended(pump.mon, ethanol.mon, base.monInteraction),
	};
}
