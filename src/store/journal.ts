/**
 * The rescue copy's text: one line a write, each with its checksum, only ever added to. A line that was cut off or spoilt
 * counts for nothing, and those around it stand.
 */
import { digestOfText, type Head } from "./head";
import type { Held, Holdings } from "./snapshot";
import type { Written, WrittenCar } from "./written";

/** Begins with a line break, so that it can follow a line that was cut off. */
export function lineOf(written: Written): string {
	const json = JSON.stringify(written);
	return `\n${digestOfText(json).toString(36)} ${json}`;
}

export function readLines(text: string): Written[] {
	return text.split("\n").flatMap((line) => {
		const space = line.indexOf(" ");
		const json = line.slice(space + 1);
		return space > 0 && digestOfText(json).toString(36) === line.slice(0, space) ? [JSON.parse(json) as Written] : [];
	});
}

interface Copied extends Held {
	readonly events: Map<string, unknown>;
	readonly head: Head;
}

/** What the lines come to. Two tabs may have written theirs in another order than the database, so revisions decide. */
export function foldLines(lines: readonly Written[]): Holdings {
	const preferences = new Map(
		lines.flatMap((line) => ("preference" in line ? [[line.preference, line.value] as const] : [])),
	);
	const aboutCars = lines.filter((line): line is WrittenCar => "carId" in line);
	aboutCars.sort((a, b) => a.head.rev - b.head.rev);
	const cars = new Map<string, Copied>();
	for (const { carId, head, car, events = [] } of aboutCars) {
		const before = cars.get(carId);
		const known = before && before.head.rev >= (head.since ?? 0) ? before : null;
		const now = { car: car ?? known?.car, events: known?.events ?? new Map<string, unknown>(), head };
		for (const event of events) now.events.set(idOf(event), event);
		cars.set(carId, now);
	}
	return { cars, preferences };
}

/** Lost with one spoilt line. */
const eventsInALine = 20;

/** The same in as few lines as are safe. */
export function compactLines({ cars, preferences }: Holdings): string {
	const lines: Written[] = [...preferences].map(([preference, value]) => ({ preference, value }));
	for (const [carId, { car, events, head }] of cars) {
		if (head) lines.push(...linesOf({ carId, head, car, events: [...events.values()] }));
	}
	return lines.map(lineOf).join("");
}

function linesOf({ events = [], car, ...written }: WrittenCar): WrittenCar[] {
	const lines: WrittenCar[] = [{ ...written, ...(car !== undefined && { car }) }];
	for (let i = 0; i < events.length; i += eventsInALine)
		lines.push({ ...written, events: events.slice(i, i + eventsInALine) });
	return lines;
}

/** What the device has and the copy lacks, as lines to be added. */
export function newsFor(copy: Holdings, here: Holdings): Written[] {
	const news: Written[] = [];
	for (const [carId, { car, events, head }] of here.cars) {
		if (!head) continue;
		const copied = copy.cars.get(carId);
		const known = copied?.head && copied.head.rev >= (head.since ?? 0) ? copied : null;
		const added = [...events].filter(([id]) => !known?.events.has(id)).map(([, event]) => event);
		if (known?.head?.rev !== head.rev || added.length > 0) news.push(...linesOf({ carId, head, car, events: added }));
	}
	for (const [preference, value] of here.preferences) {
		if (JSON.stringify(copy.preferences.get(preference)) !== JSON.stringify(value)) news.push({ preference, value });
	}
	return news;
}

function idOf(event: unknown): string {
	return String((event as { readonly id: unknown }).id);
}
