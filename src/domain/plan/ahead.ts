/** Where one stop can't bring it: what to burn before, and several stops in a row. */
import { ascending, type Belief } from "../estimator/belief";
import { quantilesOf } from "../estimator/quantile";
import { type Fraction, instant, type Litres } from "../quantity";
import { ok, type Result } from "../result";
import type { Tank } from "../vehicle";
import { after } from "./outcome";
import { type Found, plannedAt, plannedOn, samplesOf } from "./plan";
import type { Planned, PlanRequest, Unplannable, Visit } from "./request";
import { type Standing, standingAt } from "./standing";

/** Chance of running dry that "nearly empty" accepts (common practice). */
const dry = 0.05;

/** Levels tried from now to nearly empty, before the one between them is narrowed down. */
const levels = 16;

/**
 * The least to burn before this stop for a plan with verdict `inside`, L, in whole steps of the handling; 0 where there is
 * one already, null where there is none even with a tank that is nearly empty. Burning lowers the level, not the content.
 */
export function burnFirst(before: Belief, visit: Visit, request: PlanRequest, tank: Tank): Litres | null {
	const { step } = request.handling;
	const { few, many } = samplesOf((size) => standingAt(before, visit, request.offers, tank, size));
	const inside = (steps: number) => {
		const found = plannedOn({ few: burned(few, steps * step), many: burned(many, steps * step) }, request);
		return found.ok && found.value.planned.verdict === "inside";
	};
	const most = Math.floor(quantilesOf(many.level, many.weight, ascending(many.level))(dry) / step);
	const stride = Math.max(1, Math.ceil(most / levels));
	let [no, yes] = [-1, 0];
	while (!inside(yes)) {
		if (yes === most) return null;
		[no, yes] = [yes, Math.min(most, yes + stride)];
	}
	while (yes - no > 1) {
		const between = (no + yes) >> 1;
		if (inside(between)) yes = between;
		else no = between;
	}
	return (yes * step) as Litres;
}

function burned(standing: Standing, litres: number): Standing {
	const level = standing.level.map((before) => Math.max(0, before - litres));
	return { ...standing, level, room: standing.room.map((free, i) => free + standing.level[i] - level[i]) };
}

/** How the car comes from one stop to the next. */
export interface Drive {
	/** Driven down to this on the gauge, fraction of the capacity; not at all from less. */
	readonly gauge: Fraction;
	readonly days: number;
}

/** One of several stops in a row. */
export interface Stage {
	readonly visit: Visit;
	readonly planned: Planned;
}

/** Stops that are planned ahead at most. */
const mostStages = 5;

/**
 * Stops in a row at the same pumps, each planned to come as near as it can within the lean budget, until one is `inside`;
 * the last may not be. The first is just what `planned` says. Or why not even that can be planned.
 */
export function stages(
	before: Belief,
	visit: Visit,
	request: PlanRequest,
	tank: Tank,
	drive: Drive,
	ids: readonly string[] = [],
): Result<readonly Stage[], Unplannable> {
	const done: Stage[] = [];
	let [belief, here] = [before, visit];
	for (;;) {
		const found = plannedAt(belief, here, request, tank, done.length === 0 ? ids : []);
		if (!found.ok) return done.length === 0 ? found : ok(done);
		done.push({ visit: here, planned: found.value.planned });
		if (found.value.planned.verdict === "inside" || done.length === mostStages) return ok(done);
		belief = departed(found.value);
		here = nextVisit(visit, drive, done.length, medianLevel(belief) > drive.gauge * tank.capacityL);
	}
}

/** The belief on leaving the stop, the plan followed. Of the click no more is known than that it came. */
function departed({ standing, pouring }: Found): Belief {
	const { level, content } = after(standing, pouring);
	return { ...standing.belief, level, content, order: ascending(content) };
}

function medianLevel({ level, weight }: Belief): number {
	return quantilesOf(level, weight, ascending(level))(0.5);
}

/** Where the tank holds less than it is to be driven down to, nobody looks: any level below is possible. */
function nextVisit({ stop, at, place }: Visit, { gauge, days }: Drive, count: number, looked: boolean): Visit {
	return {
		stop: `${stop} ahead ${count}`,
		at: new Date(instant(at) + count * days * 86_400_000).toISOString(),
		...(place === undefined ? {} : { place }),
		...(looked ? { gauge } : {}),
	};
}
