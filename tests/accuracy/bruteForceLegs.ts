/**
 * The oracle's knowledge of distances. Between two readings of the odometer d km apart the car burned b litres, normal around
 * κ·d·h(0)/h(E) with an sd of 12 % of that, h being heat per litre; the consumption κ is lognormal around 0.09 L/km with a
 * log sd of 0.4 at first and moves by the factor exp(0.03·z) from one measured leg to the next. The oracle draws every fall
 * of the level evenly, as without odometers, and weighs it by what the burn's density is beside the even one.
 */
import type { FillEvent, LevelEvent, StartEvent } from "../../src/domain/event";

type Column = Float64Array;

interface Burn {
	/** The odometer where it began, if it was given there. */
	readonly odometer: number | null;
	readonly V: Column;
	readonly E: Column;
	/** The stop it ended at, or the id of the look that ended it; undefined until it is known. */
	end?: string;
}

/** The legs of a history. Nothing is drawn before the first leg is measured. */
export function legsOf(n: number, normal: () => number) {
	let kappa: Column | null = null;
	let odometer: number | null = null;
	let burn: Burn | null = null;

	/** To be called before the level falls. */
	function begin(V: Column, E: Column): void {
		burn = { odometer, V: V.slice(), E: E.slice() };
		odometer = null;
	}

	/** Weighs the level before a stop, or at a look, by the distance driven to it. */
	function heed(
		event: StartEvent | FillEvent | LevelEvent,
		before: Column,
		weigh: (likelihood: (i: number) => number) => void,
	): void {
		if (event.kind === "start") {
			odometer = null;
			burn = null;
			return;
		}
		const here = event.kind === "fill" ? event.stop : event.id;
		if (burn) burn.end ??= here;
		if (event.odometerKm === undefined || odometer !== null) return;
		odometer = event.odometerKm;
		// A stop that a look at the level interrupted goes on without having burned anything.
		if (burn === null || burn.odometer === null || burn.end !== here) return;
		const { V, E } = burn;
		const d = odometer - burn.odometer;
		const earlier = kappa;
		const now = new Float64Array(n);
		for (let i = 0; i < n; i++)
			now[i] = earlier ? earlier[i] * Math.exp(0.03 * normal()) : 0.09 * Math.exp(0.4 * normal());
		kappa = now;
		weigh((i) => {
			const expected = now[i] * d * (heat(0) / heat(E[i]));
			const sd = 0.12 * expected;
			const z = (V[i] - before[i] - expected) / sd;
			const density = Math.exp(-0.5 * z * z) / (sd * Math.sqrt(2 * Math.PI));
			const evenDensity = 1 / V[i];
			return density / evenDensity;
		});
	}

	function columns(): Column[] {
		return [...(kappa ? [kappa] : []), ...(burn ? [burn.V, burn.E] : [])];
	}

	return { begin, heed, columns };
}

/** Lower heating value, MJ/L: by mass 43.44 and 26.95 MJ/kg, densities 0.745 and 0.789 kg/L. */
function heat(content: number): number {
	return 43.44 * 0.745 * (1 - content) + 26.95 * 0.789 * content;
}
