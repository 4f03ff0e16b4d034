/** The content after a fill, as far as it will be known once the fill is made. */
import { normalDensity } from "../elementary";
import { ascending } from "../estimator/belief";
import { quantilesOf } from "../estimator/quantile";
import { type Seeds, seedsFor, uniform } from "../random";
import type { Instrument } from "./instrument";
import { after } from "./outcome";
import type { Pouring } from "./pouring";
import { roomOf } from "./room";
import { classesOf, massOf, outcomesOf, weighted } from "./shown";
import type { SoundedStanding } from "./standing";

/** Equally likely particles of a standing, in ascending order of the content that they end with. */
export interface Ending {
	/** Which particle of the standing. */
	readonly particle: Uint32Array;
	readonly content: Float64Array;
}

/** Particles of an ending where there is but one, and where the click makes several. */
const oneSize = 2 ** 13;
const manySize = 2 ** 11;

/** Equally likely amounts after which the nozzle may click. */
const clicks = 12;

/**
 * Equally likely endings of a pouring; null: of the tank as it stands. A pour to the click ends in several: how much went in
 * will be known, and tells how much was in the tank before.
 */
export function endingsOf(standing: SoundedStanding, pouring: Pouring | null): Ending[] {
	const { weight } = standing;
	const seeds = seedsFor("endings");
	if (!pouring) return [endingOf(standing.content, weight, oneSize, seeds)];
	if (pouring.total <= roomOf(standing).median)
		return [endingOf(after(standing, pouring).content, weight, oneSize, seeds)];
	const free = Float32Array.from(standing.room, (litres) => Math.max(0, litres));
	const quantile = quantilesOf(free, weight, ascending(free));
	return Array.from({ length: clicks }, (_, k) => {
		const clicked = quantile((k + 0.5) / clicks);
		const { content } = after({ ...standing, room: new Float64Array(weight.length).fill(clicked) }, pouring);
		return endingOf(content, explaining(clicked, standing), manySize, seeds);
	});
}

/** The weights times how well each particle explains a click after so many litres. */
function explaining(clicked: number, { weight, level, capacity, clickSd }: SoundedStanding): Float32Array {
	const explained = new Float32Array(weight.length);
	for (let i = 0; i < explained.length; i++) {
		const sd = clickSd * capacity[i];
		explained[i] = (weight[i] * normalDensity((clicked + level[i] - capacity[i]) / sd)) / sd;
	}
	return explained;
}

/** Drawn along the order of content (systematic resampling), so that the distribution of it hardly suffers. */
function endingOf(column: Float32Array, weight: Float32Array, size: number, seeds: Seeds): Ending {
	const order = ascending(column);
	let total = 0;
	for (let i = 0; i < weight.length; i++) total += weight[i];
	const [particle, content] = [new Uint32Array(size), new Float64Array(size)];
	const start = uniform(seeds);
	let at = 0;
	let reached = weight[order[0]];
	for (let i = 0; i < size; i++) {
		const mark = ((i + start) * total) / size;
		while (reached < mark && at < order.length - 1) reached += weight[order[++at]];
		particle[i] = order[at];
		content[i] = column[order[at]];
	}
	return { particle, content };
}

/** Width of the central 90 % range of an ending's content. */
export function widthOf({ content }: Ending): number {
	return content[Math.round(0.95 * content.length)] - content[Math.round(0.05 * content.length)];
}

/** The width to be expected once the instrument is read. */
export function expectedWidth(ending: Ending, instrument: Instrument): number {
	const { particle, content } = ending;
	const classes = classesOf(content.map((ended, i) => instrument.truth(particle[i], ended)));
	const mass = massOf(classes);
	let [expected, told] = [0, 0];
	for (const { chance, likelihood } of outcomesOf(classes, mass, instrument)) {
		expected += chance * centralWidth(content, classes.of, likelihood, weighted(mass, likelihood));
		told += chance;
	}
	return expected + (1 - told) * widthOf(ending);
}

function centralWidth(content: Float64Array, of: Uint16Array, likelihood: Float64Array, total: number): number {
	let [low, high] = [0, content.length - 1];
	for (let left = 0.05 * total - likelihood[of[low]]; left > 0; ) left -= likelihood[of[++low]];
	for (let left = 0.05 * total - likelihood[of[high]]; left > 0; ) left -= likelihood[of[--high]];
	return content[high] - content[low];
}
