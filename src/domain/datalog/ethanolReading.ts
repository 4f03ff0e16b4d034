/** The content that the car itself reports (SAE J1979 PID 52). */
import type { Grid } from "./grid";
import { medianOf } from "./robust";

export interface EthanolFound {
	/** As reported at the end of the log. */
	readonly value: number;
	/** Standard deviation there; how true the report is at all comes on top. */
	readonly spread: number;
	/** As reported at the beginning. */
	readonly atFirst: number;
}

/** Null where the log has none, or the car reports nothing at all throughout, as without a sensor. */
export function reportedEthanol({ means, steps }: Grid): EthanolFound | null {
	const { ethanol } = means;
	if (!ethanol) return null;
	const likely = ethanol.map((value) => (value >= 0 && value <= 1 ? value : Number.NaN));
	// New fuel arrives within minutes, so the end of the log counts.
	const value = medianOf(likely, Math.floor((steps * 2) / 3));
	const atFirst = medianOf(likely, 0, Math.ceil(steps / 3));
	if (Number.isNaN(value) || likely.every((each) => !(each > 0))) return null;
	const away = likely.map((each) => Math.abs(each - value));
	const spread = 1.4826 * medianOf(away, Math.floor((steps * 2) / 3));
	return { value, atFirst: Number.isNaN(atFirst) ? value : atFirst, spread };
}
