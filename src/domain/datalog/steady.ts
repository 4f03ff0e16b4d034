/** Finds the stretches of a log in which the trims tell of the fuel: warm, closed loop, steady driving, settled. */
import { idleRpm, idleSpeed, nearOne, settledWithin, settlingS, steadyWithin, warmC, windowS } from "./constants";
import type { Grid } from "./grid";
import type { Role } from "./role";
import { smoothed, type Trims } from "./trims";

/** Steps from … to, the end not included. */
export interface Span {
	readonly from: number;
	readonly to: number;
}

/** Why a part of a log says nothing, in the order in which it is asked. The later ones are nearer to a reading. */
export const reasons = [
	"missing",
	"cold",
	"idle",
	"openLoop",
	"tooShort",
	"unsteady",
	"frozen",
	"lambdaOff",
	"unsettled",
] as const;
export type Reason = (typeof reasons)[number];

export interface Steady {
	readonly spans: readonly Span[];
	/** Seconds that say nothing, by the reason. */
	readonly left: Readonly<Record<Reason, number>>;
}

const fine = reasons.length;

export function steadySpans(grid: Grid, trims: Trims): Steady {
	const { stepS, steps } = grid;
	const length = Math.max(2, Math.ceil(windowS / stepS));
	const base = baseVerdicts(grid, trims);
	const judge = windowJudge(grid, trims, length);
	const verdict = base.map((each) => (each === fine ? reasons.indexOf("tooShort") : each));
	let run = 0;
	for (let i = 0; i < steps; i++) {
		run = base[i] === fine ? run + 1 : 0;
		if (run < length) continue;
		const from = i + 1 - length;
		const found = judge(from);
		for (let j = from; j <= i; j++) if (verdict[j] < found) verdict[j] = found;
	}
	const left = Object.fromEntries(reasons.map((reason) => [reason, 0])) as Record<Reason, number>;
	for (const each of verdict) if (each !== fine) left[reasons[each]] += stepS;
	return { spans: spansOf(verdict, (each) => each === fine), left };
}

/** What can be said of each step by itself: an index into the reasons, or that it is fine. */
function baseVerdicts({ means, steps }: Grid, { both }: Trims): Uint8Array {
	const { coolant, speed, rpm, fuelSystem } = means;
	const moving = speed ?? rpm;
	const slowest = speed ? idleSpeed : idleRpm;
	const needed = Object.entries(means).flatMap(([role, mean]) => (role in steadyWithin ? [mean] : []));
	const verdicts = new Uint8Array(steps).fill(fine);
	for (let i = 0; i < steps; i++) {
		if (Number.isNaN(both[i]) || needed.some((mean) => Number.isNaN(mean[i]))) verdicts[i] = reasons.indexOf("missing");
		else if (coolant && !(coolant[i] >= warmC)) verdicts[i] = reasons.indexOf("cold");
		else if (moving && moving[i] < slowest) verdicts[i] = reasons.indexOf("idle");
		else if (fuelSystem && fuelSystem[i] < 1) verdicts[i] = reasons.indexOf("openLoop");
	}
	return verdicts;
}

/** Judges the window that begins at a step. */
function windowJudge({ means, stepS }: Grid, trims: Trims, length: number): (from: number) => number {
	const limits = Object.entries(steadyWithin).flatMap(([role, limit]) => {
		const mean = means[role as Role];
		return mean ? [{ mean: smoothed(mean, Math.max(1, Math.round(1 / stepS))), limit }] : [];
	});
	const settling = smoothed(trims.both, Math.max(1, Math.round(settlingS / stepS)));
	const { lambda, commanded, fuelSystem } = means;
	return (from) => {
		const to = from + length;
		if (limits.some(({ mean, limit }) => travel(mean, from, to) > limit)) return reasons.indexOf("unsteady");
		// Trims that rest at nothing are switched off, unless something else says that the loop is closed.
		if (!fuelSystem && !lambda && trims.moving.every((short) => isZero(short, from, to)))
			return reasons.indexOf("frozen");
		if (lambda && !isNearOne(lambda, commanded, from, to)) return reasons.indexOf("lambdaOff");
		return travel(settling, from, to) > settledWithin ? reasons.indexOf("unsettled") : fine;
	};
}

/** From the least to the most. */
function travel(values: Float32Array, from: number, to: number): number {
	let least = Infinity;
	let most = -Infinity;
	for (let i = from; i < to; i++) {
		if (values[i] < least) least = values[i];
		if (values[i] > most) most = values[i];
	}
	return most - least;
}

function isZero(values: Float32Array, from: number, to: number): boolean {
	for (let i = from; i < to; i++) if (Math.abs(values[i]) > 1e-6) return false;
	return true;
}

/** Where lambda is missing for the whole window it says nothing against it. */
function isNearOne(lambda: Float32Array, commanded: Float32Array | undefined, from: number, to: number): boolean {
	let sum = 0;
	let count = 0;
	for (let i = from; i < to; i++) {
		if (commanded && Math.abs(commanded[i] - 1) > nearOne) return false;
		if (Number.isNaN(lambda[i])) continue;
		sum += lambda[i];
		count++;
	}
	return count === 0 || Math.abs(sum / count - 1) <= nearOne;
}

/** Runs of steps that fit. */
export function spansOf(values: Uint8Array, fits: (value: number) => boolean): Span[] {
	const spans: Span[] = [];
	let from = -1;
	for (let i = 0; i <= values.length; i++) {
		const inside = i < values.length && fits(values[i]);
		if (inside && from < 0) from = i;
		if (!inside && from >= 0) {
			spans.push({ from, to: i });
			from = -1;
		}
	}
	return spans;
}
