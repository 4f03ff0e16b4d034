/** What still fits into the tank at the pump. */
import { ascending } from "../estimator/belief";
import { quantilesOf } from "../estimator/quantile";
import type { Litres } from "../quantity";
import type { Standing } from "./standing";

export interface Room {
	/** Fits in nineteen cases of twenty, L. */
	readonly sure: Litres;
	/** As likely too much as too little, L. */
	readonly median: Litres;
}

/** Chance of an early click that "surely fits" still accepts (common practice). */
export const early = 0.05;

/** Room until the first click; a tank that is past it has none. */
export function roomOf({ room, weight }: Standing): Room {
	const free = new Float32Array(room.length);
	for (let i = 0; i < free.length; i++) free[i] = Math.max(0, room[i]);
	const quantile = quantilesOf(free, weight, ascending(free));
	return { sure: quantile(early) as Litres, median: quantile(0.5) as Litres };
}
