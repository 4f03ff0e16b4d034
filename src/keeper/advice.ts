/** What pumps, measurements and mixes come to: answers that only their screens ask for. */
import type { Belief } from "../domain/estimator/belief";
import { type PumpView, pumpSample, pumpView } from "../domain/estimator/pumpView";
import { prepared } from "../domain/estimator/resample";
import type { FillEvent, LogEvent, Product, PumpReading } from "../domain/event";
import { measuresOf } from "../domain/plan/measures";
import { type MixGrid, type MixTable, mixTableOf } from "../domain/plan/mixTable";
import { standingAt } from "../domain/plan/standing";
import type { Measures } from "../domain/plan/worth";
import { instant } from "../domain/quantity";
import { seedsFor } from "../domain/random";
import type { Car } from "../domain/vehicle";
import { budgetsOf } from "../domain/warnings";
import { requestFor, targetOf } from "./ahead";
import type { previewsOf } from "./previews";
import type { PlanAsk } from "./view";

type AtPumpOf = ReturnType<typeof previewsOf>["atPump"];

/** A product at a place: bought or sampled there. */
export interface ProductKnown {
	readonly product: Product;
	readonly pump: PumpView;
	readonly fills: number;
	readonly samples: number;
	/** ISO 8601; null: never. */
	readonly lastFill: string | null;
	readonly lastSample: string | null;
	/** The price last seen, per litre in the car's currency, and when. */
	readonly price: { readonly perLitre: number; readonly at: string } | null;
}

/** A place of the log with all that is known of its pumps. */
export interface PlaceKnown {
	readonly place: string;
	readonly lastVisit: string;
	readonly fills: number;
	readonly samples: number;
	/** The last visited first. */
	readonly products: readonly ProductKnown[];
}

/** Particles on which measurements and tables are reckoned: a fraction of a second, and off by less than a point. */
const measuresSample = 2 ** 13;
const tableSample = 2 ** 12;

/** Every place of the log, the last visited first. */
export async function placesKnown(atPump: AtPumpOf, at: string): Promise<PlaceKnown[]> {
	const { belief: full, counting } = await atPump([], at, []);
	// Once for all pumps: most of the work.
	const belief = prepared(full, pumpSample, seedsFor("pump view"));
	const visits = counting.filter(isVisit).reverse();
	return [...groupedBy(visits, ({ place }) => place)].map(([place, here]) => {
		const pumps = groupedBy(here, ({ product: { id, range } }) => JSON.stringify([id, range]));
		const products = [...pumps.values()].map((pump) => productKnown(belief, place, pump, at));
		return { place, lastVisit: here[0].at, ...countsOf(here), products };
	});
}

/** Of one product at one place, from its visits, the last first. */
function productKnown(belief: Belief, place: string, visits: readonly PlacedVisit[], at: string): ProductKnown {
	const { id, range } = visits[0].product;
	const product = { id, range };
	const fills = visits.filter((visit) => visit.kind === "fill");
	const priced = fills.find(({ pricePerLitre }) => pricePerLitre !== undefined);
	return {
		product,
		pump: pumpView(belief, product, place, instant(at)),
		...countsOf(visits),
		lastFill: fills[0]?.at ?? null,
		lastSample: visits.find(({ kind }) => kind === "reading")?.at ?? null,
		price: priced?.pricePerLitre === undefined ? null : { perLitre: priced.pricePerLitre, at: priced.at },
	};
}

/** What every measurement at this stop is worth; no offers: of the tank as it stands, no fill planned. */
export async function measuresAt(car: Car, atPump: AtPumpOf, ask: PlanAsk): Promise<Measures> {
	const { belief, calibration } = await atPump(ask.poured, ask.visit.at, ask.instead);
	const target = targetOf(car, calibration, ask);
	const standing = standingAt(belief, ask.visit, ask.offers, car.tank, measuresSample);
	return measuresOf(standing, {
		offers: ask.offers,
		request: target && ask.offers.length > 0 ? requestFor(ask, target) : null,
		window: target?.window ?? null,
		calibratedFor: calibration?.calibratedFor ?? null,
	});
}

/** What amounts of the first two offers would make of the tank; null where there are fewer. */
export async function tableAt(car: Car, atPump: AtPumpOf, ask: PlanAsk, grid: MixGrid): Promise<MixTable | null> {
	if (ask.offers.length < 2) return null;
	const { belief, calibration } = await atPump(ask.poured, ask.visit.at, ask.instead);
	const target = targetOf(car, calibration, ask);
	const standing = standingAt(belief, ask.visit, ask.offers.slice(0, 2), car.tank, tableSample);
	return mixTableOf(standing, grid, target && { window: target.window, budgets: budgetsOf(target) });
}

/** A fill or a sample at a named place. */
type PlacedVisit = (FillEvent | PumpReading) & { readonly place: string };

function isVisit(event: LogEvent): event is PlacedVisit {
	return (event.kind === "fill" && event.place !== undefined) || (event.kind === "reading" && event.of === "pump");
}

function countsOf(visits: readonly PlacedVisit[]): { readonly fills: number; readonly samples: number } {
	const fills = visits.filter(({ kind }) => kind === "fill").length;
	return { fills, samples: visits.length - fills };
}

/** Groups in the order of their first members. */
function groupedBy<T>(all: readonly T[], key: (one: T) => string): Map<string, T[]> {
	const groups = new Map<string, T[]>();
	for (const one of all) {
		const group = groups.get(key(one));
		if (group) group.push(one);
		else groups.set(key(one), [one]);
	}
	return groups;
}
