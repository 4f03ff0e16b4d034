/**
 * Fuel trims. What such a trim is off on the car's own fuel (air meter, injectors, a leak) is the same in all of them: its
 * baseline. It is carried as a bell in every particle, so learning it costs no particles; how it learns is exact but for the
 * choice, drawn by chance, of whether a reading was rubbish.
 */
import { exp } from "../elementary";
import type { TrimReading } from "../event";
import { fuelDemand } from "../fuel";
import { daysBetween, instant } from "../quantity";
import { type Baseline, type Belief, reweighted } from "./belief";
import { baselineMemoryDays, rubbishChance } from "./constants";
import type { Draws } from "./draws";
import { chanceOf, readingLikelihood } from "./reading";

/** What a trim should show on every particle, and how surely. */
interface Expected {
	/** Fuel demand at what the tank holds, relative to that at what the calibration is made for. */
	readonly demand: Float64Array;
	readonly truth: Float64Array;
	readonly sd: Float64Array;
	/** The baseline as it is then, before the reading; null where the reading does not say how much of its sd is baseline. */
	readonly baseline: Baseline | null;
}

/** An air meter or an injector that is off by a share asks for that share more of whatever fuel: T = K(E)/K(E₀)·(1 + b) − 1. */
function expectedTrim(belief: Belief, event: TrimReading): Expected {
	const { calibratedFor, sd } = event;
	const demand = Float64Array.from(belief.content, (content) => fuelDemand(content, calibratedFor));
	const size = demand.length;
	const baseline = baselineThen(belief, event);
	if (!baseline) return { demand, truth: demand.map((k) => k - 1), sd: new Float64Array(size).fill(sd), baseline };
	const repeated = repeatVariance(event);
	return {
		demand,
		truth: demand.map((k, i) => k * (1 + baseline.mean[i]) - 1),
		sd: demand.map((k, i) => Math.sqrt(k * k * baseline.variance[i] + repeated)),
		baseline,
	};
}

/** The belief with a trim in it, how likely the trim was by particle, and how likely one as far out (see `chanceOf`). */
export function trimmed(belief: Belief, event: TrimReading, draws: Draws) {
	const { value, calibratedFor } = event;
	const { demand, truth, sd, baseline } = expectedTrim(belief, event);
	const factor = truth.map((expected, i) => readingLikelihood(value, expected, sd[i]));
	const weight = reweighted(belief.weight, factor) ?? belief.weight;
	const chance = chanceOf(belief, value, sd, truth);
	if (!baseline) return { belief: { ...belief, weight }, factor, chance };
	const [mean, variance] = [baseline.mean.slice(), baseline.variance.slice()];
	const u = draws.uniforms();
	for (let i = 0; i < truth.length; i++) {
		if (u[i] * factor[i] < rubbishChance) continue;
		const gain = (variance[i] * demand[i]) / (sd[i] * sd[i]);
		mean[i] += gain * (value - truth[i]);
		variance[i] *= 1 - gain * demand[i];
	}
	const baselines = new Map(belief.baselines).set(calibratedFor, { ...baseline, mean, variance });
	return { belief: { ...belief, weight, baselines }, factor, chance };
}

/** Mean and standard uncertainty of a baseline over the whole belief, shares of the fuel demand; null: no trim taught it. */
export function baselineOf(
	belief: Belief,
	calibratedFor: number,
): { readonly mean: number; readonly sd: number } | null {
	const baseline = belief.baselines.get(calibratedFor);
	if (!baseline) return null;
	let [all, mean, squares] = [0, 0, 0];
	for (let i = 0; i < belief.weight.length; i++) {
		all += belief.weight[i];
		mean += belief.weight[i] * baseline.mean[i];
		squares += belief.weight[i] * (baseline.variance[i] + baseline.mean[i] ** 2);
	}
	mean /= all;
	return { mean, sd: Math.sqrt(Math.max(0, squares / all - mean * mean)) };
}

function repeatVariance({ sd, baselineSd = 0 }: TrimReading): number {
	return sd * sd - baselineSd * baselineSd;
}

/** Between readings a baseline forgets a little: the engine ages and the seasons change. The first sd given holds. */
function baselineThen(belief: Belief, { at, calibratedFor, baselineSd }: TrimReading): Baseline | null {
	if (baselineSd === undefined) return null;
	const now = instant(at);
	const known = belief.baselines.get(calibratedFor);
	const size = belief.weight.length;
	if (!known)
		return {
			mean: new Float32Array(size),
			variance: new Float32Array(size).fill(baselineSd ** 2),
			at: now,
			sd: baselineSd,
		};
	const keep = exp(-daysBetween(known.at, now) / baselineMemoryDays);
	const regained = (1 - keep * keep) * known.sd ** 2;
	return {
		mean: known.mean.map((mean) => keep * mean),
		variance: known.variance.map((variance) => keep * keep * variance + regained),
		at: now,
		sd: known.sd,
	};
}
