/** The car at the pump with nothing poured yet: what each particle holds, what still fits, and what every nozzle would give. */
import { arrivedAt, closed, stoppedAt } from "../estimator/absorb";
import type { Belief, Column } from "../estimator/belief";
import { defaultClickSd, defaultGaugeSd } from "../estimator/constants";
import { drawsFor } from "../estimator/draws";
import { prepared } from "../estimator/resample";
import { seedsFor } from "../random";
import type { Tank } from "../vehicle";
import type { Offer, Visit } from "./request";

/** One number per particle in each column. */
export interface Standing {
	readonly weight: Column;
	/** Drawable fuel, L, with what was poured at this stop before. */
	readonly level: Column;
	readonly content: Column;
	/** What goes in until the nozzle's first click, L; below nothing where the tank is that full already. */
	readonly room: Float64Array;
	/** Content that each offer's nozzle would deliver, by offer. */
	readonly delivered: readonly Column[];
}

/** The same with what tells of the level: the nozzle's click, and the gauge if it can still be noted. */
export interface SoundedStanding extends Standing {
	/** True capacity, L. */
	readonly capacity: Float64Array;
	/** Standard uncertainty of the level at the first click, fraction of the capacity. */
	readonly clickSd: number;
	/** What the gauge would show, fraction of capacity; null once it is noted, or something was poured at this stop. */
	readonly gauge: { readonly mean: Float64Array; readonly sd: number } | null;
	/** All that is believed at this point, the same particles in the same order. */
	readonly belief: Belief;
}

/** A sample of `size` particles, a power of two. Its draws hang on the stop's id. */
export function standingAt(
	before: Belief,
	visit: Visit,
	offers: readonly Offer[],
	tank: Tank,
	size: number,
): SoundedStanding {
	const draws = drawsFor(size, seedsFor(`${visit.stop} offers`));
	let belief = stoppedAt(prepared(before, size, seedsFor(visit.stop)), visit, tank);
	const delivered: Column[] = [];
	for (const [i, { product }] of offers.entries()) {
		const arrived = arrivedAt(belief, { ...visit, kind: "fill", id: `${visit.stop} ${i}`, product }, tank, draws);
		belief = arrived.belief;
		delivered.push(arrived.delivered);
	}
	const settled = closed(belief, tank, draws).belief;
	const { level, content, weight } = settled;
	const { capacityL, clickSd = defaultClickSd } = tank;
	const capacity = Float64Array.from(settled.capacityFactor, (factor) => capacityL * factor);
	const z = draws.normals();
	const room = z.map((away, i) => capacity[i] * (1 + clickSd * away) - level[i]);
	const gauge = gaugeOf(settled, capacity, tank);
	return { weight, level, content, room, delivered, capacity, clickSd, gauge, belief: settled };
}

function gaugeOf(
	{ stop, level, biasMean, biasVariance }: Belief,
	capacity: Float64Array,
	{ gaugeSd = defaultGaugeSd }: Tank,
): SoundedStanding["gauge"] {
	if (!stop || stop.gauge || stop.poured.some((litres) => litres > 0)) return null;
	const mean = capacity.map((full, i) => level[i] / full + biasMean[i]);
	return { mean, sd: Math.sqrt(gaugeSd * gaugeSd + biasVariance) };
}
