/** Every single thing that may have gone wrong with some entries, each with what would then really have happened. */
import { rubbishChance, unknownContents } from "../estimator/constants";
import type { FillEvent, LevelEvent, Product, TankEvent } from "../event";
import { contentRange, litres } from "../quantity";
import { litresPer } from "../units";
import { type Explanation, priors } from "./explanation";

/** What happened instead of an entry: another one or none; before it perhaps a fill of some amount that was not entered. */
export interface Instead {
	readonly event: TankEvent | null;
	readonly missing?: Product;
}

export interface Suspect {
	readonly explanation: Explanation;
	readonly prior: number;
	/** By index of the entry. */
	readonly instead: ReadonlyMap<number, Instead>;
}

/** A pump far from its label may give anything. */
const anything = contentRange(0, 1);

/** The decimal point slipped either way, or gallons were taken for litres or litres for gallons. */
const slips: readonly (readonly [factor: number, prior: number])[] = [
	[10, priors.tenfold],
	[1 / 10, priors.tenfold],
	[litresPer.gal, priors.unit],
	[1 / litresPer.gal, priors.unit],
];

/** `events` in order; `products`: what may have been poured; `mostL`: more than that fits into no such tank. */
export function suspectsIn(events: readonly TankEvent[], products: readonly Product[], mostL: number): Suspect[] {
	return events.flatMap((event, index) => suspectsOf(event, index, events, products, mostL));
}

function suspectsOf(
	event: TankEvent,
	index: number,
	events: readonly TankEvent[],
	products: readonly Product[],
	mostL: number,
): Suspect[] {
	const { id } = event;
	const suspect = (explanation: Explanation, prior: number, instead: Instead): Suspect => ({
		explanation,
		prior,
		instead: new Map([[index, instead]]),
	});
	switch (event.kind) {
		case "start": {
			const unknown = { ...event, contents: { range: contentRange(...unknownContents) } };
			return [suspect({ kind: "start", event: id }, priors.start, { event: unknown })];
		}
		case "reading":
			return [suspect({ kind: "reading", event: id }, rubbishChance, { event: null })];
		case "level":
			return [
				suspect({ kind: "gauge", event: id }, priors.gauge, { event: null }),
				...odometer(event, suspect),
				...missing(event, events.slice(0, index), products, suspect),
			];
		case "fill":
			return [
				...gauge(event, suspect),
				...click(event, suspect),
				...odometer(event, suspect),
				...amounts(event, mostL, suspect),
				...others(event, products, suspect),
				suspect({ kind: "pump", event: id }, priors.pump, { event: unlabelled(event) }),
				...missing(event, events.slice(0, index), products, suspect),
				...exchanged(event, index, events),
			];
	}
}

type Suspecting = (explanation: Explanation, prior: number, instead: Instead) => Suspect;

function gauge({ gauge, ...rest }: FillEvent, suspect: Suspecting): Suspect[] {
	return gauge === undefined ? [] : [suspect({ kind: "gauge", event: rest.id }, priors.gauge, { event: rest })];
}

function click({ toClick, ...rest }: FillEvent, suspect: Suspecting): Suspect[] {
	return toClick ? [suspect({ kind: "click", event: rest.id }, priors.click, { event: rest })] : [];
}

function odometer(event: FillEvent | LevelEvent, suspect: Suspecting): Suspect[] {
	const { odometerKm, ...rest } = event;
	return odometerKm === undefined
		? []
		: [suspect({ kind: "odometer", event: rest.id }, priors.odometer, { event: rest })];
}

function amounts(event: FillEvent, mostL: number, suspect: Suspecting): Suspect[] {
	return slips.flatMap(([factor, prior]) => {
		const really = litres(event.litres * factor);
		if (really > mostL) return [];
		return [
			suspect({ kind: "amount", event: event.id, litres: really }, prior, { event: { ...event, litres: really } }),
		];
	});
}

/** The same amount of another product. */
function others(event: FillEvent, products: readonly Product[], suspect: Suspecting): Suspect[] {
	const different = products.filter((product) => !same(product, event.product));
	return different.map((product) =>
		suspect({ kind: "product", event: event.id, product }, priors.product / different.length, {
			event: { ...event, product },
		}),
	);
}

/** A fill of something before this entry: not between two pours of a stop. */
function missing(
	event: FillEvent | LevelEvent,
	before: readonly TankEvent[],
	products: readonly Product[],
	suspect: Suspecting,
): Suspect[] {
	if (event.kind === "fill" && before.some((other) => other.kind === "fill" && other.stop === event.stop)) return [];
	return products.map((product) =>
		suspect({ kind: "missing", event: event.id, product }, priors.missing / products.length, {
			event,
			missing: product,
		}),
	);
}

/** This fill's product and that of a later one of its stop, each poured in the other's amount. */
function exchanged(event: FillEvent, index: number, events: readonly TankEvent[]): Suspect[] {
	return events.flatMap((other, at): Suspect[] => {
		if (at <= index || other.kind !== "fill" || other.stop !== event.stop || same(other.product, event.product))
			return [];
		return [
			{
				explanation: { kind: "exchange", event: event.id, other: other.id },
				prior: priors.exchange,
				instead: new Map([
					[index, { event: { ...event, product: other.product } }],
					[at, { event: { ...other, product: event.product } }],
				]),
			},
		];
	});
}

/** Remembered apart from what else is known of the product. */
function unlabelled({ place: _, ...event }: FillEvent): FillEvent {
	return { ...event, product: { id: `${event.product.id} beyond its label`, range: anything } };
}

function same(a: Product, b: Product): boolean {
	return a.id === b.id && a.range[0] === b.range[0] && a.range[1] === b.range[1];
}
