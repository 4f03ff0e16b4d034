/** What the fuel cost, stop by stop and month by month. Amounts of money are in the car's one currency. */
import { type EthanolCost, ethanolCostOf, gasolineIn, isGasoline } from "./ethanolCost";
import { countingEvents, type FillEvent, type LogEvent } from "./event";

export interface StopCost {
	readonly stop: string;
	/** Of its first fill, ISO 8601 as written. */
	readonly at: string;
	readonly place: string | null;
	/** In order; at least one. */
	readonly fills: readonly FillEvent[];
	/** As displayed, L. */
	readonly litres: number;
	/** Null where a fill has no price. */
	readonly cost: number | null;
	/** Null where prices are missing, or nothing but gasoline was bought. */
	readonly ethanol: EthanolCost | null;
}

/** Sums; each says what it leaves out. */
export interface CostSum {
	readonly fills: number;
	/** Fills without a price; the costs are without them. */
	readonly unpriced: number;
	readonly litres: number;
	readonly cost: number;
	/** Extra cost of the ethanol in all stops that tell it; null where none does. */
	readonly ethanol: Pick<EthanolCost, "extra" | "least" | "most"> | null;
	/** Stops with more than gasoline, and those among them that tell what the ethanol cost. */
	readonly blends: number;
	readonly told: number;
}

export interface MonthCost extends CostSum {
	/** `2026-06`, by the clock the driver's log was written with. */
	readonly month: string;
}

export interface Costs {
	/** In order. */
	readonly stops: readonly StopCost[];
	/** Months in which fuel was bought, in order. */
	readonly months: readonly MonthCost[];
	readonly all: CostSum;
}

/** Costs of everything bought that counts, whatever the order of the events. */
export function costsOf(events: readonly LogEvent[]): Costs {
	const stops = stopsIn(events);
	const gasoline = gasolineIn(stops.flat());
	const costs = stops.map((fills): StopCost => stopCost(fills, ethanolCostOf(fills, gasoline)));
	const byMonth = new Map<string, StopCost[]>();
	for (const cost of costs) {
		const month = cost.at.slice(0, 7);
		const sameMonth = byMonth.get(month);
		if (sameMonth) sameMonth.push(cost);
		else byMonth.set(month, [cost]);
	}
	const months = [...byMonth].sort(([a], [b]) => (a < b ? -1 : 1));
	return { stops: costs, months: months.map(([month, of]) => ({ month, ...sumOf(of) })), all: sumOf(costs) };
}

/** The fills that count, stop by stop, in order of the first of each. */
export function stopsIn(events: readonly LogEvent[]): FillEvent[][] {
	const stops = new Map<string, FillEvent[]>();
	for (const event of countingEvents(events)) {
		if (event.kind !== "fill") continue;
		const stop = stops.get(event.stop);
		if (stop) stop.push(event);
		else stops.set(event.stop, [event]);
	}
	return [...stops.values()];
}

/** What the fills cost together; null where one of them has no price. */
export function costOf(fills: readonly FillEvent[]): number | null {
	let cost = 0;
	for (const { litres, pricePerLitre } of fills) {
		if (pricePerLitre === undefined) return null;
		cost += litres * pricePerLitre;
	}
	return cost;
}

export function litresOf(fills: readonly FillEvent[]): number {
	return fills.reduce((sum, { litres }) => sum + litres, 0);
}

function stopCost(fills: readonly FillEvent[], ethanol: EthanolCost | null): StopCost {
	const [first] = fills;
	return {
		stop: first.stop,
		at: first.at,
		place: fills.find(({ place }) => place !== undefined)?.place ?? null,
		fills,
		litres: litresOf(fills),
		cost: costOf(fills),
		ethanol,
	};
}

function sumOf(stops: readonly StopCost[]): CostSum {
	const fills = stops.flatMap((stop) => stop.fills);
	const priced = fills.filter(({ pricePerLitre }) => pricePerLitre !== undefined);
	const told = stops.flatMap(({ ethanol }) => ethanol ?? []);
	const sum = (of: "extra" | "least" | "most") => told.reduce((total, ethanol) => total + ethanol[of], 0);
	return {
		fills: fills.length,
		unpriced: fills.length - priced.length,
		litres: litresOf(fills),
		cost: costOf(priced) ?? 0,
		ethanol: told.length > 0 ? { extra: sum("extra"), least: sum("least"), most: sum("most") } : null,
		blends: stops.filter((stop) => stop.fills.some(({ product }) => !isGasoline(product))).length,
		told: told.length,
	};
}
