/** Pourings: plans as plain numbers, and all of those that a request allows. */
import type { Litres } from "../quantity";
import { err, ok, type Result } from "../result";
import type { PlannedPour, PlanRequest, Unplannable } from "./request";
import type { Room } from "./room";

/** So much of one offer, then of another until the total; offers by their place in the request. */
export interface Pouring {
	readonly first: number;
	readonly second: number;
	/** Of the first, L; 0 where there is but the second. */
	readonly amount: number;
	/** Both together, L; Infinity: until the nozzle clicks. A click before that cuts it short. */
	readonly total: number;
}

/** The pours of it as the dispenser will display them. */
export function poursOf({ first, second, amount, total }: Pouring, { offers }: PlanRequest, room: Room): PlannedPour[] {
	const toClick = total > room.median;
	const rest = (Math.min(total, room.median) - amount) as Litres;
	const last: PlannedPour = { product: offers[second].product, litres: rest, toClick };
	return amount > 0 ? [{ product: offers[first].product, litres: amount as Litres, toClick: false }, last] : [last];
}

/** What it costs, with the litres of `poursOf`; null where a price is missing. */
export function costOf({ first, second, amount, total }: Pouring, { offers }: PlanRequest, room: Room): number | null {
	const rest = (Math.min(total, room.median) - amount) * (offers[second].pricePerLitre ?? Number.NaN);
	const cost = amount > 0 ? amount * (offers[first].pricePerLitre ?? Number.NaN) + rest : rest;
	return Number.isNaN(cost) ? null : cost;
}

/** As much of both, in the other order. */
export function swappedOf({ first, second, amount, total }: Pouring, room: Room): Pouring {
	return { first: second, second: first, amount: Math.min(total, room.median) - amount, total };
}

/** Amounts that differ by less differ by rounding alone, L or steps. */
const tiny = 1e-9;

/**
 * Every pouring that the request allows, in rows: each product by itself, then each two in each order, the amount of the
 * first rising by steps along the row. Or why there is none. Throws on a step of nothing.
 */
export function pouringsOf(request: PlanRequest, room: Room): Result<readonly (readonly Pouring[])[], Unplannable> {
	const { offers, handling, pours } = request;
	const { step } = handling;
	if (!(step > 0)) throw new RangeError(`step must be above zero, got ${step}`);
	const fault = faultIn(request, room);
	if (fault) return err(fault);
	const most = pours === 2 ? Math.floor(room.sure / step + tiny) : 0;
	const amounts = Array.from({ length: most }, (_, k) => (k + 1) * step).filter((amount) => isSold(amount, request));
	const rows = offers.flatMap((_, first) =>
		offers.map((_, second) =>
			(first === second ? [0] : amounts)
				.map((amount) => ({ first, second, amount, total: totalOf(request, first, second, amount) }))
				.filter(({ amount, total }) => isSold(Math.min(total, room.median) - amount, request)),
		),
	);
	return ok(rows.filter((row) => row.length > 0));
}

/** Whether it is all but sure to go in as asked, no click before. */
export function isSure({ total }: Pick<Pouring, "total">, room: Room): boolean {
	return total <= room.sure + tiny;
}

function isSold(amount: number, { handling }: PlanRequest): boolean {
	return amount > tiny && amount >= handling.minimum - tiny;
}

/** Litres in all, with so much of the first offer; less than the amount where it costs more than there is. */
function totalOf({ offers, fullness, handling }: PlanRequest, first: number, second: number, amount: number): number {
	switch (fullness.kind) {
		case "click":
			return Infinity;
		case "litres":
			return fullness.litres;
		case "money": {
			const left = fullness.amount - amount * (offers[first].pricePerLitre ?? Infinity);
			return amount + bought(left, offers[second].pricePerLitre ?? Infinity, handling.step);
		}
	}
}

/** Whole steps that so much money buys, L. */
function bought(money: number, price: number, step: number): number {
	return Math.floor(money / price / step + tiny) * step;
}

function faultIn(request: PlanRequest, room: Room): Unplannable | null {
	const { offers, fullness, handling } = request;
	if (offers.length === 0) return { code: "nothingOnSale" };
	if (fullness.kind === "money") {
		const unpriced = offers.find(({ pricePerLitre }) => pricePerLitre === undefined || !(pricePerLitre > 0));
		if (unpriced) return { code: "noPrice", product: unpriced.product };
		if (!offers.some((_, only) => isSold(totalOf(request, only, only, 0), request))) return { code: "tooLittleMoney" };
	}
	if (fullness.kind === "litres" && !isSold(fullness.litres, request)) {
		return { code: "tooLittle", least: handling.minimum };
	}
	if (!isSold(room.median, request)) return { code: "full", room: room.median };
	// The room is drawn: the same question asked again, or after the first pour, comes out a little otherwise.
	const fits = Math.min(room.sure + handling.step / 2, room.median);
	if (fullness.kind === "litres" && fullness.litres > fits + tiny) return { code: "doesNotFit", room: room.sure };
	return null;
}
