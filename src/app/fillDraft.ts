/** A stop as typed so far: what is kept through a killed app, and how it becomes events. */

import { overfillLimit } from "../domain/estimator/constants";
import type { FillEvent, Product } from "../domain/event";
import type { Visit } from "../domain/plan/request";
import type { Fraction } from "../domain/quantity";
import { fromLitres, litresPer, toLitres, type VolumeUnit } from "../domain/units";
import type { Tank } from "../domain/vehicle";
import type { DraftStop } from "../keeper/view";
import { isoWithOffset } from "./app";
import type { FillPlan } from "./fillPlan";
import { type NumberFault, parseNumber } from "./parseNumber";
import { odometerIn, priceIn, readOdometer, readPrice, typedOdometer, typedPrice } from "./stopDetails";
import { typedNumber } from "./typedNumber";

export interface DraftPour {
	/** Becomes the event's id, so that what is shown before saving is what is shown after. */
	readonly id: string;
	readonly product: Product;
	/** As typed, in the car's unit. */
	readonly typed: string;
	readonly toClick: boolean;
	/** Per unit, as typed; empty: not noted. */
	readonly price: string;
}

export interface FillDraft {
	readonly stop: string;
	/** Null: when it is saved. */
	readonly at: string | null;
	readonly place: string | null;
	/** Null: nobody looked. */
	readonly gauge: number | null;
	/** As typed; empty: not noted. */
	readonly odometer: string;
	/** When gauge, odometer or plan were noted, ms; null: unknown. */
	readonly notedAt: number | null;
	/** What the amounts are typed in. */
	readonly unit: VolumeUnit;
	/** When saving was first tried: a second try must write the very same. */
	readonly triedAt: string | null;
	/** At least one; the last is being typed. */
	readonly pours: readonly DraftPour[];
	/** Events that this stop replaces. */
	readonly instead: readonly string[];
	/** What leads through this stop; null: the driver alone. */
	readonly plan: FillPlan | null;
}

/** Most that a person may enter for one product, L: no tank holds more than this over its rated capacity. */
export function mostLitres(tank: Tank): number {
	return tank.capacityL * overfillLimit * 1.05;
}

export function newDraft(newId: () => string, product: Product, place: string | null, unit: VolumeUnit): FillDraft {
	return {
		unit,
		triedAt: null,
		stop: newId(),
		at: null,
		place,
		gauge: null,
		odometer: "",
		notedAt: null,
		pours: [emptyPour(newId(), product)],
		instead: [],
		plan: null,
	};
}

export function emptyPour(id: string, product: Product): DraftPour {
	return { id, product, typed: "", toClick: false, price: "" };
}

/** The draft of a stop that is to be replaced. */
export function draftOf(fills: readonly FillEvent[], unit: VolumeUnit, newId: () => string): FillDraft {
	const [first] = fills;
	return {
		unit,
		triedAt: null,
		stop: newId(),
		at: first.at,
		place: fills.find(({ place }) => place !== undefined)?.place ?? null,
		gauge: fills.find(({ gauge }) => gauge !== undefined)?.gauge ?? null,
		odometer: typedOdometer(fills.find(({ odometerKm }) => odometerKm !== undefined)?.odometerKm, unit),
		notedAt: null,
		pours: fills.map(({ product, litres, toClick, pricePerLitre }) => ({
			id: newId(),
			product,
			typed: typedAmount(litres, unit),
			toClick: toClick === true,
			price: typedPrice(pricePerLitre, unit),
		})),
		instead: fills.map(({ id }) => id),
		plan: null,
	};
}

/** An amount as a person would type it. */
export function typedAmount(litres: number, unit: VolumeUnit): string {
	return typedNumber(Math.round(fromLitres(litres, unit) * 1000) / 1000);
}

/** A stored draft, if that is what it is. Older ones knew no price, odometer and plan. */
export function readDraft(raw: unknown): FillDraft | null {
	const draft = raw as Partial<FillDraft> | null | undefined;
	return typeof draft === "object" &&
		draft &&
		typeof draft.stop === "string" &&
		typeof draft.unit === "string" &&
		Array.isArray(draft.pours) &&
		draft.pours.length > 0
		? ({
				odometer: "",
				notedAt: null,
				plan: null,
				...draft,
				pours: draft.pours.map((pour) => ({ price: "", ...pour })),
			} as unknown as FillDraft)
		: null;
}

/** A look at the gauge holds for so long: people drive on (common practice). */
const holdsMs = 2 * 3_600_000;

/** The same as it serves now: what was noted for a stop that never came is no longer so. */
export function readFreshDraft(raw: unknown, now: number): FillDraft | null {
	const draft = readDraft(raw);
	if (!draft || draft.at !== null || draft.notedAt === null || now - draft.notedAt <= holdsMs) return draft;
	const poured = draft.pours.some(({ typed }) => typed !== "");
	return poured ? draft : { ...draft, gauge: null, odometer: "", notedAt: null, plan: null };
}

/** The draft with its amounts in another unit. */
export function inUnit(draft: FillDraft, unit: VolumeUnit): FillDraft {
	if (draft.unit === unit) return draft;
	const factor = litresPer[draft.unit] / litresPer[unit];
	const converted = (typed: string) => {
		const amount = parseNumber(typed, 0, Infinity);
		return amount.ok ? String(Math.round(amount.value * factor * 1000) / 1000) : typed;
	};
	const pours = draft.pours.map((pour) => {
		return { ...pour, typed: converted(pour.typed), price: priceIn(pour.price, draft.unit, unit) };
	});
	return { ...draft, unit, pours, odometer: odometerIn(draft.odometer, draft.unit, unit) };
}

/** Whether a pour's amount can't be used, and why; `empty` only matters where it is the only one. */
export function faultOf(pour: DraftPour, tank: Tank, unit: VolumeUnit): NumberFault | null {
	const amount = parseNumber(pour.typed, 0.001, mostLitres(tank) / litresPer[unit]);
	return amount.ok ? null : amount.error;
}

/** Events of all pours whose amount can be used, a second apart: the order in which they were poured. */
export function fillsOf(draft: FillDraft, tank: Tank, unit: VolumeUnit, now: number): FillEvent[] {
	const at = draft.at ?? draft.triedAt;
	const begun = at === null ? now : Date.parse(at);
	const usable = draft.pours.filter((pour) => faultOf(pour, tank, unit) === null);
	const odometer = readOdometer(draft.odometer, unit);
	const perLitre = (typed: string) => {
		const price = readPrice(typed, unit);
		return price.ok && price.value !== null ? { pricePerLitre: price.value } : {};
	};
	return usable.map(({ id, product, typed, toClick, price }, i) => ({
		kind: "fill",
		id,
		at: i === 0 && at !== null ? at : isoWithOffset(begun + i * 1000),
		stop: draft.stop,
		product,
		litres: toLitres(Number(typed.replace(",", ".")), unit),
		...(draft.place === null ? {} : { place: draft.place }),
		...(i === 0 && draft.gauge !== null ? { gauge: draft.gauge as Fraction } : {}),
		...(toClick && i === usable.length - 1 ? { toClick: true } : {}),
		...(i === 0 && odometer.ok && odometer.value !== null ? { odometerKm: odometer.value } : {}),
		...perLitre(price),
	}));
}

/** The stop of this draft, for planning what to pour at it. `at`: ISO 8601 with offset, where the draft names no time. */
export function visitOf(draft: FillDraft, at: string): Visit {
	const odometer = readOdometer(draft.odometer, draft.unit);
	return {
		stop: draft.stop,
		at: draft.at ?? at,
		...(draft.place === null ? {} : { place: draft.place }),
		...(draft.gauge === null ? {} : { gauge: draft.gauge as Fraction }),
		...(odometer.ok && odometer.value !== null ? { odometerKm: odometer.value } : {}),
	};
}

/** What to ask the keeper about this draft. */
export function stopOf(draft: FillDraft, tank: Tank, unit: VolumeUnit, now: number): DraftStop {
	// What it cost leads nowhere: no new question for it.
	const fills = fillsOf(draft, tank, unit, now).map(({ pricePerLitre: _, ...fill }) => fill);
	const open = draft.pours[draft.pours.length - 1];
	const at = isoWithOffset((draft.at === null ? now : Date.parse(draft.at)) + fills.length * 1000);
	const { gauge, odometerKm, ...visit } = visitOf(draft, at);
	// Noted on arrival, they belong to the first.
	const noted = { ...(gauge === undefined ? {} : { gauge }), ...(odometerKm === undefined ? {} : { odometerKm }) };
	const next =
		fills.at(-1)?.id === open.id
			? null
			: { ...visit, ...(fills.length === 0 ? noted : {}), at, id: open.id, product: open.product };
	return { fills, next, instead: draft.instead };
}
