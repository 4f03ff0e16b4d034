/** Logs as drivers keep them, from a seed: fills with place, price, gauge and odometer, and a reading now and then. */

import type { LogEvent } from "../../src/domain/event";
import { seedsFor, uniform } from "../../src/domain/random";
import type { Car } from "../../src/domain/vehicle";
import type { Log } from "../../src/store/wire";
import { aCalibration, aCar } from "../helpers/logs";

/** Words that stand in the logs: none of them may be found on a server. */
export const tellingWords = [
	"Harbour Street",
	"Mill Lane",
	"flex-51-83",
	"gasoline-to-10",
	"odometerKm",
	"The grey one",
	"Stage 2",
];

const places = ["Harbour Street", "Mill Lane", "Old Bridge"];

/**
 * `side` tells the entries of two phones apart; both have the same car. Four days between two entries. Those beyond the first
 * `counting` are fills that are taken back, and what takes them back: they travel like any, and nobody reckons them.
 */
export function carLog(number: number, side: "first" | "second", count: number, counting = count): Log {
	const seeds = seedsFor(`${number} ${side}`);
	const random = () => uniform(seeds);
	const id = () => idFrom(seeds);
	const begin = Date.parse("2015-01-01T07:00:00Z") + (side === "first" ? 0 : 2 * 86_400_000);
	const at = (i: number) => new Date(begin + i * 4 * 86_400_000 + Math.floor(random() * 3_600) * 1000).toISOString();
	const events: unknown[] = [];
	let [before, taken]: (string | undefined)[] = [];
	for (let i = 0; i < count; i++) {
		const event: Record<string, unknown> & { readonly id: string } = {
			id: id(),
			at: at(i).replace(".000Z", "Z"),
			...(before !== undefined && { after: before }),
			...(taken !== undefined
				? { kind: "void", target: taken }
				: i % 8 === 7
					? reading(random)
					: fill(random, id(), i)),
		};
		before = event.id;
		taken = i >= counting && taken === undefined && i + 1 < count ? event.id : undefined;
		events.push(i === 0 && side === "first" ? { ...event, ...start } : event);
	}
	const first = events[0] as Record<string, unknown>;
	if (side === "first")
		for (const name of ["stop", "product", "litres", "place", "pricePerLitre", "odometerKm"]) delete first[name];
	return { car: theCar(number), events: events as LogEvent[] };
}

const start = { kind: "start", contents: { range: [0, 0.15] }, gauge: 0.25 };

export function theCar(number: number): Car {
	const seeds = seedsFor(`car ${number}`);
	return aCar({
		id: idFrom(seeds),
		name: `The grey one ${number}`,
		calibrations: [aCalibration({ id: idFrom(seeds) })],
	});
}

function fill(random: () => number, stop: string, i: number) {
	const flex = random() < 0.4;
	return {
		kind: "fill",
		stop,
		product: flex ? { id: "flex-51-83", range: [0.51, 0.83] } : { id: "gasoline-to-10", range: [0, 0.1] },
		litres: Math.round((flex ? 8 : 20) * (0.5 + random()) * 100) / 100,
		place: places[Math.floor(random() * places.length)],
		pricePerLitre: Math.round((1 + random()) * 1000) / 1000,
		odometerKm: 20_000 + i * 400,
		...(random() < 0.5 && { gauge: Math.round(random() * 50) / 100 }),
	};
}

function reading(random: () => number) {
	return { kind: "reading", of: "tank", value: Math.round((0.2 + 0.2 * random()) * 1000) / 1000, sd: 0.03 };
}

function idFrom(seeds: () => number): string {
	const digits = Array.from({ length: 4 }, () => seeds().toString(16).padStart(8, "0")).join("");
	return digits.replace(/^(.{8})(.{4}).(.{3}).(.{3})(.{12})$/, "$1-$2-4$3-8$4-$5");
}
