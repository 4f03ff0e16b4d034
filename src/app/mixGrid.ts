/** The amounts that a table of mixes tells: round ones in the driver's unit, up to what may fit. */
import type { MixGrid } from "../domain/plan/mixTable";
import { fromLitres, toLitres, type VolumeUnit } from "../domain/units";

const mostRows = 20;
const mostColumns = 6;

/** Less room than this, in litres, is a full tank: nothing is left to mix. */
export const leastRoomL = 1;

/** `room`: what may go in before the click, L. */
export function mixGridFor(room: number, unit: VolumeUnit): MixGrid {
	const amounts = (most: number) => {
		const fits = fromLitres(room, unit);
		const step = roundStep(fits / (most - 1));
		return Array.from({ length: Math.floor(fits / step + 1e-9) + 1 }, (_, i) => toLitres(i * step, unit));
	};
	return { first: amounts(mostRows), second: amounts(mostColumns) };
}

/** The least of 1, 2 and 5 times a power of ten that is not below a step. */
function roundStep(least: number): number {
	const power = 10 ** Math.floor(Math.log10(least));
	return ([1, 2, 5].find((digit) => digit * power >= least) ?? 10) * power;
}
