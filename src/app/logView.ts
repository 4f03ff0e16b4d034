/** The log as it is told: stops and single events, what each did, month by month. */
import type { Surprise } from "../domain/estimator/absorb";
import { type FillEvent, type LogEvent, type VoidEvent, voidedBy } from "../domain/event";
import type { Calibration } from "../domain/vehicle";
import { budgetsOf } from "../domain/warnings";
import type { AccountView, Figures } from "../keeper/view";

export type ToldEvent = Exclude<LogEvent, VoidEvent>;

/** An event, or all fills of one stop that count (or are void) together. */
export interface LogItem {
	/** Id of its first event. */
	readonly id: string;
	readonly at: string;
	/** In order; at least one. */
	readonly events: readonly ToldEvent[];
	/** What was believed before and after; null where there is no account of it. */
	readonly before: Figures | null;
	readonly after: Figures | null;
	readonly surprise: Surprise | null;
	/** The calibration in force after it; none for what is void. */
	readonly calibration: Calibration | null;
	readonly isVoid: boolean;
}

type Told = Pick<AccountView, "car" | "events" | "lines">;

/** Everything but the voids themselves, in order. */
export function itemsOf({ car, events, lines }: Told): LogItem[] {
	const voids = voidedBy(events);
	const lineOf = new Map(lines.map((line, i) => [line.event.id, i]));
	const places = new Map<string, number>();
	const items: LogItem[] = [];
	let calibration = car.calibrations[0] ?? null;
	for (const event of events) {
		if (event.kind === "void") continue;
		const isVoid = voids.has(event.id);
		if (event.kind === "calibration" && !isVoid)
			calibration = car.calibrations.find(({ id }) => id === event.calibration) ?? calibration;
		const index = lineOf.get(event.id);
		const line = index === undefined ? null : lines[index];
		const key = event.kind === "fill" ? `${isVoid} ${event.stop}` : null;
		const place = key === null ? undefined : places.get(key);
		const earlier = place === undefined ? null : items[place];
		const item = {
			id: earlier?.id ?? event.id,
			at: earlier?.at ?? event.at,
			events: [...(earlier?.events ?? []), event],
			before: earlier ? earlier.before : index === undefined ? null : (lines[index - 1]?.figures ?? null),
			after: line?.figures ?? earlier?.after ?? null,
			surprise: line?.surprise ?? earlier?.surprise ?? null,
			calibration: isVoid ? null : calibration,
			isVoid,
		};
		if (place !== undefined) items[place] = item;
		else {
			if (key !== null) places.set(key, items.length);
			items.push(item);
		}
	}
	return items;
}

/** The item an event belongs to; a void leads to what it took back. */
export function itemWith(items: readonly LogItem[], events: readonly LogEvent[], id: string): LogItem | null {
	let sought = id;
	// Voids of voids lead on; no more steps than events, should they lead in a circle.
	for (let steps = 0; steps < events.length; steps++) {
		const event = events.find((known) => known.id === sought);
		if (event?.kind !== "void") break;
		sought = event.target;
	}
	return items.find((item) => item.events.some((event) => event.id === sought)) ?? null;
}

export function idsOf({ events }: LogItem): string[] {
	return events.map(({ id }) => id);
}

export function fillsIn({ events }: LogItem): FillEvent[] {
	return events.filter((event): event is FillEvent => event.kind === "fill");
}

/** What counts in the place of a void item: something of the same kind at the same time, which is how corrections are made. */
export function replacementOf(item: LogItem, items: readonly LogItem[]): LogItem | null {
	if (!item.isVoid) return null;
	const alike = (other: LogItem) =>
		!other.isVoid && other.at === item.at && other.events[0].kind === item.events[0].kind;
	return items.find(alike) ?? null;
}

export interface Outside {
	readonly side: "above" | "below";
	readonly chance: number;
}

/** On which sides of the window the chance is more than the calibration accepts. */
export function outsideOf(figures: Figures, calibration: Calibration | null): Outside[] {
	const { lean, knock } = budgetsOf(calibration);
	const sides: Outside[] = [];
	if (figures.above !== null && figures.above > lean) sides.push({ side: "above", chance: figures.above });
	if (figures.below !== null && figures.below > knock) sides.push({ side: "below", chance: figures.below });
	return sides;
}

export interface Month {
	/** Any instant of it, ISO 8601. */
	readonly at: string;
	readonly items: readonly LogItem[];
}

/** Newest first, under the months of the device's calendar, as the dates beside them are. */
export function monthsOf(newestFirst: readonly LogItem[]): Month[] {
	const months: { key: string; at: string; items: LogItem[] }[] = [];
	for (const item of newestFirst) {
		const date = new Date(item.at);
		const key = `${date.getFullYear()} ${date.getMonth()}`;
		const current = months.at(-1);
		if (current?.key === key) current.items.push(item);
		else months.push({ key, at: item.at, items: [item] });
	}
	return months;
}

/** What has to be voided for some events to count and others not: the voids against those, and these. */
export function targetsFor(
	events: readonly LogEvent[],
	counting: readonly string[],
	notCounting: readonly string[],
): string[] {
	const voids = voidedBy(events);
	return [...notCounting.filter((id) => !voids.has(id)), ...counting.flatMap((id) => voids.get(id) ?? [])];
}

/** Since when a void item is void, as far as its voids tell. */
export function voidedAt(item: LogItem, events: readonly LogEvent[]): string {
	const voids = voidedBy(events).get(item.events[0].id) ?? [];
	return events.find(({ id }) => id === voids[0])?.at ?? item.at;
}
