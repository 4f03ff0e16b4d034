/** The last part of an account run once more, with what happened in it kept beside what is believed at its end. */
import { absorb } from "../estimator/absorb";
import { ascending, type Belief, type Column } from "../estimator/belief";
import { quantilesOf } from "../estimator/quantile";
import { prepared } from "../estimator/resample";
import type { FillEvent, StartEvent, TankEvent } from "../event";
import { seedsFor } from "../random";
import type { Tank } from "../vehicle";

/** One fill, as believed at the end. */
export interface TracedFill {
	readonly event: FillEvent;
	/** True litres that went in, L. */
	readonly litres: Column;
	/** Ethanol content of what the pump gave, fraction. */
	readonly delivered: Column;
}

/** One stop, as believed at the end: what was left before it, and what went in. */
export interface TracedStop {
	/** Fuel in the tank before the first fill, L. */
	readonly heel: Column;
	readonly fills: readonly TracedFill[];
	/** Contents before and after it, fractions. */
	readonly before: Column;
	readonly after: Column;
}

/** All columns belong to the particles of the belief at the end. */
export interface Trace {
	readonly belief: Belief;
	/** The start of the account, if it lies in this part. */
	readonly start: StartEvent | null;
	/** Whether the account itself begins here, with a start or without. */
	readonly began: boolean;
	/** Content where this part begins. */
	readonly first: Column;
	readonly stops: readonly TracedStop[];
}

/** Fills of less are too small for what they held to be told from rounding, L. */
const leastTraced = 0.05;

interface StopInHand {
	readonly number: number;
	readonly fills: FillEvent[];
}

/**
 * Absorbs the events on a sample of `size` particles, a power of two. They must not begin in the middle of a stop. A start
 * among them forgets what came before it.
 */
export function traceOf(before: Belief, events: readonly TankEvent[], tank: Tank, size: number): Trace {
	const ready = prepared(before, size, seedsFor("why"));
	let belief = tracing(ready, { first: ready.content });
	let start: StartEvent | null = null;
	let stops: StopInHand[] = [];
	for (const event of events) {
		if (event.kind === "fill") {
			const goesOn = stops.length > 0 && belief.stop?.id === event.stop;
			if (!goesOn) stops.push({ number: stops.length, fills: [] });
			const stop = stops[stops.length - 1];
			if (event.litres >= leastTraced) stop.fills.push(event);
			belief = filled(belief, event, stop, goesOn, tank, size);
			continue;
		}
		belief = absorb(belief, event, tank, size).belief;
		if (event.kind !== "start") continue;
		start = event;
		stops = [];
		belief = { ...belief, traced: new Map([["first", belief.content]]) };
	}
	return told(belief, start, start !== null || before.age === 0, stops);
}

/** A fill absorbed, and its columns traced. What the tank held before the stop is settled anew with each of its fills. */
function filled(
	belief: Belief,
	event: FillEvent,
	{ number }: StopInHand,
	goesOn: boolean,
	tank: Tank,
	size: number,
): Belief {
	const nothing = new Float32Array(belief.weight.length);
	const so = {
		poured: (goesOn && belief.stop?.poured) || nothing,
		ethanol: (goesOn && belief.stop?.pouredEthanol) || nothing,
	};
	const noted = tracing(belief, { "poured so far": so.poured, "ethanol so far": so.ethanol });
	const after = absorb(noted, event, tank, size).belief;
	const { stop, level, traced } = after;
	const [poured, ethanol] = [traced.get("poured so far"), traced.get("ethanol so far")];
	if (!stop || !poured || !ethanol) return after;
	const [heel, litres, delivered] = [0, 1, 2].map(() => new Float32Array(level.length));
	for (let i = 0; i < level.length; i++) {
		heel[i] = Math.max(0, level[i] - stop.poured[i]);
		litres[i] = stop.poured[i] - poured[i];
		delivered[i] = Math.min(1, Math.max(0, (stop.pouredEthanol[i] - ethanol[i]) / litres[i]));
	}
	const columns = { [`heel ${number}`]: heel };
	if (event.litres >= leastTraced) {
		columns[`litres ${event.id}`] = litres;
		columns[`delivered ${event.id}`] = delivered;
	}
	return tracing(after, columns);
}

function tracing(belief: Belief, columns: Readonly<Record<string, Column>>): Belief {
	return { ...belief, traced: new Map([...belief.traced, ...Object.entries(columns)]) };
}

/** The traced columns in order, and the contents that they mix to. */
function told(belief: Belief, start: StartEvent | null, began: boolean, stops: readonly StopInHand[]): Trace {
	const column = (name: string) => belief.traced.get(name) ?? new Float32Array(belief.weight.length);
	const first = column("first");
	let before = first;
	const traced = stops.map(({ number, fills }): TracedStop => {
		const stop = {
			heel: column(`heel ${number}`),
			fills: fills.map((event) => ({
				event,
				litres: column(`litres ${event.id}`),
				delivered: column(`delivered ${event.id}`),
			})),
			before,
		};
		const after = mixed(stop);
		before = after;
		return { ...stop, after };
	});
	return { belief: { ...belief, traced: new Map() }, start, began, first, stops: traced };
}

function mixed({ heel, fills, before }: Omit<TracedStop, "after">): Column {
	const result = new Float32Array(heel.length);
	for (let i = 0; i < result.length; i++) {
		let [volume, ethanol] = [heel[i], heel[i] * before[i]];
		for (const { litres, delivered } of fills) {
			volume += litres[i];
			ethanol += litres[i] * delivered[i];
		}
		result[i] = volume > 0 ? ethanol / volume : before[i];
	}
	return result;
}

/** Median and ends of the central 90 % interval of a column, in its own unit. */
export interface Told {
	readonly median: number;
	readonly low: number;
	readonly high: number;
}

/** Of numbers zero or more. */
export function toldOf(column: Column, { weight }: Belief): Told {
	const quantile = quantilesOf(column, weight, ascending(column));
	return { median: quantile(0.5), low: quantile(0.05), high: quantile(0.95) };
}
