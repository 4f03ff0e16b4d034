/**
 * Consumption. A leg is the drive from one look at the level to the next with the odometer given at both ends: what it burned
 * is normal around distance times consumption, and the level before the stop is what was there less that.
 */
import { exp } from "../elementary";
import { heatPerLitre } from "../fuel";
import type { Fraction } from "../quantity";
import type { Seeds } from "../random";
import type { Column } from "./belief";
import { consumptionDriftSd, consumptionLogSd, usualConsumption } from "./constants";
import { drawsFor } from "./draws";
import type { AtStop } from "./stop";

/** Where burning began. */
export interface LegStart {
	/** Odometer, km. */
	readonly km: number;
	/** L. */
	readonly level: Column;
}

export interface Leg {
	/** Fuel that the distance asks for, L of what was in the tank; not above zero where the odometer went on by nothing. */
	readonly expected: Column;
	/** What was believed of the consumption before this leg. */
	readonly consumptionBefore: Column | null;
}

/** Litres of a blend that take the car as far as one litre of pure gasoline: as much heat, as much road. */
export function litresForOne(content: Fraction): number {
	return heatPerLitre(0 as Fraction) / heatPerLitre(content);
}

/** Adds the odometer at the stop, km; the first one given holds. With one at the leg's start as well it is a leg. */
export function odometerSaid(belief: AtStop, km: number, seeds: Seeds): AtStop {
	const { stop, consumption: before, odometer, weight } = belief;
	if (odometer !== null) return belief;
	if (!stop.legStart) return { ...belief, odometer: km };
	const distance = km - stop.legStart.km;
	// Two purchases on both sides of a road, or a look at the gauge beside one: odometers show whole kilometres.
	if (distance === 0) return { ...belief, odometer: km };
	const z = drawsFor(weight.length, seeds).normals();
	const [consumption, expected] = [new Float32Array(z.length), new Float32Array(z.length)];
	for (let i = 0; i < z.length; i++) {
		consumption[i] = before
			? before[i] * exp(consumptionDriftSd * z[i])
			: usualConsumption * exp(consumptionLogSd * z[i]);
		expected[i] = consumption[i] * distance * litresForOne(stop.contentBefore[i] as Fraction);
	}
	return {
		...belief,
		consumption,
		odometer: km,
		stop: { ...stop, leg: { expected, consumptionBefore: before } },
	};
}

/** The stop as if its odometer had not been read. */
export function withoutLeg(belief: AtStop): AtStop {
	const { stop } = belief;
	if (!stop.leg) return belief;
	return {
		...belief,
		consumption: stop.leg.consumptionBefore,
		odometer: "unusable",
		stop: { ...stop, leg: null },
	};
}
