/** Volumes as people read them off a pump. */
import { type Litres, litres } from "./quantity";

export type VolumeUnit = "L" | "gal" | "imp gal";

/** Litres in one unit; gallons exact by definition (NIST SP 811, appendix B; Weights and Measures Act 1985). */
export const litresPer: Readonly<Record<VolumeUnit, number>> = { L: 1, gal: 3.785411784, "imp gal": 4.54609 };

export function toLitres(amount: number, unit: VolumeUnit): Litres {
	return litres(amount * litresPer[unit]);
}

export function fromLitres(volume: number, unit: VolumeUnit): number {
	return volume / litresPer[unit];
}
