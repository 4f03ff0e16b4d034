/** A plan on its way into the tank: what it was asked for, what it said, and how much of it is poured. */
import type { FillEvent } from "../domain/event";
import type { Fullness, Handling, Offer, Plan, Planned, PlannedPour, Unplannable } from "../domain/plan/request";
import { type Litres, litres } from "../domain/quantity";
import { fromLitres, type VolumeUnit } from "../domain/units";
import type { PlanAnswer, PlanAsk } from "../keeper/view";
import { type Arrival, type ArrivalPart, arrivalOf, changedSince } from "./arrival";
import { type DraftPour, emptyPour, type FillDraft, typedAmount } from "./fillDraft";
import { readPrice, typedPrice } from "./stopDetails";
import { typedNumber } from "./typedNumber";

export interface FillPlan {
	readonly offers: readonly Offer[];
	/** Of all pours of the plan. */
	readonly fullness: Fullness;
	readonly targetCalibration: string | null;
	readonly handling: Handling;
	/** Ids of its pours, in order. */
	readonly ids: readonly string[];
	/** As it was made before any of it was poured. */
	readonly made: Plan;
	/** What it was made with; older ones did not keep it. */
	readonly visit?: Arrival;
	/** What was typed of prices before it, per litre; they are those of its pours. */
	readonly priced?: readonly Offer[];
	/** The second pour, reckoned anew after the first, and with what; null before that. */
	readonly rest: (Rest & { readonly visit?: Arrival }) | null;
}

export type Rest =
	| { readonly kind: "planned"; readonly planned: Planned }
	/** Nothing more is to be poured. */
	| { readonly kind: "none"; readonly why: Unplannable | { readonly code: "usedUp" } }
	/** It could not be reckoned: the plan stands as it was made. */
	| { readonly kind: "unknown" };

/** Where a driver stands in the plan. */
export interface Guided {
	readonly plan: FillPlan;
	/** The first pour is 0. */
	readonly step: number;
	/** What to pump now. */
	readonly pour: PlannedPour;
	/** What comes after it, as far as it is known; null where nothing does. */
	readonly next: PlannedPour | null;
	/** The nozzle clicked although more was to come: the tank is full. */
	readonly clicked: boolean;
	/** What was noted otherwise since this was planned. */
	readonly changed: readonly ArrivalPart[];
}

/** The stop with a plan to be poured after what it holds already. */
export function withPlan(
	draft: FillDraft,
	{ ids, poured, offers, fullness, targetCalibration, handling }: PlanAsk,
	made: Plan,
	now: number,
): FillDraft {
	const [kept, dropped] = [true, false].map((keep) =>
		draft.pours.filter((pour) => poured.some(({ id }) => id === pour.id) === keep),
	);
	const plan: FillPlan = {
		offers,
		fullness,
		targetCalibration,
		handling,
		ids: ids.slice(0, made.pours.length),
		made,
		visit: arrivalOf(draft),
		priced: [...pricesOf(dropped, draft.unit), ...(draft.plan?.priced ?? [])],
		rest: null,
	};
	return { ...draft, plan, notedAt: now, pours: [...kept, plannedPour(plan, ids[0], made.pours[0], draft.unit)] };
}

/** Whether a pour with something typed by the driver makes way for those of a new plan. */
export function losesTyped({ pours, plan }: FillDraft, poured: readonly FillEvent[]): boolean {
	return pours.some(({ id, typed, price, toClick }) => {
		const byPlan = plan?.ids.includes(id);
		return (typed !== "" || price !== "" || (toClick && !byPlan)) && !poured.some((fill) => fill.id === id);
	});
}

function pricesOf(pours: readonly DraftPour[], unit: VolumeUnit): Offer[] {
	return pours.flatMap(({ product, price }) => {
		const read = readPrice(price, unit);
		return read.ok && read.value !== null ? [{ product, pricePerLitre: read.value }] : [];
	});
}

/** A pour of a plan with no amount typed. Its price is one typed before, or, in a plan for a sum of money, the offer's. */
function plannedPour(
	{ fullness, offers, priced = [] }: FillPlan,
	id: string,
	{ product, toClick }: PlannedPour,
	unit: VolumeUnit,
): DraftPour {
	const known = fullness.kind === "money" ? offers : priced;
	const offer = known.find((other) => same(other.product, product));
	return { ...emptyPour(id, product), toClick, price: typedPrice(offer?.pricePerLitre, unit) };
}

/** Null where there is no plan, or the open pour is none of it. */
export function guidedBy(draft: FillDraft): Guided | null {
	const { plan: stored, pours } = draft;
	const open = pours[pours.length - 1];
	const step = stored ? stored.ids.indexOf(open.id) : -1;
	if (!stored || step < 0) return null;
	// What did not fit before may fit with what is noted now.
	const undone = step === 0 && changedSince(stored.rest?.visit, draft).length > 0;
	const plan = undone ? { ...stored, rest: null } : stored;
	const pour = step === 0 ? plan.made.pours[0] : (restPour(plan) ?? plan.made.pours[step]);
	const second = step === 0 ? (plan.made.pours[1] ?? null) : null;
	const clicked = second !== null && open.toClick;
	const next = clicked || plan.rest?.kind === "none" ? null : second;
	const madeWith = plan.rest && plan.rest.kind !== "unknown" ? plan.rest.visit : plan.visit;
	return pour ? { plan, step, pour, next, clicked, changed: changedSince(madeWith, draft) } : null;
}

function restPour({ rest }: FillPlan): PlannedPour | null {
	return rest?.kind === "planned" ? rest.planned.plan.pours[0] : null;
}

/** The draft with what is still to be pumped taken as planned. */
export function asPlanned(draft: FillDraft): FillDraft {
	const guided = guidedBy(draft);
	if (!guided) return draft;
	const { plan, step, pour, next } = guided;
	const open = draft.pours[draft.pours.length - 1];
	const typed = (planned: PlannedPour) => plannedAmount(planned, draft.unit);
	const now = open.typed === "" ? { ...open, typed: typed(pour) } : open;
	const later = next ? [{ ...plannedPour(plan, plan.ids[step + 1], next, draft.unit), typed: typed(next) }] : [];
	return { ...draft, pours: [...draft.pours.slice(0, -1), now, ...later] };
}

/** As a person would type it; what comes with the click is not known closer than a tenth. */
export function plannedAmount({ litres: amount, toClick }: PlannedPour, unit: VolumeUnit): string {
	return toClick ? typedNumber(Number(fromLitres(amount, unit).toFixed(1))) : typedAmount(amount, unit);
}

/** What to ask about the rest of a plan, or why nothing is left to ask. `poured`: all fills of the stop so far. */
export function restAsk(
	{ plan }: Guided,
	poured: readonly FillEvent[],
	instead: readonly string[],
	visit: PlanAsk["visit"],
): PlanAsk | Rest {
	const ofPlan = poured.filter(({ id }) => plan.ids.includes(id));
	const fullness = leftOf(plan, ofPlan);
	if (!fullness) return { kind: "none", why: { code: "usedUp" } };
	const { targetCalibration, handling, ids } = plan;
	const offers = plan.offers.filter((offer) => !ofPlan.some(({ product }) => same(offer.product, product)));
	return { visit, poured, instead, offers, fullness, targetCalibration, handling, ids: ids.slice(1) };
}

export function restOf(answer: PlanAnswer | null, { step }: Handling): Rest {
	if (!answer) return { kind: "unknown" };
	const { planned } = answer;
	if (!planned.ok) return { kind: "none", why: planned.error };
	const { litres: room } = planned.value.plan.pours[0];
	// Less than a hand can hit is what a click leaves open.
	return room < step ? { kind: "none", why: { code: "full", room } } : { kind: "planned", planned: planned.value };
}

/** On to the next product, or no further where nothing more is to be poured. */
export function withRest(draft: FillDraft, { plan, step }: Guided, rest: Rest): FillDraft {
	const next = rest.kind === "planned" ? rest.planned.plan.pours[0] : plan.made.pours[step + 1];
	const changed = { ...draft, plan: { ...plan, rest: { ...rest, visit: arrivalOf(draft) } } };
	if (rest.kind === "none" || !next) return changed;
	return { ...changed, pours: [...draft.pours, plannedPour(plan, plan.ids[step + 1], next, draft.unit)] };
}

/** Back to a pour of the plan; what came after it is to be reckoned anew. */
export function backTo(draft: FillDraft, id: string): FillDraft {
	const at = draft.pours.findIndex((pour) => pour.id === id);
	return { ...draft, pours: draft.pours.slice(0, at + 1), plan: draft.plan && { ...draft.plan, rest: null } };
}

/** What of the fullness is left after some of it was poured; null: nothing. */
function leftOf({ fullness, offers }: FillPlan, poured: readonly FillEvent[]): Fullness | null {
	switch (fullness.kind) {
		case "click":
			return fullness;
		case "litres": {
			const left = fullness.litres - sum(poured.map((fill) => fill.litres));
			return left > leastLeft ? { kind: "litres", litres: litres(left) as Litres } : null;
		}
		case "money": {
			const spent = poured.map((fill) => {
				const offer = offers.find(({ product }) => same(product, fill.product));
				return fill.litres * (fill.pricePerLitre ?? offer?.pricePerLitre ?? 0);
			});
			const left = fullness.amount - sum(spent);
			return left > 0 ? { kind: "money", amount: left } : null;
		}
	}
}

/** Less than this is no pour, L: a dispenser's last digit. */
const leastLeft = 0.01;

function sum(values: readonly number[]): number {
	return values.reduce((total, value) => total + value, 0);
}

function same(a: FillEvent["product"], b: FillEvent["product"]): boolean {
	return a.id === b.id && a.range[0] === b.range[0] && a.range[1] === b.range[1];
}
