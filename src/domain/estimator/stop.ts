/**
 * The level before a stop's first fill. While the stop lasts it is not settled for good: what is said about it (gauge,
 * click, what fits in the tank) is gathered as one bell per particle, and the level is drawn from that bell cut to what
 * is possible. So a click after the second product still speaks of the level before the first, and no particle is wasted.
 */
import { exp, normalChance, normalQuantile } from "../elementary";
import { ascending, type Belief, type Column, reweighted } from "./belief";
import { leastExplained, legSpread, overfillLimit } from "./constants";
import type { Draws } from "./draws";
import { type Leg, type LegStart, withoutLeg } from "./leg";

export interface StopMemory {
	/** The stop's id; null for a level noted between stops and for the start of an account. */
	readonly id: string | null;
	/** True: the level before is rectangular from 0 to the bound. False: it is the bound. */
	readonly burned: boolean;
	/** L. */
	readonly levelBound: Column;
	readonly contentBefore: Column;
	readonly biasBefore: Column;
	readonly biasVarianceBefore: number;
	/** True litres poured at this stop so far, and the ethanol in them, L. */
	readonly poured: Column;
	readonly pouredEthanol: Column;
	/** What is said of the level before: a bell by mean, L, and precision, 1/L² (0: nothing said), times a factor. */
	readonly saidMean: Column;
	readonly saidPrecision: Column;
	readonly saidFactor: Float64Array;
	/** Where and with how much the burning before this stop began; null where the odometer was not given there. */
	readonly legStart: LegStart | null;
	/** What the distance from there says, kept apart so that it can be taken back. */
	readonly leg: Leg | null;
	/** How well particles explain what was said, as far as their weights already tell. */
	readonly counted: Float64Array;
	/** False once what was said proved impossible: the tank then holds whatever was poured. */
	readonly limited: boolean;
	/** Gauge before the stop's first fill: reading and sd, fraction of capacity. */
	readonly gauge: { readonly value: number; readonly sd: number } | null;
}

/** A belief in the middle of a stop. */
export type AtStop = Belief & { readonly stop: StopMemory };

/** Starts a stop: the level before it lies between nothing and `levelBound`, or is just that if nothing was burned. */
export function openStop(belief: Belief, id: string | null, burned: boolean, levelBound: Column): AtStop {
	const { odometer } = belief;
	return {
		...belief,
		odometer: burned ? null : odometer,
		stop: {
			id,
			burned,
			levelBound,
			contentBefore: belief.content,
			biasBefore: belief.biasMean,
			biasVarianceBefore: belief.biasVariance,
			poured: zeros(belief),
			pouredEthanol: zeros(belief),
			...nothingSaid(belief),
			legStart: burned && typeof odometer === "number" ? { km: odometer, level: levelBound } : null,
			leg: null,
			limited: true,
		},
	};
}

/** The stop with all that was said about its level forgotten, even that it must fit. */
export function unsaid(belief: AtStop): AtStop {
	const left = withoutLeg(belief);
	const { stop } = left;
	// From a level that is not to be trusted no leg can be measured either.
	return {
		...left,
		odometer: "unusable",
		stop: { ...stop, ...nothingSaid(belief), counted: stop.counted, limited: false },
	};
}

/** The stop with its level before taken as now believed: once the content was read, level and content no longer move apart. */
export function frozen(belief: AtStop): AtStop {
	const { stop } = belief;
	const before = new Float32Array(stop.poured.length);
	for (let i = 0; i < before.length; i++) before[i] = Math.max(0, belief.level[i] - stop.poured[i]);
	const { contentBefore, poured, pouredEthanol, legStart, limited } = stop;
	const now = openStop(belief, stop.id, false, before);
	return { ...now, stop: { ...now.stop, contentBefore, poured, pouredEthanol, legStart, limited } };
}

function zeros(belief: Belief): Column {
	return new Float32Array(belief.weight.length);
}

function nothingSaid(belief: Belief) {
	const ones = new Float64Array(belief.weight.length).fill(1);
	return { saidMean: zeros(belief), saidPrecision: zeros(belief), saidFactor: ones, counted: ones, gauge: null };
}

/** Adds a fill's true litres and what they hold. */
export function poured(belief: AtStop, litres: Column, delivered: Column): AtStop {
	const { stop } = belief;
	const [volume, ethanol] = [zeros(belief), zeros(belief)];
	for (let i = 0; i < volume.length; i++) {
		volume[i] = stop.poured[i] + litres[i];
		ethanol[i] = stop.pouredEthanol[i] + litres[i] * delivered[i];
	}
	return { ...belief, stop: { ...stop, poured: volume, pouredEthanol: ethanol } };
}

/** Adds a gauge reading taken before the stop's first fill; fractions of capacity. */
export function gaugeSaid(belief: AtStop, value: number, sd: number, capacityL: number): AtStop {
	const { stop, capacityFactor } = belief;
	const spread = Math.sqrt(sd * sd + stop.biasVarianceBefore);
	const [mean, deviation] = [zeros(belief), zeros(belief)];
	for (let i = 0; i < mean.length; i++) {
		mean[i] = capacityL * capacityFactor[i] * (value - stop.biasBefore[i]);
		deviation[i] = capacityL * capacityFactor[i] * spread;
	}
	const said = withBell(belief, mean, deviation);
	// The bell is a density of the reading, per capacity: as a density of litres it would speak for small capacities.
	const saidFactor = said.stop.saidFactor.map((factor, i) => factor * capacityFactor[i] * capacityL);
	return { ...said, stop: { ...said.stop, saidFactor, gauge: { value, sd } } };
}

/** Adds that the nozzle clicked after what has been poured so far; sd as a fraction of capacity. */
export function clickSaid(belief: AtStop, sd: number, capacityL: number): AtStop {
	const { stop, capacityFactor } = belief;
	const [mean, deviation] = [zeros(belief), zeros(belief)];
	for (let i = 0; i < mean.length; i++) {
		mean[i] = capacityL * capacityFactor[i] - stop.poured[i];
		deviation[i] = capacityL * capacityFactor[i] * sd;
	}
	const said = withBell(belief, mean, deviation);
	// Likelihoods are told by share of the rated capacity, so that those of different statements can be compared.
	return { ...said, stop: { ...said.stop, saidFactor: said.stop.saidFactor.map((factor) => factor * capacityL) } };
}

/** Multiplies a bell about the level before into what has been said: two bells are a bell times a bell in their distance. */
function withBell(belief: AtStop, mean: Column, deviation: Column): AtStop {
	const { stop } = belief;
	const [saidMean, saidPrecision, saidFactor] = [zeros(belief), zeros(belief), new Float64Array(mean.length)];
	for (let i = 0; i < mean.length; i++) {
		const precision = 1 / (deviation[i] * deviation[i]);
		const before = stop.saidPrecision[i];
		saidPrecision[i] = before + precision;
		saidMean[i] = (stop.saidMean[i] * before + mean[i] * precision) / (before + precision);
		saidFactor[i] =
			before > 0
				? stop.saidFactor[i] * bell(mean[i] - stop.saidMean[i], (before * precision) / (before + precision))
				: stop.saidFactor[i];
	}
	return { ...belief, stop: { ...stop, saidMean, saidPrecision, saidFactor } };
}

/** Normal density at a distance from the mean. */
function bell(distance: number, precision: number): number {
	return 0.3989422804014327 * Math.sqrt(precision) * exp(-0.5 * precision * distance * distance);
}

export interface Settled {
	/**
	 * Null where no particle can explain it: more poured than any such tank holds, a reading beyond all spread, or a distance
	 * that makes the rest far less likely than it was without.
	 */
	readonly belief: AtStop | null;
	/** Of what was said since the stop was settled last: for gauge and click each a density by share of the rated capacity. */
	readonly likelihood: number;
}

/** Draws level, content and gauge bias afresh from all that was said at this stop so far, and weighs the particles by it. */
export function settled(belief: AtStop, capacityL: number, draws: Draws): Settled {
	const { stop, capacityFactor } = belief;
	const { gauge, biasVarianceBefore } = stop;
	const size = belief.weight.length;
	const [level, content, biasMean] = [zeros(belief), zeros(belief), gauge ? zeros(belief) : stop.biasBefore];
	const [counted, factor] = [new Float64Array(size), new Float64Array(size)];
	const gain = gauge ? biasVarianceBefore / (biasVarianceBefore + gauge.sd * gauge.sd) : 0;
	const u = draws.uniforms();
	const [drawn, undriven] = [
		{ before: 0, chance: 0 },
		{ before: 0, chance: 0 },
	];
	const said = { mean: 0, precision: 0, factor: 1 };
	const sums = { all: 0, weighed: 0, driven: 0, undriven: 0 };
	for (let i = 0; i < size; i++) {
		const capacity = capacityL * capacityFactor[i];
		const added = stop.poured[i];
		const room = stop.limited ? overfillLimit * capacity - added : Infinity;
		saidOf(said, stop, i);
		drawBefore(drawn, stop.burned, stop.levelBound[i], room, said.mean, said.precision, u[i]);
		const { before } = drawn;
		counted[i] = drawn.chance * said.factor;
		factor[i] = stop.counted[i] > 0 ? counted[i] / stop.counted[i] : 0;
		sums.all += belief.weight[i];
		sums.weighed += belief.weight[i] * factor[i];
		if (stop.leg && stop.counted[i] > 0) {
			drawBefore(undriven, stop.burned, stop.levelBound[i], room, stop.saidMean[i], stop.saidPrecision[i], u[i]);
			sums.driven += belief.weight[i] * factor[i];
			sums.undriven += (belief.weight[i] * undriven.chance * stop.saidFactor[i]) / stop.counted[i];
		}
		level[i] = before + added;
		content[i] =
			level[i] > 0
				? (before * stop.contentBefore[i] + stop.pouredEthanol[i]) / (before + added)
				: stop.contentBefore[i];
		if (gauge) biasMean[i] = stop.biasBefore[i] + gain * (gauge.value - before / capacity - stop.biasBefore[i]);
	}
	const likelihood = sums.weighed / sums.all;
	const weight = reweighted(belief.weight, factor);
	if (!weight || (stop.leg && !(sums.driven >= leastExplained * sums.undriven))) return { belief: null, likelihood };
	const biasVariance = biasVarianceBefore * (1 - gain);
	const now = { ...belief, level, content, biasMean, biasVariance, weight, order: ascending(content) };
	return { belief: { ...now, stop: { ...stop, counted } }, likelihood };
}

/** A burning of less is none, L: sums of levels are rounded to about as much. */
const leastBurned = 1e-6;

/** Writes into `said` all that one particle is told of its level before: the bells of gauge and click, and that of the leg. */
function saidOf(said: { mean: number; precision: number; factor: number }, stop: StopMemory, i: number): void {
	const { leg, legStart, saidMean, saidPrecision, saidFactor } = stop;
	said.mean = saidMean[i];
	said.precision = saidPrecision[i];
	said.factor = saidFactor[i];
	if (!leg || !legStart) return;
	const expected = leg.expected[i];
	if (!(expected > leastBurned)) {
		said.factor = 0;
		return;
	}
	const mean = legStart.level[i] - expected;
	const precision = 1 / (legSpread * expected) ** 2;
	const both = said.precision + precision;
	if (said.precision > 0) said.factor *= bell(mean - said.mean, (said.precision * precision) / both);
	said.mean = (said.mean * said.precision + mean * precision) / both;
	said.precision = both;
	// This bell stands in the place of "anything down to nothing", whose density is one over the level it fell from.
	said.factor *= legStart.level[i];
}

/** Writes into `drawn` one particle's level before the first fill, at u of its distribution, and what speaks for it. */
function drawBefore(
	drawn: { before: number; chance: number },
	burned: boolean,
	bound: number,
	room: number,
	mean: number,
	precision: number,
	u: number,
): void {
	if (!burned || bound < 1e-6) {
		drawn.before = bound;
		drawn.chance = bound > room ? 0 : precision > 0 ? bell(bound - mean, precision) : 1;
		return;
	}
	const high = bound < room ? bound : room;
	drawn.before = 0;
	drawn.chance = 0;
	if (!(high > 0)) return;
	if (!(precision > 0)) {
		drawn.before = u * high;
		drawn.chance = high / bound;
		return;
	}
	const scale = Math.sqrt(precision);
	// Reckon in the lower tail, where chances keep their accuracy.
	const mirrored = mean < 0.5 * high;
	const below = normalChance(mirrored ? (mean - high) * scale : -mean * scale);
	const mass = normalChance(mirrored ? mean * scale : (high - mean) * scale) - below;
	if (!(mass > 0)) return;
	const away = normalQuantile(below + u * mass) / scale;
	const before = mirrored ? mean - away : mean + away;
	drawn.before = before < 0 ? 0 : before > high ? high : before;
	drawn.chance = mass / bound;
}
