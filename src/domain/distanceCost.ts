/**
 * What a kilometre costs, where odometers at two stops bound the fuel between them: from one filling to the click to another
 * exactly what was poured since was burned, up to what a click leaves open. Without clicks only the tank's size bounds it.
 */
import { costOf, litresOf, stopsIn } from "./cost";
import { defaultClickSd, overfillLimit } from "./estimator/constants";
import { countingEvents, type FillEvent, type LogEvent } from "./event";
import { instant } from "./quantity";
import type { Tank } from "./vehicle";

export interface DistanceCost {
	/** Driven in what it was reckoned from. */
	readonly km: number;
	/** Burned over it and what that cost. */
	readonly litres: number;
	readonly perKm: number;
	/** Between clicks the central 90 % interval, else the ends of what is possible. */
	readonly low: number;
	readonly high: number;
	readonly by: "clicks" | "tank";
	/** The first and the last stop, ISO 8601 as written. */
	readonly from: string;
	readonly to: string;
	/** Stretches between two stops that are not in it: a price is missing, or odometer and litres do not fit each other. */
	readonly unpriced: number;
	readonly unbelievable: number;
}

export type NoDistanceCost =
	/** Fewer than two stops with an odometer since the account began, or began anew. */
	| { readonly code: "noOdometer"; readonly stops: number }
	/** Between no two of them every fill has a price. */
	| { readonly code: "noPrice" }
	/** Odometers that run backwards, or that with the litres make no consumption a car can have. */
	| { readonly code: "unbelievable" }
	/** No two clicks, and too little was poured between the stops to bound what was burned. */
	| { readonly code: "tooLittle" };

/** What any car burns, L/km: a motorcycle's share to a lorry's. Beyond lie slips of the finger (common practice). */
const believable = [0.015, 0.6] as const;

const z90 = 1.6448536;

/** One stop with an odometer, and where it stands in the list of all stops. */
interface Post {
	readonly index: number;
	readonly km: number;
	readonly fills: readonly FillEvent[];
}

/** What was poured after one post up to and with another. */
interface Stretch {
	readonly from: Post;
	readonly to: Post;
	readonly km: number;
	readonly litres: number;
	/** Null where a fill has no price. */
	readonly cost: number | null;
}

export function distanceCostOf(events: readonly LogEvent[], tank: Tank): DistanceCost | NoDistanceCost {
	const stops = stopsIn(events);
	const posts = stops.flatMap((fills, index): Post[] => {
		const km = fills.find(({ odometerKm }) => odometerKm !== undefined)?.odometerKm;
		return km === undefined ? [] : [{ index, km, fills }];
	});
	if (posts.length < 2) return { code: "noOdometer", stops: posts.length };
	const restarts = countingEvents(events).flatMap((event) => (event.kind === "start" ? [instant(event.at)] : []));
	// A tank that was begun anew was drained or forgotten: nothing is known across it.
	const unbroken = ({ from, to }: Stretch) =>
		!restarts.some((at) => at > instant(from.fills[0].at) && at <= instant(to.fills[0].at));
	const between = (from: Post, to: Post): Stretch => {
		const fills = stops.slice(from.index + 1, to.index + 1).flat();
		return { from, to, km: to.km - from.km, litres: litresOf(fills), cost: costOf(fills) };
	};
	const full = posts.filter(({ fills }) => fills.at(-1)?.toClick === true);
	const stretches = (ends: readonly Post[]) =>
		ends
			.slice(1)
			.map((to, i) => between(ends[i], to))
			.filter(unbroken);
	const links = stretches(full);
	const sound = links.filter((link) => link.cost !== null && isBelievable(link));
	if (sound.length > 0) return { ...byClicks(sound, tank), ...leftOut(links) };

	const wide = stretches(posts);
	if (wide.length === 0) return { code: "noOdometer", stops: 1 };
	const whole = joined(wide.filter((stretch) => stretch.km > 0 && stretch.cost !== null));
	const bounded = whole.map((stretch) => byTank(stretch, tank)).filter((cost) => cost !== null);
	const [best] = bounded.sort((a, b) => a.high / a.low - b.high / b.low);
	if (best) return { ...best, ...leftOut(wide) };
	if (![...links, ...wide].some(({ cost }) => cost !== null)) return { code: "noPrice" };
	return { code: whole.some(isBelievable) ? "tooLittle" : "unbelievable" };
}

function leftOut(stretches: readonly Stretch[]) {
	return {
		unpriced: stretches.filter(({ cost }) => cost === null).length,
		unbelievable: stretches.filter((stretch) => stretch.cost !== null && !isBelievable(stretch)).length,
	};
}

function isBelievable({ km, litres }: Stretch): boolean {
	return km > 0 && litres / km >= believable[0] && litres / km <= believable[1];
}

type Reckoned = Omit<DistanceCost, "unpriced" | "unbelievable">;

/** Stretches that follow on each other as one. */
function joined(stretches: readonly Stretch[]): Stretch[] {
	const runs: Stretch[] = [];
	for (const next of stretches) {
		const run = runs.at(-1);
		if (run?.to !== next.from) runs.push(next);
		else {
			runs[runs.length - 1] = {
				from: run.from,
				to: next.to,
				km: run.km + next.km,
				litres: run.litres + next.litres,
				cost: (run.cost ?? 0) + (next.cost ?? 0),
			};
		}
	}
	return runs;
}

/** Between clicks the errors of all but the first and the last cancel. */
function byClicks(links: readonly Stretch[], tank: Tank): Reckoned {
	const runs = joined(links);
	const sum = (of: (run: Stretch) => number) => runs.reduce((total, run) => total + of(run), 0);
	const [km, litres, cost] = [sum((run) => run.km), sum((run) => run.litres), sum((run) => run.cost ?? 0)];
	const sd = Math.sqrt(2 * runs.length) * (tank.clickSd ?? defaultClickSd) * tank.capacityL;
	const away = (z90 * sd * cost) / litres;
	return {
		km,
		litres,
		perKm: cost / km,
		low: Math.max(0, cost - away) / km,
		high: (cost + away) / km,
		by: "clicks",
		from: links[0].from.fills[0].at,
		to: links[links.length - 1].to.fills[0].at,
	};
}

/** The tank held what was poured last and never more than it can; null where that bounds nothing. */
function byTank({ from, to, km, litres, cost }: Stretch, tank: Tank): Reckoned | null {
	const most = overfillLimit * tank.capacityL;
	const least = litres - Math.max(0, most - litresOf(from.fills));
	const greatest = litres + Math.max(0, most - litresOf(to.fills));
	if (!(least > 0) || cost === null || litres / km < believable[0] || litres / km > believable[1]) return null;
	const perKm = cost / km;
	return {
		km,
		litres,
		perKm,
		low: (perKm * least) / litres,
		high: (perKm * greatest) / litres,
		by: "tank",
		from: from.fills[0].at,
		to: to.fills[0].at,
	};
}
