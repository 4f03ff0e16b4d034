/** What each reading, gauge, click and odometer has done for the present range: the account run again without it. */
import { absorb } from "../estimator/absorb";
import type { Belief } from "../estimator/belief";
import { prepared } from "../estimator/resample";
import type { FillEvent, LevelEvent, ReadingEvent, StartEvent, TankEvent } from "../event";
import { seedsFor } from "../random";
import type { Tank } from "../vehicle";
import { widthOf } from "./known";

export type Evidence =
	| { readonly kind: "reading"; readonly event: ReadingEvent }
	/** Noted at a stop or the start, or a look at the level of its own; that one goes with its odometer. */
	| { readonly kind: "gauge"; readonly event: FillEvent | LevelEvent | StartEvent }
	| { readonly kind: "click" | "odometer"; readonly event: FillEvent };

export interface EvidenceWorth {
	readonly evidence: Evidence;
	/** Width that the central 90 % range of the content would have now without it. */
	readonly without: number;
}

export interface EvidenceFound {
	/** Width of the range now, of the same sample. */
	readonly width: number;
	/** What narrows most comes first; below the width now: it made the range wider. */
	readonly worths: readonly EvidenceWorth[];
	/** How many older ones were not tried. */
	readonly untried: number;
}

/** Events that may be absorbed anew in all: more would take longer than anybody waits. */
const mostAbsorbed = 60;

/** On a sample of `size` particles, a power of two. What is left out is left out with all that it taught since. */
export function evidenceOf(before: Belief, events: readonly TankEvent[], tank: Tank, size: number): EvidenceFound {
	const steps: Belief[] = [prepared(before, size, seedsFor("why evidence"))];
	for (const event of events) steps.push(absorb(steps[steps.length - 1], event, tank, size).belief);
	const now = steps[steps.length - 1];
	const all = evidenceIn(events).reverse();
	let spent = 0;
	const tried = all.filter(({ at }) => {
		spent += events.length - at;
		return spent <= mostAbsorbed;
	});
	const worths = tried.map(({ evidence, at }): EvidenceWorth => {
		const rest = events.slice(at).flatMap((event) => without(event, evidence));
		const after = rest.reduce((belief, event) => absorb(belief, event, tank, size).belief, steps[at]);
		return { evidence, without: widthOf(after.content, after.weight) };
	});
	worths.sort((a, b) => b.without - a.without);
	return { width: widthOf(now.content, now.weight), worths, untried: all.length - tried.length };
}

/** In order, each with the number of the event that it first came with; a stop has one gauge and one odometer. */
function evidenceIn(events: readonly TankEvent[]): { readonly evidence: Evidence; readonly at: number }[] {
	const [gauged, driven] = [new Set<string>(), new Set<string>()];
	return events.flatMap((event, at) =>
		evidenceOfEvent(event)
			.filter(({ kind }) => {
				if (event.kind !== "fill" || kind === "click") return true;
				const seen = kind === "gauge" ? gauged : driven;
				const fresh = !seen.has(event.stop);
				seen.add(event.stop);
				return fresh;
			})
			.map((evidence) => ({ evidence, at })),
	);
}

function evidenceOfEvent(event: TankEvent): Evidence[] {
	switch (event.kind) {
		case "reading":
			return [{ kind: "reading", event }];
		case "level":
			return [{ kind: "gauge", event }];
		case "start":
			return event.gauge === undefined ? [] : [{ kind: "gauge", event }];
		case "fill": {
			const found: Evidence[] = [];
			if (event.gauge !== undefined) found.push({ kind: "gauge", event });
			if (event.odometerKm !== undefined) found.push({ kind: "odometer", event });
			if (event.toClick) found.push({ kind: "click", event });
			return found;
		}
	}
}

/** The event as it is without the evidence; nothing where the evidence is all that it was. */
function without(event: TankEvent, { kind, event: source }: Evidence): TankEvent[] {
	if (event.kind === "fill" && source.kind === "fill") {
		const { gauge, odometerKm, toClick, ...bare } = event;
		if (kind === "click" && event.id === source.id)
			return [
				{ ...bare, ...(gauge === undefined ? {} : { gauge }), ...(odometerKm === undefined ? {} : { odometerKm }) },
			];
		if (kind === "click" || event.stop !== source.stop) return [event];
		const { [kind === "gauge" ? "gauge" : "odometerKm"]: _, ...rest } = event;
		return [rest];
	}
	if (event.id !== source.id) return [event];
	if (event.kind !== "start") return [];
	const { gauge, ...rest } = event;
	return [rest];
}
