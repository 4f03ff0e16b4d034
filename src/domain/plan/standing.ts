/** The car at the pump with nothing poured yet: what each particle holds, what still fits, and what every nozzle would give. */
import { arrivedAt, closed } from "../estimator/absorb";
import type { Belief, Column } from "../estimator/belief";
import { defaultClickSd } from "../estimator/constants";
import { drawsFor } from "../estimator/draws";
import { prepared } from "../estimator/resample";
import type { AtStop } from "../estimator/stop";
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

/** A sample of `size` particles, a power of two; there must be an offer. Its draws hang on the stop's id. */
export function standingAt(before: Belief, visit: Visit, offers: readonly Offer[], tank: Tank, size: number): Standing {
	const ready = prepared(before, size, seedsFor(visit.stop));
	const draws = drawsFor(size, seedsFor(`${visit.stop} offers`));
	let belief = ready;
	const delivered: Column[] = [];
	for (const [i, { product }] of offers.entries()) {
		const arrived = arrivedAt(belief, { ...visit, kind: "fill", id: `${visit.stop} ${i}`, product }, tank, draws);
		belief = arrived.belief;
		delivered.push(arrived.delivered);
	}
	const { level, content, weight, capacityFactor } = closed(belief as AtStop, tank, draws).belief;
	const { capacityL, clickSd = defaultClickSd } = tank;
	const z = draws.normals();
	const room = z.map((away, i) => capacityL * capacityFactor[i] * (1 + clickSd * away) - level[i]);
	return { weight, level, content, room, delivered };
}
