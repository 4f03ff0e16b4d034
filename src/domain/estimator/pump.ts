/** What a pump delivers: the area's level, shared by all places, plus the place's own offset. */
import { exp, normalQuantile } from "../elementary";
import type { Product, PumpReading } from "../event";
import { daysBetween, type Instant, instant } from "../quantity";
import { type Belief, type Column, reweighted, type Wandering } from "./belief";
import { areaDriftPerRootDay, placeMemoryDays, placeSpread, rubbishChance } from "./constants";
import type { Draws } from "./draws";
import { readingLikelihood } from "./reading";

/** A place unvisited for so many memories has nothing left to say and is dropped (e^-7 is under a tenth of a percent). */
const forgottenAfterDays = 7 * placeMemoryDays;

/** A pump about to be used: the area's level now, and the place's offset, normal in every particle. */
interface Pump {
	readonly product: string;
	readonly area: Column;
	readonly offsetMean: Column;
	readonly offsetSd: number;
	remember(offset: Column): Pick<Belief, "areas" | "places">;
}

function pumpAt(belief: Belief, product: Product, place: string | undefined, at: Instant, draws: Draws): Pump {
	const [low, high] = product.range;
	const width = high - low;
	const areaKey = JSON.stringify([product.id, low, high]);
	const placeKey = place === undefined ? null : JSON.stringify([place, areaKey]);
	const area = areaLevel(belief.areas.get(areaKey), low, high, at, draws);
	const visited = placeKey === null ? undefined : belief.places.get(placeKey);
	const keep = visited ? exp(-daysBetween(visited.at, at) / placeMemoryDays) : 0;
	const offsetMean = new Float32Array(area.length);
	if (visited) for (let i = 0; i < area.length; i++) offsetMean[i] = keep * visited.column[i];
	return {
		product: areaKey,
		area,
		offsetMean,
		offsetSd: Math.sqrt(1 - keep * keep) * placeSpread * width,
		remember(offset) {
			const places = new Map([...belief.places].filter(([, seen]) => daysBetween(seen.at, at) < forgottenAfterDays));
			if (placeKey !== null) places.set(placeKey, { column: offset, at, product: areaKey });
			return { areas: new Map(belief.areas).set(areaKey, { column: area, at }), places };
		},
	};
}

function areaLevel(known: Wandering | undefined, low: number, high: number, at: Instant, draws: Draws): Column {
	const days = known ? daysBetween(known.at, at) : 0;
	if (known && days === 0) return known.column;
	if (!known) {
		const u = draws.uniforms();
		const first = new Float32Array(u.length);
		for (let i = 0; i < u.length; i++) first[i] = low + (high - low) * u[i];
		return first;
	}
	const z = draws.normals();
	const sd = areaDriftPerRootDay * (high - low) * Math.sqrt(days);
	const drifted = new Float32Array(z.length);
	for (let i = 0; i < z.length; i++) drifted[i] = reflected(known.column[i] + sd * z[i], low, high);
	return drifted;
}

/** x folded back into low … high at both walls. */
function reflected(x: number, low: number, high: number): number {
	const width = high - low;
	if (!(width > 0)) return low;
	const phase = (x - low) / (2 * width);
	const folded = (phase - Math.floor(phase)) * 2 * width;
	return low + (folded > width ? 2 * width - folded : folded);
}

function clipped(content: number): number {
	return content < 0 ? 0 : content > 1 ? 1 : content;
}

/** What the pump gives at an instant, remembered for its place; a fill that names no place gets an offset of its own. */
export function deliver(belief: Belief, product: Product, place: string | undefined, at: Instant, draws: Draws) {
	const pump = pumpAt(belief, product, place, at, draws);
	const { area, offsetMean, offsetSd, remember } = pump;
	const offset = offsetSd > 0 ? new Float32Array(area.length) : offsetMean;
	const delivered = new Float32Array(area.length);
	const z = offsetSd > 0 ? draws.normals() : null;
	for (let i = 0; i < area.length; i++) {
		if (z) offset[i] = offsetMean[i] + offsetSd * z[i];
		delivered[i] = clipped(area[i] + offset[i]);
	}
	const bought = new Set(belief.bought).add(pump.product);
	return { belief: { ...belief, ...remember(offset), bought }, delivered };
}

/**
 * A sample from a pump. The place's offset is drawn from what the sample makes of it (two bells: the sample is good, or
 * rubbish and the offset as before), so that an outlandish value does not leave only a handful of particles. With it comes how likely the sample was by particle.
 */
export function sample(belief: Belief, event: PumpReading, draws: Draws) {
	const { value, sd } = event;
	const { product, area, offsetMean, offsetSd, remember } = pumpAt(
		belief,
		event.product,
		event.place,
		instant(event.at),
		draws,
	);
	const size = area.length;
	const prior = offsetSd * offsetSd;
	const gain = prior / (prior + sd * sd);
	const spread = Math.sqrt(prior + sd * sd);
	const [offset, delivered, factor] = [new Float32Array(size), new Float32Array(size), new Float64Array(size)];
	const u = offsetSd > 0 ? draws.uniforms() : null;
	for (let i = 0; i < size; i++) {
		const expected = area[i] + offsetMean[i];
		if (!u) {
			offset[i] = offsetMean[i];
			delivered[i] = clipped(expected);
			factor[i] = readingLikelihood(value, delivered[i], sd);
			continue;
		}
		const likelihood = readingLikelihood(value, expected, spread);
		const rubbish = rubbishChance / likelihood;
		// One uniform serves for the choice of the bell and, stretched, for the place in it.
		const z = u[i] < rubbish ? normalQuantile(u[i] / rubbish) : normalQuantile((u[i] - rubbish) / (1 - rubbish));
		offset[i] =
			u[i] < rubbish
				? offsetMean[i] + offsetSd * z
				: offsetMean[i] + gain * (value - expected) + Math.sqrt(1 - gain) * offsetSd * z;
		delivered[i] = clipped(area[i] + offset[i]);
		// The bells know nothing of the clipping at 0 and 1: make it good.
		const clip =
			delivered[i] === Math.fround(area[i] + offset[i]) ? 1 : clipRatio(value, delivered[i], area[i] + offset[i], sd);
		factor[i] = likelihood * clip;
	}
	const sampled = { ...belief, ...remember(offset) };
	if (!belief.bought.has(product)) return { belief: redrawn(sampled, product, factor, draws), factor };
	return { belief: { ...sampled, weight: reweighted(belief.weight, factor) ?? belief.weight }, factor };
}

/**
 * All that is believed of one product's pumps, drawn anew by its own weights (systematic resampling): as long as none of it
 * was poured into the tank it has nothing to do with the rest of the particle, which must not be weighed by it.
 */
function redrawn(belief: Belief, product: string, factor: Float64Array, draws: Draws): Belief {
	const size = factor.length;
	const parent = new Uint32Array(size);
	let total = 0;
	for (let i = 0; i < size; i++) total += factor[i];
	if (!(total > 0 && total < Infinity)) return belief;
	const start = draws.uniforms()[0];
	let at = 0;
	let reached = factor[0];
	for (let i = 0; i < size; i++) {
		const mark = ((i + start) * total) / size;
		while (reached < mark && at < size - 1) reached += factor[++at];
		parent[i] = at;
	}
	const pick = <Seen extends Wandering>(seen: Seen): Seen => {
		const column = new Float32Array(size);
		for (let i = 0; i < size; i++) column[i] = seen.column[parent[i]];
		return { ...seen, column };
	};
	const areas = new Map([...belief.areas].map(([key, seen]) => [key, key === product ? pick(seen) : seen]));
	const places = new Map([...belief.places].map(([key, seen]) => [key, seen.product === product ? pick(seen) : seen]));
	return { ...belief, areas, places };
}

function clipRatio(value: number, delivered: number, unclipped: number, sd: number): number {
	return readingLikelihood(value, delivered, sd) / readingLikelihood(value, unclipped, sd);
}
