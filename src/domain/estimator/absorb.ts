/** One event absorbed into the belief. */
import { normalChance, normalQuantile } from "../elementary";
import type { FillEvent, LevelEvent, ReadingEvent, StartEvent, TankEvent } from "../event";
import { type ContentRange, contentRange, instant } from "../quantity";
import { seedsFor } from "../random";
import type { Tank } from "../vehicle";
import { ascending, type Belief, type Column, reweighted } from "./belief";
import {
	capacityFactorSd,
	defaultClickSd,
	defaultGaugeSd,
	disagreementChance,
	dispenserSd,
	gaugeBiasSd,
	lawfulSds,
	leastExplained,
	overfillLimit,
	unknownContents,
} from "./constants";
import { type Draws, drawsFor } from "./draws";
import { lawfulClick, lawfulFill, lawfulGauge, lawfulGoOn, lawfulOpen, lawfulStart } from "./lawful";
import { odometerSaid, withoutLeg } from "./leg";
import { deliver, sample } from "./pump";
import { chanceOf, readingLikelihood } from "./reading";
import { effectiveShare, fittingSize, prepared } from "./resample";
import { largeSample } from "./sampleSize";
import { type AtStop, clickSaid, frozen, gaugeSaid, openStop, poured, type Settled, settled, unsaid } from "./stop";
import { trimmed } from "./trim";

/** What an event said that the account can hardly believe. */
export type Surprise =
	/** A reading of the content that had less than this chance. */
	| { readonly kind: "disagrees"; readonly chance: number }
	/** What was said of the level cannot be: it was left out of the account. */
	| { readonly kind: "impossibleLevel" }
	/** The distance since the stop before cannot be: the odometer was left out of the account. */
	| { readonly kind: "impossibleDistance" };

export interface Absorbed {
	readonly belief: Belief;
	readonly surprise: Surprise | null;
	/** Density of what the event said, given all that went before: by content, trim, or share of the capacity; 1: it said nothing. */
	readonly likelihood: number;
}

/** Knowing nothing: any content a tank may hold, any level. */
export function initialBelief(carId: string, tank: Tank, size = largeSample): Belief {
	const draws = drawsFor(size, seedsFor(carId));
	const z = draws.normals();
	// A capacity half the rated one is 33 sd away: the floor only keeps divisions safe.
	const capacityFactor = Float32Array.from(z, (n) => Math.max(0.5, 1 + capacityFactorSd * n));
	const content = rectangular(contentRange(...unknownContents), draws);
	return {
		age: 0,
		level: anyLevel(capacityFactor, tank, draws),
		content,
		capacityFactor,
		biasMean: new Float32Array(size),
		biasVariance: gaugeBiasSd ** 2,
		consumption: null,
		odometer: null,
		weight: new Float32Array(size).fill(1),
		order: ascending(content),
		areas: new Map(),
		places: new Map(),
		bought: new Set(),
		baselines: new Map(),
		traced: new Map(),
		lastStop: null,
		stop: null,
		lawful: lawfulStart(contentRange(...unknownContents), tank.capacityL),
	};
}

/**
 * The belief after an event; the draws hang on the event's id alone. A size of one's own choosing (a power of two) serves
 * previews; what is kept leaves it to the belief.
 */
export function absorb(before: Belief, event: TankEvent, tank: Tank, size = fittingSize(before)): Absorbed {
	const seeds = seedsFor(event.id);
	const ready = prepared(before, size, seeds);
	const belief = { ...ready, age: event.kind === "start" ? 0 : ready.age + 1 };
	const draws = drawsFor(belief.weight.length, seeds);
	switch (event.kind) {
		case "start":
			return start(belief, event, tank, draws);
		case "fill":
			return fill(belief, event, tank, draws);
		case "level":
			return level(belief, event, tank, draws);
		case "reading":
			return reading(belief, event, draws);
	}
}

function start(belief: Belief, event: StartEvent, tank: Tank, draws: Draws): Absorbed {
	const { capacityFactor } = belief;
	const { contents, gauge } = event;
	const gaugeSd = tank.gaugeSd ?? defaultGaugeSd;
	const content = "range" in contents ? rectangular(contents.range, draws) : bell(contents.value, contents.sd, draws);
	const range = "range" in contents ? contents.range : around(contents.value, lawfulSds * contents.sd);
	const lawful = lawfulStart(range, tank.capacityL, gauge, gaugeSd);
	const fresh: Belief = { ...belief, content, order: ascending(content), odometer: null, bought: new Set(), lawful };
	if (gauge === undefined) {
		return {
			belief: { ...fresh, level: anyLevel(capacityFactor, tank, draws), stop: null },
			surprise: null,
			likelihood: 1,
		};
	}
	// Nothing but the gauge speaks of the level, up to the most a tank can hold.
	const most = capacityFactor.map((factor) => overfillLimit * tank.capacityL * factor);
	return closed(gaugeSaid(openStop(fresh, null, true, most), gauge, gaugeSd, tank.capacityL), tank, draws);
}

function fill(before: Belief, event: FillEvent, tank: Tank, draws: Draws): Absorbed {
	const { capacityL, clickSd = defaultClickSd } = tank;
	const { belief: arrived, delivered } = arrivedAt(before, event, tank, draws);
	const lawful = lawfulFill(arrived.lawful, event.litres, event.product.range, capacityL);
	const belief: AtStop = { ...poured(arrived, displayed(event.litres, draws), delivered), lawful };
	if (!event.toClick) return closed(belief, tank, draws);
	const clicked = { ...clickSaid(belief, clickSd, capacityL), lawful: lawfulClick(lawful, clickSd, capacityL) };
	return closed(clicked, tank, draws, belief);
}

/** At the pump, nothing poured yet: the stop is open, odometer and gauge were noted, and the pump's fuel is drawn. */
export function arrivedAt(before: Belief, event: Omit<FillEvent, "litres" | "toClick">, tank: Tank, draws: Draws) {
	const belief = stoppedAt(before, event, tank);
	const { belief: served, delivered } = deliver(belief, event.product, event.place, instant(event.at), draws);
	return { belief: { ...served, stop: belief.stop } satisfies AtStop, delivered };
}

/** The stop open, and odometer and gauge noted if they were not yet. */
export function stoppedAt(
	before: Belief,
	{ stop, gauge, odometerKm }: Pick<FillEvent, "stop" | "gauge" | "odometerKm">,
	tank: Tank,
): AtStop {
	const { capacityL, gaugeSd = defaultGaugeSd } = tank;
	const belief = driven(atStop(before, stop), odometerKm, stop);
	if (gauge === undefined || belief.stop.gauge !== null) return belief;
	return {
		...gaugeSaid(belief, gauge, gaugeSd, capacityL),
		lawful: lawfulGauge(belief.lawful, gauge, gaugeSd, capacityL),
	};
}

/** The odometer noted. Its draws are apart from the event's own, which stay what they are without it. */
function driven(belief: AtStop, odometerKm: number | undefined, id: string): AtStop {
	return odometerKm === undefined ? belief : odometerSaid(belief, odometerKm, seedsFor(`${id} leg`));
}

/** True litres behind what the dispenser showed. */
function displayed(litres: number, draws: Draws): Column {
	const z = draws.normals();
	const result = new Float32Array(z.length);
	for (let i = 0; i < z.length; i++) result[i] = litres * (1 + dispenserSd * z[i]);
	return result;
}

/** The stop as it goes on, or a new one; one that a look at the level interrupted goes on from the level now believed. */
function atStop(belief: Belief, id: string): AtStop {
	const { stop, lastStop, level, lawful } = belief;
	if (stop?.id === id) return { ...belief, stop };
	const burned = lastStop !== id;
	return {
		...openStop(belief, id, burned, level),
		lastStop: id,
		lawful: burned ? lawfulOpen(lawful) : lawfulGoOn(lawful),
	};
}

function level(before: Belief, event: LevelEvent, tank: Tank, draws: Draws): Absorbed {
	const { capacityL, gaugeSd = defaultGaugeSd } = tank;
	const lawful = lawfulGauge(lawfulOpen(before.lawful), event.gauge, gaugeSd, capacityL);
	const opened = driven(openStop({ ...before, lawful }, null, true, before.level), event.odometerKm, event.id);
	return closed(gaugeSaid(opened, event.gauge, gaugeSd, capacityL), tank, draws);
}

/**
 * Settles a stop. What cannot be, or hardly any particle can explain, is left out and said to be so: at best the odometer
 * alone, then a click alone, where the stop without it is given. The likelihood is that of all that was said.
 */
export function closed(belief: AtStop, tank: Tank, draws: Draws, unclicked?: AtStop): Absorbed {
	const { belief: possible, likelihood } = explained(belief, tank, draws);
	if (possible) return { belief: possible, surprise: null, likelihood };
	const undriven = belief.stop.leg && explained(withoutLeg(belief), tank, draws).belief;
	if (undriven) return { belief: undriven, surprise: { kind: "impossibleDistance" }, likelihood };
	const left = unclicked
		? closed(unclicked, tank, draws).belief
		: (settled(unsaid(belief), tank.capacityL, draws).belief ?? belief);
	return { belief: left, surprise: { kind: "impossibleLevel" }, likelihood };
}

function explained(belief: AtStop, tank: Tank, draws: Draws): Settled {
	const { belief: possible, likelihood } = settled(belief, tank.capacityL, draws);
	const enough = leastExplained * effectiveShare(belief.weight);
	return { belief: possible && effectiveShare(possible.weight) >= enough ? possible : null, likelihood };
}

function reading(before: Belief, event: ReadingEvent, draws: Draws): Absorbed {
	const { value } = event;
	const size = before.weight.length;
	const sd = new Float64Array(size).fill(event.sd);
	if (event.of === "pump") {
		// What it says is held against what the pump was believed to give, drawn apart from the sample's own draws.
		const apart = drawsFor(size, seedsFor(`${event.id} before`));
		const { belief, delivered } = deliver(before, event.product, event.place, instant(event.at), apart);
		const chance = chanceOf(belief, value, sd, Float64Array.from(delivered));
		return read(before, { ...sample(before, event, draws), chance });
	}
	const belief = before.stop ? frozen({ ...before, stop: before.stop }) : before;
	if (event.of === "trim") return read(before, trimmed(belief, event, draws));
	const factor = Float64Array.from(before.content, (content) => readingLikelihood(value, content, event.sd));
	const weight = reweighted(before.weight, factor) ?? before.weight;
	const chance = chanceOf(before, value, sd, Float64Array.from(before.content));
	return read(before, { belief: { ...belief, weight }, factor, chance });
}

/** `factor`: how likely the reading was by particle. */
function read(
	{ weight }: Belief,
	{ belief, factor, chance }: { readonly belief: Belief; readonly factor: Float64Array; readonly chance: number },
): Absorbed {
	let [all, weighed] = [0, 0];
	for (let i = 0; i < weight.length; i++) {
		all += weight[i];
		weighed += weight[i] * factor[i];
	}
	const surprise = chance < disagreementChance ? ({ kind: "disagrees", chance } as const) : null;
	return { belief, surprise, likelihood: weighed / all };
}

function anyLevel(capacityFactor: Column, tank: Tank, draws: Draws): Column {
	const u = draws.uniforms();
	return capacityFactor.map((factor, i) => u[i] * factor * tank.capacityL);
}

function rectangular([low, high]: ContentRange, draws: Draws): Column {
	return Float32Array.from(draws.uniforms(), (u) => low + (high - low) * u);
}

/** Normal around a value, cut to 0 … 1. */
function bell(value: number, sd: number, draws: Draws): Column {
	const below = normalChance(-value / sd);
	const mass = normalChance((1 - value) / sd) - below;
	return Float32Array.from(draws.uniforms(), (u) => bounded(value + sd * normalQuantile(below + mass * u)));
}

function around(value: number, distance: number): ContentRange {
	return contentRange(bounded(value - distance), bounded(value + distance));
}

function bounded(value: number): number {
	return Math.min(1, Math.max(0, value));
}
