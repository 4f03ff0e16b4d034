/** What the content could be known better by: every quantity of the traced part that is not sure. */
import type { Belief, Column } from "../estimator/belief";
import { drawsFor } from "../estimator/draws";
import type { FillEvent, Product, StartEvent } from "../event";
import { seedsFor } from "../random";
import type { Trace, TracedStop } from "./trace";

export type Source =
	/** What the tank held where the account began; null: nobody said. */
	| { readonly kind: "start"; readonly event: StartEvent | null }
	/** What it held before the stop of this fill, the first that was traced: all that is older, in one number. */
	| { readonly kind: "older"; readonly before: FillEvent }
	/** What the pump gave. */
	| { readonly kind: "delivered"; readonly fill: FillEvent }
	/** How much was left before the stop whose fills these are. */
	| { readonly kind: "heel"; readonly fills: readonly FillEvent[] }
	/** How strong a fuel is in the area, at its last purchase or sample. */
	| { readonly kind: "area"; readonly product: Product }
	/** The true capacity, and what the gauge is off. */
	| { readonly kind: "capacity" | "gauge" }
	/** What the car burns. */
	| { readonly kind: "consumption" }
	/** What the trims of a calibration are off on their own fuel. */
	| { readonly kind: "trims"; readonly calibratedFor: number };

export interface SourceColumn {
	readonly source: Source;
	readonly column: Column;
}

/** All there are, from the stop with this number on. What lies before it counts only where it is the first. */
export function sourcesFrom({ belief, start, first, began, stops }: Trace, shown: number): SourceColumn[] {
	const told = stops.slice(shown);
	const before: Source =
		start || began || !stops[0]?.fills[0]
			? { kind: "start", event: start }
			: { kind: "older", before: stops[0].fills[0].event };
	return [
		...(shown === 0 ? [{ source: before, column: first }] : []),
		...told.flatMap(ofStop),
		...areasOf(belief, told),
		...ofCar(belief),
	];
}

function ofStop({ heel, fills }: TracedStop): SourceColumn[] {
	const events = fills.map(({ event }) => event);
	if (events.length === 0) return [];
	return [
		{ source: { kind: "heel", fills: events }, column: heel },
		...fills.map(
			({ event, delivered }): SourceColumn => ({
				source: { kind: "delivered", fill: event },
				column: delivered,
			}),
		),
	];
}

function areasOf({ areas }: Belief, stops: readonly TracedStop[]): SourceColumn[] {
	const products = new Map(
		stops.flatMap(({ fills }) => fills.map(({ event: { product } }) => [areaKey(product), product] as const)),
	);
	return [...products].flatMap(([key, product]): SourceColumn[] => {
		const area = areas.get(key);
		return area ? [{ source: { kind: "area", product }, column: area.column }] : [];
	});
}

/** As the belief names its areas. */
function areaKey({ id, range: [low, high] }: Product): string {
	return JSON.stringify([id, low, high]);
}

function ofCar({ capacityFactor, biasMean, biasVariance, consumption, baselines, weight }: Belief): SourceColumn[] {
	// Carried as bells: one value of each is drawn for every particle.
	const around = (mean: Column, variance: (i: number) => number, name: string) => {
		const z = drawsFor(weight.length, seedsFor(name)).normals();
		return mean.map((middle, i) => middle + Math.sqrt(variance(i)) * z[i]);
	};
	return [
		{ source: { kind: "capacity" }, column: capacityFactor },
		{ source: { kind: "gauge" }, column: around(biasMean, () => biasVariance, "why gauge") },
		...(consumption ? [{ source: { kind: "consumption" } as const, column: consumption }] : []),
		...[...baselines].map(
			([calibratedFor, { mean, variance }]): SourceColumn => ({
				source: { kind: "trims", calibratedFor },
				column: around(mean, (i) => variance[i], `why trims ${calibratedFor}`),
			}),
		),
	];
}
