/**
 * A contradiction taken apart: the last entries are gone through again under every single thing that may have gone wrong, and
 * each is weighed by how often it happens times how likely the entries then are (Bayes). Nothing is averaged.
 */
import { absorb, arrivedAt, closed } from "../estimator/absorb";
import type { Belief } from "../estimator/belief";
import { capacityFactorSd, lawfulSds, overfillLimit } from "../estimator/constants";
import { drawsFor } from "../estimator/draws";
import { prepared } from "../estimator/resample";
import { doubtSample as size } from "../estimator/sampleSize";
import { poured } from "../estimator/stop";
import type { Product, TankEvent } from "../event";
import { seedsFor } from "../random";
import type { Tank } from "../vehicle";
import type { Doubt, Weighed } from "./explanation";
import { type Instead, type Suspect, suspectsIn } from "./suspects";

/** Least and most of a fill that was not entered, share of the capacity (common practice). */
const missingShares = [0.1, 1] as const;

/** Whether a doubt is grave enough not to rely on the account until it is settled. */
export function isGrave({ nothing }: Doubt): boolean {
	return nothing < graveBelow;
}

/** Of 300 simulated drivers who choose a wrong product this finds nine in ten, and takes one clean log in a hundred for wrong. */
const graveBelow = 0.75;

/** Goes through `events`, in order, from what was believed before them. `products`: what may have been poured. */
export function doubtOf(before: Belief, events: readonly TankEvent[], products: readonly Product[], tank: Tank): Doubt {
	const weighing = doubting(before, events, products, tank);
	for (;;) {
		const step = weighing.next();
		if (step.done) return step.value;
	}
}

/** The same suspect by suspect, for whoever has other things to do in between. */
export function* doubting(
	before: Belief,
	events: readonly TankEvent[],
	products: readonly Product[],
	tank: Tank,
): Generator<void, Doubt, void> {
	const account = [prepared(before, size, seedsFor("doubt"))];
	const evidence = [1];
	for (const [i, event] of events.entries()) {
		const { belief, likelihood } = absorb(account[i], event, tank, size);
		account.push(belief);
		evidence.push(evidence[i] * likelihood);
	}
	const all = evidence[events.length];
	const mostL = overfillLimit * (1 + lawfulSds * capacityFactorSd) * tank.capacityL;
	const masses: { readonly suspect: Suspect; readonly mass: number }[] = [];
	for (const suspect of suspectsIn(events, products, mostL)) {
		yield;
		const first = Math.min(...suspect.instead.keys());
		const likelihood = likelihoodOf(suspect, account[first], first, events, tank);
		masses.push({ suspect, mass: suspect.prior * evidence[first] * likelihood });
	}
	// The account itself takes one reading in fifty for rubbish: that share of what it explains is no "nothing wrong".
	const rubbish = masses.reduce(
		(sum, { suspect, mass }) => sum + (suspect.explanation.kind === "reading" ? mass : 0),
		0,
	);
	const right = Math.max(0, all - rubbish);
	const total = masses.reduce((sum, { mass }) => sum + mass, right);
	if (!(total > 0)) return { nothing: 0, explanations: [] };
	const explanations = masses.map(
		({ suspect, mass }): Weighed => ({ explanation: suspect.explanation, weight: mass / total }),
	);
	return { nothing: right / total, explanations: explanations.sort((a, b) => b.weight - a.weight) };
}

/** Of all entries from `first` on, had that gone wrong. */
function likelihoodOf(
	{ instead }: Suspect,
	start: Belief,
	first: number,
	events: readonly TankEvent[],
	tank: Tank,
): number {
	let [belief, likelihood] = [start, 1];
	for (let i = first; i < events.length && likelihood > 0; i++) {
		const step = stepOf(belief, instead.get(i) ?? { event: events[i] }, events[i], tank);
		belief = step.belief;
		likelihood *= step.likelihood;
	}
	return likelihood;
}

function stepOf(before: Belief, { event, missing }: Instead, entry: TankEvent, tank: Tank) {
	const start = missing ? withFill(before, missing, entry, tank) : before;
	return event ? absorb(start, event, tank, size) : { belief: start, likelihood: 1 };
}

/** Somewhen before an entry a fill of anything between next to nothing and all that the tank holds. */
function withFill(before: Belief, product: Product, entry: TankEvent, tank: Tank): Belief {
	const id = `before ${entry.id}`;
	const ready = prepared(before, size, seedsFor(id));
	const draws = drawsFor(size, seedsFor(id));
	const { belief, delivered } = arrivedAt(ready, { kind: "fill", id, at: entry.at, stop: id, product }, tank, draws);
	const [least, most] = missingShares;
	const amounts = Float32Array.from(draws.uniforms(), (u) => (least + (most - least) * u) * tank.capacityL);
	return closed(poured(belief, amounts, delivered), tank, draws).belief;
}
