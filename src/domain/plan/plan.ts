/**
 * "How much of each?": searched on a small sample, then held against a large one and against the account itself, so that on
 * the account's own terms no plan breaks the lean budget.
 */
import { absorb } from "../estimator/absorb";
import type { Belief } from "../estimator/belief";
import { type Estimate, estimateOf } from "../estimator/estimate";
import { fittingSize } from "../estimator/resample";
import { smallSample } from "../estimator/sampleSize";
import type { FillEvent } from "../event";
import { type ContentRange, instant } from "../quantity";
import { ok, type Result } from "../result";
import type { Tank } from "../vehicle";
import { isSure, type Pouring } from "./pouring";
import { reachOf } from "./reach";
import type { Chances, Plan, Planned, PlanRequest, Unplannable, Visit } from "./request";
import { roomOf } from "./room";
import { bestPouring, planOf, verdictOf } from "./search";
import { type SoundedStanding, type Standing, standingAt } from "./standing";

/** Sample of the search; a larger one costs more time than the second searches that it saves. */
export const searchSample = 2 ** 12;

/** Searches until the plan that is least likely lean is taken as it is. */
const searches = 5;

/** What a search that came out too lean is tightened by beyond the excess, a share of the budget. */
const margin = 0.02;

/** Share of the budget that is left to chance where the account is kept on more particles than are at hand. */
const allowance = 0.05;

/**
 * The plan for the rest of a stop, or why there is none. `ids` are those that the fills will be saved under, in order: the
 * figures of a plan of fixed amounts are then those that the account will show, if `before` is the account's own belief and
 * the fills are saved a second apart from `visit.at` on. Throws on a step of nothing.
 */
export function planned(
	before: Belief,
	visit: Visit,
	request: PlanRequest,
	tank: Tank,
	ids: readonly string[] = [],
): Result<Planned, Unplannable> {
	const found = plannedAt(before, visit, request, tank, ids);
	return found.ok ? ok(found.value.planned) : found;
}

/** A plan, and the sample that its figures were taken from. */
export interface Found {
	readonly planned: Planned;
	readonly pouring: Pouring;
	readonly standing: SoundedStanding;
	/** What the account will show once it is poured; null where a click may cut it short. */
	readonly estimate: Estimate | null;
}

/** As `planned`, for going on from there. */
export function plannedAt(
	before: Belief,
	visit: Visit,
	request: PlanRequest,
	tank: Tank,
	ids: readonly string[] = [],
): Result<Found, Unplannable> {
	const samples = samplesOf((size) => standingAt(before, visit, request.offers, tank, size));
	const found = plannedOn(
		samples,
		request,
		(plan) => accounted(before, fillsOf(plan, visit, ids), tank, request.target.window),
		sizeFor(before) < fittingSize(before) ? 1 - allowance : 1,
	);
	return found.ok ? ok({ ...found.value, standing: samples.many }) : found;
}

/** The same stop twice: a few particles to search on, and many to hold what was found against. */
export interface Samples<Kind extends Standing = Standing> {
	readonly few: Kind;
	readonly many: Kind;
}

export function samplesOf<Kind extends Standing>(standing: (size: number) => Kind): Samples<Kind> {
	return { few: standing(searchSample), many: standing(smallSample) };
}

/**
 * The plan on such samples. `account` says what the account would make of one of fixed amounts, if anybody asks it; of the
 * budget only the share `used` is used up.
 */
export function plannedOn(
	{ few, many }: Samples,
	request: PlanRequest,
	account?: (plan: Plan) => Estimate,
	used = 1,
): Result<Omit<Found, "standing">, Unplannable> {
	const room = roomOf(many);
	const { budgets } = request.target;
	const most = used * budgets.lean;
	let lean = most;
	for (let search = 1; ; search++) {
		// In the end all that is asked is to be as unlikely lean as can be.
		if (search === searches) lean = 0;
		const target = { ...request.target, budgets: { ...budgets, lean } };
		const best = bestPouring(few, { ...request, target }, room);
		if (!best.ok) return best;
		const { pouring, chances } = best.value;
		const final = search === searches || chances.above > lean;
		const reckoned = planOf(many, pouring, request, room);
		const kept = reckoned.chances.above <= most;
		// What an early click may cut short the account can't tell beforehand.
		const estimate = ((kept || final) && isSure(pouring, room) && account?.(reckoned)) || null;
		const above = estimate && kept ? (estimate.above ?? 0) : reckoned.chances.above;
		if (final || above <= most) {
			const plan = estimate ? withFigures(reckoned, estimate) : reckoned;
			const verdict = verdictOf(plan.chances, request.target);
			return ok({ planned: { plan, verdict, reach: reachOf(few) }, pouring, estimate });
		}
		lean = Math.max(0, lean - (above - most) - margin * budgets.lean);
	}
}

/** The plan's pours as the log will hold them. */
export function fillsOf({ pours }: Pick<Plan, "pours">, visit: Visit, ids: readonly string[]): FillEvent[] {
	// What is noted on arrival goes with the first.
	const { gauge: _gauge, odometerKm: _odometer, ...later } = visit;
	return pours.map(({ product, litres, toClick }, i) => ({
		...(i === 0 ? visit : later),
		kind: "fill",
		id: ids[i] ?? `${visit.stop} pour ${i}`,
		at: i === 0 ? visit.at : new Date(instant(visit.at) + 1000 * i).toISOString(),
		product,
		litres,
		...(toClick ? { toClick } : {}),
	}));
}

/** The account's own sample, but no more particles than are at hand or a driver can wait for. */
function sizeFor(before: Belief): number {
	return Math.min(fittingSize(before), Math.max(before.weight.length, smallSample));
}

function accounted(before: Belief, fills: readonly FillEvent[], tank: Tank, window: ContentRange): Estimate {
	const belief = fills.reduce((reached, fill) => absorb(reached, fill, tank, sizeFor(before)).belief, before);
	return estimateOf(belief, window);
}

/** With the account's figures; what the order changes is small, and so is taken over as a difference. */
function withFigures(plan: Plan, { median, low, high, below, above }: Estimate): Plan {
	const chances = chancesOf(below ?? 0, above ?? 0);
	const moved = (side: "below" | "above") =>
		bounded(chances[side] + (plan.swapped ? plan.swapped[side] - plan.chances[side] : 0));
	return {
		...plan,
		chances,
		content: { median, low, high },
		swapped: plan.swapped && chancesOf(moved("below"), moved("above")),
	};
}

function chancesOf(below: number, above: number): Chances {
	return { below, inside: 1 - below - above, above };
}

function bounded(chance: number): number {
	return Math.min(1, Math.max(0, chance));
}
