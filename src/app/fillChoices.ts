/** What the log offers to choose from: places and products, the last used first. */
import { catalogue } from "../domain/catalogue";
import { countingEvents, type FillEvent, type LogEvent, type Product } from "../domain/event";
import { localFuels } from "./localFuels";

const known = new WeakMap<readonly LogEvent[], readonly LogEvent[]>();

/** The events that count, the last first; put in order once for a log, as forms ask again with every key. */
function newestFirst(events: readonly LogEvent[]): readonly LogEvent[] {
	const ordered = known.get(events) ?? countingEvents(events).reverse();
	known.set(events, ordered);
	return ordered;
}

function fillsNewestFirst(events: readonly LogEvent[]): FillEvent[] {
	return newestFirst(events).filter((event) => event.kind === "fill");
}

export function placesIn(events: readonly LogEvent[]): string[] {
	return [...new Set(fillsNewestFirst(events).flatMap(({ place }) => (place === undefined ? [] : [place])))];
}

/** Products bought, the last first, filled up with the usual ones to at least three. */
export function productsIn(events: readonly LogEvent[]): Product[] {
	const found = new Map<string, Product>();
	for (const { product } of fillsNewestFirst(events)) {
		if (!found.has(productKey(product))) found.set(productKey(product), { id: product.id, range: product.range });
	}
	const { strong, gasolines } = localFuels();
	for (const id of [strong, ...gasolines]) {
		const entry = catalogue.find((fuel) => fuel.id === id);
		if (entry && found.size < 3 && !found.has(productKey(entry)))
			found.set(productKey(entry), { id, range: entry.range });
	}
	return [...found.values()];
}

export function productKey({ id, range }: Product): string {
	return `${id} ${range[0]} ${range[1]}`;
}

/** What was bought first at the last stop: people keep their habits. */
export function usualProduct(events: readonly LogEvent[]): Product {
	const fills = fillsNewestFirst(events);
	const first = fills.filter(({ stop }) => stop === fills[0]?.stop).at(-1);
	return first?.product ?? productsIn(events)[0];
}

/** The likeliest second product: what followed this one at the last stop that had two, else another known one. */
export function productAfter(events: readonly LogEvent[], product: Product): Product {
	const fills = fillsNewestFirst(events);
	const followed = fills.find(
		(fill, i) => fills[i + 1]?.stop === fill.stop && productKey(fills[i + 1].product) === productKey(product),
	);
	return followed?.product ?? productsIn(events).find((other) => productKey(other) !== productKey(product)) ?? product;
}

/** Bought at this place before, the last first. */
export function productsAt(events: readonly LogEvent[], place: string | null): Product[] {
	const found = new Map<string, Product>();
	for (const fill of fillsNewestFirst(events)) {
		const key = productKey(fill.product);
		if (place !== null && fill.place === place && !found.has(key)) found.set(key, fill.product);
	}
	return [...found.values()].map(({ id, range }) => ({ id, range }));
}

/** What a litre of a product cost at a place the last time, else anywhere; null: never noted. */
export function lastPrice(events: readonly LogEvent[], place: string | null, product: Product): number | null {
	const priced = fillsNewestFirst(events).filter(
		(fill) => fill.pricePerLitre !== undefined && productKey(fill.product) === productKey(product),
	);
	return (priced.find((fill) => fill.place === (place ?? undefined)) ?? priced[0])?.pricePerLitre ?? null;
}

/** The last odometer before a time, km, and when; the events of `instead` are about to be replaced. */
export function lastOdometer(
	events: readonly LogEvent[],
	before: number,
	instead: readonly string[],
): { readonly km: number; readonly at: string } | null {
	for (const event of newestFirst(events)) {
		if ((event.kind !== "fill" && event.kind !== "level") || event.odometerKm === undefined) continue;
		if (Date.parse(event.at) <= before && !instead.includes(event.id)) return { km: event.odometerKm, at: event.at };
	}
	return null;
}
