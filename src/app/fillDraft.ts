/** A stop as typed so far: what is kept through a killed app, and how it becomes events. */

import { overfillLimit } from "../domain/estimator/constants";
import type { FillEvent, Product } from "../domain/event";
import type { Fraction } from "../domain/quantity";
import { fromLitres, litresPer, toLitres, type VolumeUnit } from "../domain/units";
import type { Tank } from "../domain/vehicle";
import type { DraftStop } from "../keeper/view";
import { isoWithOffset } from "./app";
import { type NumberFault, parseNumber } from "./parseNumber";

export interface DraftPour {
	/** Becomes the event's id, so that what is shown before saving is what is shown after. */
	readonly id: string;
	readonly product: Product;
	/** As typed, in the car's unit. */
	readonly typed: string;
	readonly toClick: boolean;
}

export interface FillDraft {
	readonly stop: string;
	/** Null: when it is saved. */
	readonly at: string | null;
	readonly place: string | null;
	/** Null: nobody looked. */
	readonly gauge: number | null;
	/** What the amounts are typed in. */
	readonly unit: VolumeUnit;
	/** When saving was first tried: a second try must write the very same. */
	readonly triedAt: string | null;
	/** At least one; the last is being typed. */
	readonly pours: readonly DraftPour[];
	/** Events that this stop replaces. */
	readonly instead: readonly string[];
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
		pours: [{ id: newId(), product, typed: "", toClick: false }],
		instead: [],
	};
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
		pours: fills.map(({ product, litres, toClick }) => ({
			id: newId(),
			product,
			typed: String(Math.round(fromLitres(litres, unit) * 1000) / 1000),
			toClick: toClick === true,
		})),
		instead: fills.map(({ id }) => id),
	};
}

/** A stored draft, if that is what it is. */
export function readDraft(raw: unknown): FillDraft | null {
	const draft = raw as Partial<FillDraft> | null | undefined;
	return typeof draft === "object" &&
		draft &&
		typeof draft.stop === "string" &&
		typeof draft.unit === "string" &&
		Array.isArray(draft.pours) &&
		draft.pours.length > 0
		? (draft as FillDraft)
		: null;
}

/** The draft with its amounts in another unit. */
export function inUnit(draft: FillDraft, unit: VolumeUnit): FillDraft {
	if (draft.unit === unit) return draft;
	const factor = litresPer[draft.unit] / litresPer[unit];
	const converted = (typed: string) => {
		const amount = parseNumber(typed, 0, Infinity);
		return amount.ok ? String(Math.round(amount.value * factor * 1000) / 1000) : typed;
	};
	return { ...draft, unit, pours: draft.pours.map((pour) => ({ ...pour, typed: converted(pour.typed) })) };
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
	return usable.map(({ id, product, typed, toClick }, i) => ({
		kind: "fill",
		id,
		at: i === 0 && at !== null ? at : isoWithOffset(begun + i * 1000),
		stop: draft.stop,
		product,
		litres: toLitres(Number(typed.replace(",", ".")), unit),
		...(draft.place === null ? {} : { place: draft.place }),
		...(i === 0 && draft.gauge !== null ? { gauge: draft.gauge as Fraction } : {}),
		...(toClick && i === usable.length - 1 ? { toClick: true } : {}),
	}));
}

/** What to ask the keeper about this draft. */
export function stopOf(draft: FillDraft, tank: Tank, unit: VolumeUnit, now: number): DraftStop {
	const fills = fillsOf(draft, tank, unit, now);
	const open = draft.pours[draft.pours.length - 1];
	const next =
		fills.at(-1)?.id === open.id
			? null
			: {
					id: open.id,
					at: isoWithOffset((draft.at === null ? now : Date.parse(draft.at)) + fills.length * 1000),
					stop: draft.stop,
					product: open.product,
					...(draft.place === null ? {} : { place: draft.place }),
					...(fills.length === 0 && draft.gauge !== null ? { gauge: draft.gauge as Fraction } : {}),
				};
	return { fills, next, instead: draft.instead };
}
