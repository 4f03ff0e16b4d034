/**
 * Cars, pumps and drives whose truth is known, drawn from the model. Whatever does not hang on what is pumped is drawn
 * beforehand, so that drivers who pump differently meet the same.
 */
import { catalogue } from "../../src/domain/catalogue";
import type { Product } from "../../src/domain/event";
import { seedsFor, uniform } from "../../src/domain/random";
import type { Car } from "../../src/domain/vehicle";

export interface World {
	readonly car: Car;
	readonly gasoline: Product;
	readonly flexFuel: Product;
	/** True capacity, L, and the gauge's bias, fraction of it. */
	readonly capacity: number;
	readonly bias: number;
	/** In the tank at first: content, and level as a fraction of the capacity. */
	readonly content: number;
	readonly level: number;
	readonly gaugeError: number;
	readonly stops: readonly Stop[];
}

/** What a stop has in store. */
export interface Stop {
	readonly id: string;
	readonly at: string;
	readonly place: string;
	/** What the tank is driven down to, fraction of the capacity. */
	readonly level: number;
	/** Errors of the gauge and of the click, fraction of the capacity; of each dispenser, fraction of the litres. */
	readonly gaugeError: number;
	readonly clickError: number;
	readonly dispenserErrors: readonly [number, number];
	/** Content that each pump gives. */
	readonly gasoline: number;
	readonly flexFuel: number;
	/** Null: to the click. Else this share of the room that the gauge shows. */
	readonly share: number | null;
	/** Errors of a reading from the flex-fuel pump and of one from the tank, in standard deviations. */
	readonly readingErrors: readonly [number, number];
	/** One reading in fifty is rubbish, and says this. */
	readonly rubbish: readonly [number | null, number | null];
}

/** The n-th world, with so many stops. */
export function worldOf(n: number, stops: number): World {
	const seeds = seedsFor(`study ${n}`);
	const u = (low = 0, high = 1) => low + (high - low) * uniform(seeds);
	const normal = (sd = 1) => sd * Math.sqrt(-2 * Math.log(u())) * Math.cos(2 * Math.PI * u());

	const capacityL = Math.round(u(45, 70));
	const [gasoline, flexFuel] = [product(u() < 0.5 ? "gasoline-e10" : "gasoline-to-10"), product("flex-51-83")];
	const car = { id: `car ${n}`, name: "car", tank: { capacityL }, calibrations: [] } as unknown as Car;
	const pumps = [gasoline, flexFuel].map(({ range: [low, high] }) => ({ low, high, area: u(low, high) }));
	const offsets = new Map<string, { readonly offset: number; readonly day: number }>();
	let day = 0;
	let since = 0;

	function delivered(pump: (typeof pumps)[number], place: string): number {
		const width = pump.high - pump.low;
		pump.area += normal(0.01 * width * Math.sqrt(since));
		if (pump.area < pump.low) pump.area = 2 * pump.low - pump.area;
		if (pump.area > pump.high) pump.area = 2 * pump.high - pump.area;
		const key = `${pumps.indexOf(pump)} ${place}`;
		const before = offsets.get(key);
		const kept = before ? Math.exp(-(day - before.day) / 45) : 0;
		const offset = kept * (before?.offset ?? 0) + normal((Math.sqrt(1 - kept * kept) * width) / 8);
		offsets.set(key, { offset, day });
		return Math.min(1, Math.max(0, pump.area + offset));
	}

	function stop(i: number): Stop {
		since = u(3, 15);
		day += since;
		const place = u() < 0.7 ? "home" : "away";
		return {
			id: `${n} stop ${i}`,
			at: new Date(1.75e12 + day * 8.64e7).toISOString(),
			place,
			level: u(0.1, 0.35),
			gaugeError: normal(0.05),
			clickError: normal(0.02),
			dispenserErrors: [normal(0.0025), normal(0.0025)],
			gasoline: delivered(pumps[0], place),
			flexFuel: delivered(pumps[1], place),
			share: u() < 0.6 ? null : u(0.5, 0.85),
			readingErrors: [normal(), normal()],
			rubbish: [u() < 0.02 ? u() : null, u() < 0.02 ? u() : null],
		};
	}

	return {
		car,
		gasoline,
		flexFuel,
		capacity: capacityL * (1 + normal(0.015)),
		bias: normal(0.03),
		content: u(gasoline.range[0], gasoline.range[1]),
		level: u(0.2, 0.5),
		gaugeError: normal(0.05),
		stops: Array.from({ length: stops }, (_, i) => stop(i)),
	};
}

function product(id: string): Product {
	const entry = catalogue.find((known) => known.id === id);
	if (!entry) throw new Error(`the catalogue has no ${id}`);
	return { id, range: entry.range };
}
