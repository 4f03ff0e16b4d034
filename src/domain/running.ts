/** How far the car runs: what it burns, as learned from legs between two odometer readings, and the way until it is empty. */
import { exp } from "./elementary";
import { ascending, type Belief, type Column } from "./estimator/belief";
import { consumptionDriftSd, legSpread } from "./estimator/constants";
import { drawsFor } from "./estimator/draws";
import { litresForOne } from "./estimator/leg";
import { quantilesOf } from "./estimator/quantile";
import type { Fraction } from "./quantity";
import { seedsFor } from "./random";

/** Median and ends of the central 90 % interval. */
export interface Spread {
	readonly median: number;
	readonly low: number;
	readonly high: number;
}

export interface Running {
	/** What the car burns of the fuel now in the tank, L/100 km, town and motorway as they come. */
	readonly litresPer100Km: Spread;
	/** Distance until nothing is left that the fuel pump can draw, km; the next leg may be thirstier or thriftier than most. */
	readonly rangeKm: Spread;
}

/** What is believed of consumption and range; null while no leg was ever measured. */
export function runningOf(belief: Belief): Running | null {
	const { consumption, level, content, weight } = belief;
	if (!consumption) return null;
	const draws = drawsFor(weight.length, seedsFor("range"));
	const [drift, thirst] = [draws.normals(), draws.normals()];
	const [litresPer100Km, rangeKm] = [new Float32Array(weight.length), new Float32Array(weight.length)];
	for (let i = 0; i < weight.length; i++) {
		const litresPerKm = consumption[i] * litresForOne(content[i] as Fraction);
		litresPer100Km[i] = 100 * litresPerKm;
		const ahead = litresPerKm * exp(consumptionDriftSd * drift[i]) * (1 + legSpread * thirst[i]);
		rangeKm[i] = level[i] / ahead;
	}
	return { litresPer100Km: spreadOf(litresPer100Km, weight), rangeKm: spreadOf(rangeKm, weight) };
}

/**
 * Litres of a blend for the distance that one litre of another takes the car: heat for heat. Above 1 the blend goes less
 * far. What an engine tuned for ethanol gains back in efficiency is left out.
 */
export function volumeRatio(content: Fraction, than: Fraction): number {
	return litresForOne(content) / litresForOne(than);
}

function spreadOf(values: Column, weight: Column): Spread {
	const quantile = quantilesOf(values, weight, ascending(values));
	return { median: quantile(0.5), low: quantile(0.05), high: quantile(0.95) };
}
