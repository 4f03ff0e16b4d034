/**
 * Histories whose truth is known: a car, its pumps and its driver drawn from the model, and the log that they leave. A
 * history that the log could not hold (a gauge beyond its ends, a fill that does not fit) is drawn anew as a whole, so that
 * what remains is distributed as the model says.
 */
import type { LogEvent } from "../../src/domain/event";
import { seedsFor, uniform } from "../../src/domain/random";
import type { Car } from "../../src/domain/vehicle";

export interface Simulated {
	readonly car: Car;
	readonly events: readonly LogEvent[];
	/** True contents after each event, in order. */
	readonly truth: readonly number[];
}

const capacityL = 58;
const flexFuel = { id: "flex", range: [0.51, 0.83] };
const e10 = { id: "e10", range: [0.09, 0.1] };

/** The n-th history: a start and four stops, now and then with a reading. */
export function simulated(n: number): Simulated {
	for (let attempt = 0; ; attempt++) {
		const history = attempted(n, attempt);
		if (history) return history;
	}
}

function attempted(n: number, attempt: number): Simulated | null {
	const seeds = seedsFor(`history ${n}, attempt ${attempt}`);
	const u = () => uniform(seeds);
	const normal = (sd: number) => sd * Math.sqrt(-2 * Math.log(u())) * Math.cos(2 * Math.PI * u());
	const within = (value: number, low: number, high: number) => {
		if (value < low || value > high) throw new Impossible();
		return value;
	};

	const car = { id: `car ${n}`, name: "car", tank: { capacityL }, calibrations: [] } as unknown as Car;
	const events: Record<string, unknown>[] = [];
	const truth: number[] = [];
	let day = 0;
	const record = (event: Record<string, unknown>) => {
		const at = new Date(1.75e12 + day * 8.64e7 + events.length * 6e4).toISOString();
		events.push({ id: `history ${n}, event ${events.length}`, at, ...event });
		truth.push(E);
	};

	const C = capacityL * (1 + normal(0.015));
	const B = normal(0.03);
	let E = 0.85 * u();
	let V = 1.08 * C * u();
	const gauge = () => within(V / C + B + normal(0.05), 0, 1);

	interface Pump {
		level: number;
		seen: number;
	}
	const areas = new Map<string, Pump>();
	const offsets = new Map<string, Pump>();
	const delivered = ({ id, range: [low, high] }: typeof flexFuel, place: string) => {
		const width = high - low;
		const area = areas.get(id) ?? { level: low + width * u(), seen: day };
		area.level += normal(0.01 * width * Math.sqrt(day - area.seen));
		if (area.level < low) area.level = 2 * low - area.level;
		if (area.level > high) area.level = 2 * high - area.level;
		areas.set(id, { level: area.level, seen: day });
		const key = `${id} ${place}`;
		const before = offsets.get(key);
		const kept = before ? Math.exp(-(day - before.seen) / 45) : 0;
		const offset = kept * (before?.level ?? 0) + normal(Math.sqrt(1 - kept * kept) * (width / 8));
		offsets.set(key, { level: offset, seen: day });
		return Math.min(1, Math.max(0, area.level + offset));
	};
	/** A reading of a truth; one in fifty is rubbish and falls anywhere. */
	const read = (value: number, sd: number) => (u() < 0.02 ? u() : within(value + normal(sd), 0, 1));
	const pour = (product: typeof flexFuel, place: string, volume: number, rest: Record<string, unknown>) => {
		const P = delivered(product, place);
		within(V + volume, 0, 1.08 * C);
		E = (V * E + volume * P) / (V + volume);
		V += volume;
		record({ kind: "fill", product, place, litres: volume / (1 + normal(0.0025)), ...rest });
	};

	try {
		record({ kind: "start", contents: { range: [0, 0.85] }, gauge: gauge() });
		for (let stop = 1; stop <= 4; stop++) {
			day += 3 + 20 * u();
			V *= u();
			const place = u() < 0.5 ? "north" : "south";
			if (u() < 0.25) {
				const value = read(delivered(flexFuel, place), 0.03);
				record({ kind: "reading", of: "pump", product: flexFuel, place, value, sd: 0.03 });
			}
			const noted = u() < 0.7 ? { gauge: gauge() } : {};
			pour(flexFuel, place, 8 + 10 * u(), { stop: `stop ${stop}`, ...noted });
			if (u() < 0.8) {
				const click = u() < 0.6;
				const volume = click ? within(C + normal(0.02 * C) - V, 0, C) : 8 + 12 * u();
				pour(e10, place, volume, { stop: `stop ${stop}`, ...(click ? { toClick: true } : {}) });
			}
			if (u() < 0.25) record({ kind: "reading", of: "tank", value: read(E, 0.025), sd: 0.025 });
		}
	} catch (error) {
		if (error instanceof Impossible) return null;
		throw error;
	}
	return { car, events: events as unknown as LogEvent[], truth };
}

class Impossible extends Error {}
