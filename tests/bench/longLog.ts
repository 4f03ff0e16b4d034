/** A made-up log of ten years: two products at every stop, seven places, now and then a gauge, a click or a reading. */
import { catalogue } from "../../src/domain/catalogue";
import type { LogEvent, Product } from "../../src/domain/event";
import { contentRange, fraction, litres } from "../../src/domain/quantity";
import { seedsFor, uniform } from "../../src/domain/random";
import type { Car } from "../../src/domain/vehicle";

export const benchCar: Car = {
	id: "bench",
	name: "Bench",
	tank: { capacityL: litres(58) },
	calibrations: [{ id: "blend-30", name: "Blend 30", calibratedFor: fraction(0.3), window: contentRange(0.26, 0.34) }],
};

const daysApart = 3.65;

/** Events of so many stops, oldest first, the last one a day before `until`. */
export function longLog(stops: number, until: number): LogEvent[] {
	const seeds = seedsFor("long log");
	const between = (low: number, high: number) => low + (high - low) * uniform(seeds);
	const [flex, e10] = ["flex-51-83", "gasoline-e10"].map(product);
	const at = (stop: number, seconds: number) =>
		new Date(until - 86_400_000 * (1 + daysApart * (stops - 1 - stop)) + seconds * 1000).toISOString();
	const events: LogEvent[] = [
		{ kind: "start", id: "start", at: at(-1, 0), contents: { range: contentRange(0.09, 0.1) }, gauge: fraction(0.3) },
	];
	for (let i = 0; i < stops; i++) {
		const shared = { kind: "fill", stop: `stop ${i}`, place: `Place ${i % 7}` } as const;
		const gauge = i % 3 === 0 ? { gauge: fraction(between(0.2, 0.35)) } : {};
		const click = i % 2 === 0 ? { toClick: true } : {};
		events.push(
			{ ...shared, id: `${i} a`, at: at(i, 0), product: flex, litres: litres(between(11, 14)), ...gauge },
			{ ...shared, id: `${i} b`, at: at(i, 60), product: e10, litres: litres(between(24, 28)), ...click },
		);
		if (i % 25 === 24) {
			events.push({ kind: "reading", of: "tank", id: `${i} r`, at: at(i, 7200), value: fraction(0.27), sd: 0.03 });
		}
	}
	return events;
}

export function product(id: string): Product {
	const entry = catalogue.find((known) => known.id === id);
	if (!entry) throw new Error(`the catalogue has no ${id}`);
	return { id, range: entry.range };
}
