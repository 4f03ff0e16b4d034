/** "What to pump?" as a person asks it: everything filled in from the log, and what can be changed. */
import type { FillEvent, LogEvent, Product } from "../domain/event";
import type { Fullness, Offer } from "../domain/plan/request";
import { litres } from "../domain/quantity";
import { err, ok, type Result } from "../domain/result";
import { fromLitres, litresPer, toLitres, type VolumeUnit } from "../domain/units";
import type { Tank } from "../domain/vehicle";
import type { PlanAsk } from "../keeper/view";
import { lastPrice, productKey, productsAt, productsIn } from "./fillChoices";
import { type FillDraft, mostLitres, typedAmount, visitOf } from "./fillDraft";
import { volume } from "./format";
import { readNumber } from "./numberWords";
import { priceIn, readPrice, typedPrice } from "./stopDetails";
import { typedNumber } from "./typedNumber";
import { numbersWords } from "./words/numbers";
import { planScreenWords } from "./words/plan";

export interface PlanOffer {
	readonly product: Product;
	/** Whether it is on sale here. */
	readonly on: boolean;
	/** Per unit, as typed. */
	readonly price: string;
}

/** The stop itself (place, gauge, odometer, what is poured) is that of the fill form: there is one stop at a time. */
export interface PlanForm {
	/** The stop it is for; a form for another one is begun anew. */
	readonly stop: string;
	/** Ids that its pours will have: what is planned agrees with what is saved. */
	readonly ids: readonly string[];
	/** What the numbers are typed in. */
	readonly unit: VolumeUnit;
	/** Where the offers are those of. */
	readonly place: string | null;
	readonly offers: readonly PlanOffer[];
	readonly full: Fullness["kind"];
	readonly amount: string;
	readonly money: string;
	/** Calibration to pump for; null: the flashed one. */
	readonly target: string | null;
	readonly step: string;
	readonly minimum: string;
}

/** Faults by field, those of prices by product. */
export type PlanFaults = Partial<Record<"amount" | "money" | "step" | "minimum", string>> & {
	readonly prices?: Readonly<Record<string, string>>;
};

/** Smallest difference a hand can hit at the nozzle (common practice). */
function usualStep(unit: VolumeUnit): string {
	return typedNumber(unit === "L" ? 0.5 : 0.1);
}

/** A form for a stop; how a driver likes to fill is kept from an older one. */
export function newPlanForm(
	newId: () => string,
	events: readonly LogEvent[],
	{ stop, place, unit }: FillDraft,
	older?: PlanForm,
): PlanForm {
	return {
		full: "click",
		amount: "",
		money: "",
		step: usualStep(unit),
		minimum: "",
		...(older && planInUnit(older, unit)),
		stop,
		ids: Array.from({ length: mostPours }, newId),
		unit,
		place,
		offers: offersAt(events, place, unit),
		target: null,
	};
}

/** Pours of one stop that a form has ids for: those of a plan, and of plans made anew halfway. */
const mostPours = 12;

/** The products bought at a place are on, else the last two bought; always at least two, and the usual ones to choose from. */
function offersAt(events: readonly LogEvent[], place: string | null, unit: VolumeUnit): PlanOffer[] {
	const here = productsAt(events, place);
	const usual = productsIn(events);
	const listed = new Map([...here, ...usual].map((product) => [productKey(product), product]));
	const on = Math.max(2, Math.min(here.length, mostOn));
	return [...listed.values()].slice(0, mostListed).map((product, i) => ({
		product,
		on: i < on,
		price: priceAt(events, place, product, unit),
	}));
}

/** More would be tiring to switch off. */
const [mostOn, mostListed] = [3, 5];

/** The form at another place, with what is sold there; what the driver ticked, typed or added stays. */
export function atPlace(form: PlanForm, place: string | null, events: readonly LogEvent[]): PlanForm {
	const filledIn = offersAt(events, form.place, form.unit);
	const there = offersAt(events, place, form.unit);
	const mine = form.offers.flatMap((offer) => {
		const typed = offer.price !== priceAt(events, form.place, offer.product, form.unit);
		const touched = typed || offer.on !== offerOf(filledIn, offer.product)?.on;
		return touched ? [typed ? offer : { ...offer, price: priceAt(events, place, offer.product, form.unit) }] : [];
	});
	const merged = there.map((offer) => offerOf(mine, offer.product) ?? offer);
	const more = mine.filter(({ product }) => !offerOf(there, product));
	return { ...form, place, offers: [...merged, ...more] };
}

function offerOf(offers: readonly PlanOffer[], product: Product): PlanOffer | undefined {
	return offers.find((offer) => productKey(offer.product) === productKey(product));
}

/** As it is filled in from the log; empty: never noted. */
function priceAt(events: readonly LogEvent[], place: string | null, product: Product, unit: VolumeUnit): string {
	return typedPrice(lastPrice(events, place, product) ?? undefined, unit);
}

/** With one more product on sale. */
export function withOffer(form: PlanForm, product: Product, events: readonly LogEvent[]): PlanForm {
	const others = form.offers.filter((offer) => productKey(offer.product) !== productKey(product));
	const price = priceAt(events, form.place, product, form.unit);
	return { ...form, offers: [...others, { product, on: true, price }] };
}

export function changeOffer(form: PlanForm, product: Product, part: Partial<PlanOffer>): PlanForm {
	const changed = (offer: PlanOffer) =>
		productKey(offer.product) === productKey(product) ? { ...offer, ...part } : offer;
	return { ...form, offers: form.offers.map(changed) };
}

/** A stored form, if that is what it is. */
export function readPlanForm(raw: unknown): PlanForm | null {
	const form = raw as Partial<PlanForm> | null | undefined;
	return typeof form === "object" &&
		form &&
		typeof form.stop === "string" &&
		typeof form.unit === "string" &&
		Array.isArray(form.offers)
		? (form as PlanForm)
		: null;
}

/** A stored form as it serves this stop. */
export function forStop(form: PlanForm, newId: () => string, events: readonly LogEvent[], draft: FillDraft): PlanForm {
	if (form.stop !== draft.stop) return newPlanForm(newId, events, draft, form);
	const converted = planInUnit(form, draft.unit);
	return form.place === draft.place ? converted : atPlace(converted, draft.place, events);
}

function planInUnit(form: PlanForm, unit: VolumeUnit): PlanForm {
	if (form.unit === unit) return form;
	const converted = (typed: string) => {
		const value = Number(typed.replace(",", ".")) * litresPer[form.unit];
		return typed !== "" && value >= 0 ? typedAmount(value, unit) : typed;
	};
	return {
		...form,
		unit,
		amount: converted(form.amount),
		minimum: converted(form.minimum),
		step: form.step === usualStep(form.unit) ? usualStep(unit) : converted(form.step),
		offers: form.offers.map((offer) => ({ ...offer, price: priceIn(offer.price, form.unit, unit) })),
	};
}

/** The question, or what is wrong with the form. `poured`: what the stop holds already; `at`: ISO 8601 with offset. */
export function planAskOf(
	form: PlanForm,
	draft: FillDraft,
	poured: readonly FillEvent[],
	tank: Tank,
	at: string,
): Result<PlanAsk, PlanFaults> {
	const { unit } = form;
	const fullness = readFullness(form, tank);
	const step = readStep(form);
	const minimum = form.minimum.trim() === "" ? ok(0) : readAmount(form.minimum, unit, 0, 20, "1");
	const read = form.offers
		.filter(({ on }) => on)
		.map(({ product, price }) => ({ product, price: readPrice(price, unit) }));
	const prices = read.flatMap(({ product, price }) => (price.ok ? [] : [[productKey(product), price.error] as const]));
	if (!fullness.ok || !step.ok || !minimum.ok || prices.length > 0) {
		return err({
			...(fullness.ok ? {} : fullness.error),
			...(step.ok ? {} : { step: step.error }),
			...(minimum.ok ? {} : { minimum: minimum.error }),
			...(prices.length === 0 ? {} : { prices: Object.fromEntries(prices) }),
		});
	}
	const offers = read.map(
		({ product, price }): Offer =>
			price.ok && price.value !== null ? { product, pricePerLitre: price.value } : { product },
	);
	return ok({
		visit: visitOf(draft, at),
		poured,
		instead: draft.instead,
		offers,
		fullness: fullness.value,
		targetCalibration: form.target,
		handling: { step: litres(step.value), minimum: litres(minimum.value) },
		ids: form.ids.filter((id) => !poured.some((fill) => fill.id === id)).slice(0, 2),
	});
}

function readFullness(form: PlanForm, tank: Tank): Result<Fullness, PlanFaults> {
	switch (form.full) {
		case "click":
			return ok({ kind: "click" });
		case "litres": {
			if (form.amount.trim() === "") return err({ amount: planScreenWords().noAmount });
			const amount = readAmount(form.amount, form.unit, 0.1, mostLitres(tank), "20");
			return amount.ok ? ok({ kind: "litres", litres: litres(amount.value) }) : err({ amount: amount.error });
		}
		case "money": {
			if (form.money.trim() === "") return err({ money: planScreenWords().noMoney });
			const money = readNumber(form.money, 0.01, 1e7, {
				example: "40",
				limits: planScreenWords().moneyLimits(typedNumber(0.01)),
			});
			return money.ok ? ok({ kind: "money", amount: money.value }) : err({ money: money.error });
		}
	}
}

function readStep({ step, unit }: PlanForm): Result<number, string> {
	return readAmount(step, unit, 0.1, 20, usualStep(unit));
}

/** L; the limits are litres, too. */
function readAmount(typed: string, unit: VolumeUnit, least: number, most: number, example: string) {
	const limits = numbersWords().limits(volume(least, unit), volume(most, unit));
	const read = readNumber(typed, fromLitres(least, unit), fromLitres(most, unit), { example, limits });
	return read.ok ? ok(toLitres(read.value, unit)) : read;
}
