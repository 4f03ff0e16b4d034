/** The search: every amount that a hand can hit, in every order, reckoned on one standing. */
import { ascending } from "../estimator/belief";
import { quantilesOf } from "../estimator/quantile";
import type { Fraction } from "../quantity";
import { ok, type Result } from "../result";
import { bestOf, type Candidate } from "./choice";
import { after, chancesAlong, mixAfter } from "./outcome";
import { costOf, type Pouring, pouringsOf, poursOf, swappedOf } from "./pouring";
import { reachOf } from "./reach";
import type { Chances, Plan, Planned, PlanRequest, Target, Unplannable } from "./request";
import { type Room, roomOf } from "./room";
import type { Standing } from "./standing";

/** The best plan on a standing, or why there is none. Throws on a step of nothing. */
export function planFor(standing: Standing, request: PlanRequest): Result<Planned, Unplannable> {
	const room = roomOf(standing);
	const best = bestPouring(standing, request, room);
	if (!best.ok) return best;
	const plan = planOf(standing, best.value.pouring, request, room);
	return ok({ plan, verdict: verdictOf(plan.chances, request.target), reach: reachOf(standing) });
}

/** The best pouring; the room may be taken from a larger sample than the chances. */
export function bestPouring(standing: Standing, request: PlanRequest, room: Room): Result<Candidate, Unplannable> {
	const rows = pouringsOf(request, room);
	if (!rows.ok) return rows;
	const { offers, fullness, target } = request;
	// For a sum of money all plans cost the same, but for what a step is worth.
	const priced = fullness.kind !== "money" && offers.every(({ pricePerLitre }) => pricePerLitre !== undefined);
	const candidates = rows.value.flatMap((row) => {
		const chances = chancesAlong(standing, row, target.window);
		return row.map((pouring, k): Candidate => {
			return { pouring, chances: chances[k], cost: (priced && costOf(pouring, request, room)) || 0 };
		});
	});
	return ok(bestOf(candidates, target, (pouring) => mixAfter(standing, pouring)));
}

/** A pouring as a driver is told of it, with what it leads to. */
export function planOf(standing: Standing, pouring: Pouring, request: PlanRequest, room: Room): Plan {
	const mixed = after(standing, pouring);
	const content = quantilesOf(mixed.content, standing.weight, ascending(mixed.content));
	const chances = (of: Pouring) => chancesAlong(standing, [of], request.target.window)[0];
	return {
		pours: poursOf(pouring, request, room),
		chances: chances(pouring),
		content: { median: content(0.5) as Fraction, low: content(0.05) as Fraction, high: content(0.95) as Fraction },
		cost: costOf(pouring, request, room),
		swapped: pouring.amount > 0 ? chances(swappedOf(pouring, room)) : null,
	};
}

export function verdictOf({ below, above }: Chances, { budgets }: Pick<Target, "budgets">): Planned["verdict"] {
	if (above > budgets.lean) return "lean";
	return below > budgets.knock ? "knock" : "inside";
}
