/**
 * The contents that are possible if every pump kept to its label and every reading of the level, the gauge's bias and the
 * capacity lay within three standard deviations: interval arithmetic, beside the distribution and never fed by readings
 * of the content. Litres count as displayed.
 */
import { type ContentRange, type Fraction, fraction } from "../quantity";
import { capacityFactorSd, gaugeBiasSd, lawfulSds, overfillLimit } from "./constants";

type Interval = readonly [low: number, high: number];

export interface LawfulBelief {
	readonly content: ContentRange;
	/** L. */
	readonly level: Interval;
	readonly stop: LawfulStop | null;
}

interface LawfulStop {
	readonly levelBefore: Interval;
	readonly contentBefore: ContentRange;
	readonly poured: number;
	/** Least and most ethanol in what was poured, L. */
	readonly pouredEthanol: Interval;
}

const capacitySpread = lawfulSds * capacityFactorSd;

export function lawfulStart(content: ContentRange, capacityL: number, gauge?: number, gaugeSd = 0): LawfulBelief {
	const most = capacityL * (1 + capacitySpread);
	const level: Interval =
		gauge === undefined ? [0, most] : narrowed([0, overfillLimit * most], byGauge(gauge, gaugeSd, capacityL));
	return { content, level, stop: null };
}

/** A stop, or a look at the level: it has fallen to anything down to nothing. */
export function lawfulOpen(lawful: LawfulBelief): LawfulBelief {
	return opened(lawful, [0, lawful.level[1]]);
}

/** A stop that was interrupted goes on: nothing was burned. */
export function lawfulGoOn(lawful: LawfulBelief): LawfulBelief {
	return opened(lawful, lawful.level);
}

function opened({ content }: LawfulBelief, level: Interval): LawfulBelief {
	return { content, level, stop: { levelBefore: level, contentBefore: content, poured: 0, pouredEthanol: [0, 0] } };
}

export function lawfulGauge(lawful: LawfulBelief, gauge: number, gaugeSd: number, capacityL: number): LawfulBelief {
	return withLevelBefore(lawful, byGauge(gauge, gaugeSd, capacityL));
}

export function lawfulFill(lawful: LawfulBelief, litres: number, range: ContentRange, capacityL: number): LawfulBelief {
	const { stop } = lawful;
	if (!stop) return lawful;
	const poured = stop.poured + litres;
	const pouredEthanol: Interval = [
		stop.pouredEthanol[0] + litres * range[0],
		stop.pouredEthanol[1] + litres * range[1],
	];
	const room = overfillLimit * capacityL * (1 + capacitySpread) - poured;
	return withLevelBefore({ ...lawful, stop: { ...stop, poured, pouredEthanol } }, [0, room]);
}

export function lawfulClick(lawful: LawfulBelief, clickSd: number, capacityL: number): LawfulBelief {
	if (!lawful.stop) return lawful;
	const { poured } = lawful.stop;
	return withLevelBefore(lawful, [
		capacityL * (1 - capacitySpread) * (1 - lawfulSds * clickSd) - poured,
		capacityL * (1 + capacitySpread) * (1 + lawfulSds * clickSd) - poured,
	]);
}

function byGauge(gauge: number, gaugeSd: number, capacityL: number): Interval {
	const spread = lawfulSds * (gaugeSd + gaugeBiasSd);
	return [
		Math.max(0, gauge - spread) * capacityL * (1 - capacitySpread),
		Math.max(0, gauge + spread) * capacityL * (1 + capacitySpread),
	];
}

/** Narrows what was in the tank before the stop's first fill, and mixes anew. */
function withLevelBefore(lawful: LawfulBelief, by: Interval): LawfulBelief {
	const { stop } = lawful;
	if (!stop) return lawful;
	const levelBefore = narrowed(stop.levelBefore, by);
	const mixed = (level: number, content: number, ethanol: number) =>
		level + stop.poured > 0 ? (level * content + ethanol) / (level + stop.poured) : content;
	const [least, most] = levelBefore;
	// The mix runs one way in the level before, so its ends lie at the level's ends.
	const ends = (content: number, ethanol: number) => [mixed(least, content, ethanol), mixed(most, content, ethanol)];
	const low = Math.min(...ends(stop.contentBefore[0], stop.pouredEthanol[0]));
	const high = Math.max(...ends(stop.contentBefore[1], stop.pouredEthanol[1]));
	return {
		content: [bounded(low), bounded(high)],
		level: [least + stop.poured, most + stop.poured],
		stop: { ...stop, levelBefore },
	};
}

/** What both intervals allow; where they exclude each other the new reading is beyond three sd and is left out. */
function narrowed(before: Interval, by: Interval): Interval {
	const low = Math.max(before[0], by[0]);
	const high = Math.min(before[1], by[1]);
	return low <= high ? [low, high] : before;
}

function bounded(value: number): Fraction {
	return fraction(Math.min(1, Math.max(0, value)));
}
