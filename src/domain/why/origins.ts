/** Where the fuel in the tank, and the ethanol in it, come from. */
import type { Column } from "../estimator/belief";
import type { FillEvent } from "../event";
import { type Told, type Trace, toldOf } from "./trace";

export interface Origin {
	/** Null: all that is older, or too little to be told apart. */
	readonly fill: FillEvent | null;
	/** How much of it is left, L. */
	readonly litres: Told;
	/** Share of the fuel in the tank, expected. */
	readonly share: number;
	/** Its ethanol as a share of all the fuel, expected: the shares of all origins add up to the expected content. */
	readonly ethanol: number;
	/** Ethanol content of it, fraction. */
	readonly content: Told;
}

/** Fuel with a smaller share of the tank is told with the rest, and no more are told than a phone shows. */
const [leastShare, mostTold] = [0.02, 6];

/** Burning takes of everything alike, so each fill's share of the tank shrinks by the heel of every stop after it. */
export function sharesOf({ stops, belief }: Trace): {
	readonly fills: Map<FillEvent, Column>;
	readonly older: Column[];
} {
	const size = belief.weight.length;
	const fills = new Map<FillEvent, Column>();
	/** By stop: the share of what was in the tank before it. */
	const older: Column[] = [];
	let left = new Float32Array(size).fill(1);
	for (const stop of [...stops].reverse()) {
		const before = new Float32Array(size);
		const full = new Float32Array(size);
		for (let i = 0; i < size; i++) full[i] = stop.fills.reduce((sum, { litres }) => sum + litres[i], stop.heel[i]);
		for (const { event, litres } of stop.fills) {
			fills.set(
				event,
				litres.map((poured, i) => (full[i] > 0 ? (left[i] * poured) / full[i] : 0)),
			);
		}
		for (let i = 0; i < size; i++) before[i] = full[i] > 0 ? (left[i] * stop.heel[i]) / full[i] : left[i];
		older.unshift(before);
		left = before;
	}
	return { fills, older };
}

/** The largest first, what is older or less last. */
export function originsOf(trace: Trace): Origin[] {
	const { belief, stops } = trace;
	const { weight, level, content } = belief;
	const { fills } = sharesOf(trace);
	const mean = (column: Column) => {
		let [sum, all] = [0, 0];
		for (let i = 0; i < column.length; i++) {
			sum += weight[i] * column[i];
			all += weight[i];
		}
		return sum / all;
	};
	const origin = (fill: FillEvent | null, share: Column, ofIt: Column): Origin => ({
		fill,
		litres: toldOf(
			share.map((part, i) => part * level[i]),
			belief,
		),
		share: mean(share),
		ethanol: mean(share.map((part, i) => part * ofIt[i])),
		content: toldOf(ofIt, belief),
	});
	const told = stops
		.flatMap((stop) => stop.fills)
		.map(({ event, delivered }) => ({ event, delivered, share: fills.get(event) ?? new Float32Array(level.length) }))
		.map((fill) => ({ ...fill, part: mean(fill.share) }))
		.filter(({ part }) => part >= leastShare)
		.sort((a, b) => b.part - a.part)
		.slice(0, mostTold);
	const rest = new Float32Array(level.length).fill(1);
	const restEthanol = content.slice();
	for (const { share, delivered } of told) {
		for (let i = 0; i < rest.length; i++) {
			rest[i] -= share[i];
			restEthanol[i] -= share[i] * delivered[i];
		}
	}
	const restContent = rest.map((part, i) => (part > leastPart ? bounded(restEthanol[i] / part) : content[i]));
	const origins = told.map(({ event, share, delivered }) => origin(event, share, delivered));
	return mean(rest) > leastPart ? [...origins, origin(null, rest.map(bounded), restContent)] : origins;
}

/** Less of the tank is none: it is what rounding leaves. */
const leastPart = 1e-4;

function bounded(value: number): number {
	return Math.min(1, Math.max(0, value));
}
