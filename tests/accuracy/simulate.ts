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
	/** True levels after each event, L, and what the car last burned, L of pure gasoline per km. */
	readonly levels: readonly number[];
	readonly consumption: number;
}

const capacityL = 58;
const flexFuel = { id: "flex", range: [0.51, 0.83] };
const e10 = { id: "e10", range: [0.09, 0.1] };

/** The n-th history: a start and four stops, now and then with a reading. */
export function simulated(n: number): Simulated {
	return sooner((attempt) => attempted(`history ${n}`, attempt, { stops: 4 }));
}

/** The n-th history of a driver who measured the tank at the start and notes the gauge at every stop; no reading is rubbish. */
export function simulatedCareful(n: number): Simulated {
	return sooner((attempt) => attempted(`careful history ${n}`, attempt, { stops: 4, careful: true, rubbish: 0 }));
}

/** The n-th history of a car that burns by the kilometre, its odometer noted at each of eight stops. */
export function simulatedDriven(n: number): Simulated {
	return sooner((attempt) => attempted(`driven history ${n}`, attempt, { stops: 8, byKm: true }));
}

function sooner(attempt: (n: number) => Simulated | null): Simulated {
	for (let n = 0; ; n++) {
		const history = attempt(n);
		if (history) return history;
	}
}

/** The n-th history of a car whose fuel trims are read after every stop; of all readings that share is rubbish. */
export function simulatedTrims(n: number, rubbish: number): Simulated {
	return sooner((attempt) => attempted(`history ${n} with trims`, attempt, { stops: 6, trims: true, rubbish }));
}

interface Driver {
	readonly stops: number;
	readonly byKm?: boolean;
	readonly careful?: boolean;
	readonly trims?: boolean;
	/** Share of the readings that fall anywhere. */
	readonly rubbish?: number;
}

function attempted(name: string, attempt: number, driver: Driver): Simulated | null {
	const { stops, byKm, careful, trims, rubbish = 0.02 } = driver;
	const seeds = seedsFor(`${name}, attempt ${attempt}`);
	const u = () => uniform(seeds);
	const normal = (sd: number) => sd * Math.sqrt(-2 * Math.log(u())) * Math.cos(2 * Math.PI * u());
	const within = (value: number, low: number, high: number) => {
		if (value < low || value > high) throw new Impossible();
		return value;
	};

	const car = { id: `car of ${name}`, name: "car", tank: { capacityL }, calibrations: [] } as unknown as Car;
	const events: Record<string, unknown>[] = [];
	const truth: number[] = [];
	const levels: number[] = [];
	let day = 0;
	const record = (event: Record<string, unknown>) => {
		const at = new Date(1.75e12 + day * 8.64e7 + events.length * 6e4).toISOString();
		events.push({ id: `${name}, event ${events.length}`, at, ...event });
		truth.push(E);
		levels.push(V);
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
	/** A reading of a truth; that share is rubbish and falls anywhere. */
	const read = (value: number, sd: number) => (u() < rubbish ? u() : within(value + normal(sd), 0, 1));
	const pour = (product: typeof flexFuel, place: string, volume: number, rest: Record<string, unknown>) => {
		const P = delivered(product, place);
		within(V + volume, 0, 1.08 * C);
		E = (V * E + volume * P) / (V + volume);
		V += volume;
		record({ kind: "fill", product, place, litres: volume / (1 + normal(0.0025)), ...rest });
	};

	let baseline = trims ? normal(0.025) : 0;
	let trimmed = 0;
	/** On a calibration for 30 %; what the car is off by itself changes within a year. */
	const readTrim = () => {
		const kept = Math.exp(-(day - trimmed) / 365);
		baseline = kept * baseline + normal(0.025 * Math.sqrt(1 - kept * kept));
		trimmed = day;
		// AFR by mass times density by volume: AFR·ρ is 14.6·0.745 of gasoline and 9·0.789 of ethanol, mixed by volume.
		const demand = (content: number) => 1 / (14.6 * 0.745 * (1 - content) + 9 * 0.789 * content);
		const value = (demand(E) / demand(0.3)) * (1 + baseline) - 1 + normal(Math.sqrt(0.03 ** 2 - 0.025 ** 2));
		const shown = u() < rubbish ? u() - 0.5 : value;
		record({ kind: "reading", of: "trim", value: shown, sd: 0.03, baselineSd: 0.025, calibratedFor: 0.3 });
	};

	let consumption = byKm ? 0.09 * Math.exp(normal(0.4)) : 0;
	let odometer = 80_000;
	/** Burns some of what there is: any share of it, or what the distance asks for; a history that runs dry is impossible. */
	const drive = (km: number, stop: number) => {
		if (stop > 2) consumption *= Math.exp(normal(0.03));
		odometer += km;
		const heat = (content: number) => 43.44 * 0.745 * (1 - content) + 26.95 * 0.789 * content;
		V = within(V - ((consumption * km * heat(0)) / heat(E)) * (1 + normal(0.12)), 0, V);
	};

	try {
		const contents = careful ? { value: within(E + normal(0.025), 0, 0.85), sd: 0.025 } : { range: [0, 0.85] };
		record({ kind: "start", contents, gauge: gauge() });
		for (let stop = 1; stop <= stops; stop++) {
			day += 3 + 20 * u();
			// How much was burned before the first odometer nobody can tell.
			if (byKm && stop > 1) drive(30 + 320 * u(), stop);
			else V *= u();
			const place = u() < 0.5 ? "north" : "south";
			if (u() < 0.25) {
				const value = read(delivered(flexFuel, place), 0.03);
				record({ kind: "reading", of: "pump", product: flexFuel, place, value, sd: 0.03 });
			}
			const looked = u() < 0.7 || careful ? { gauge: gauge() } : {};
			const noted = byKm ? { ...looked, odometerKm: odometer } : looked;
			pour(flexFuel, place, 8 + 10 * u(), { stop: `stop ${stop}`, ...noted });
			if (u() < 0.8) {
				const click = u() < 0.6;
				const volume = click ? within(C + normal(0.02 * C) - V, 0, C) : 8 + 12 * u();
				pour(e10, place, volume, { stop: `stop ${stop}`, ...(click ? { toClick: true } : {}) });
			}
			if (u() < 0.25) record({ kind: "reading", of: "tank", value: read(E, 0.025), sd: 0.025 });
			if (trims) readTrim();
		}
	} catch (error) {
		if (error instanceof Impossible) return null;
		throw error;
	}
	return { car, events: events as unknown as LogEvent[], truth, levels, consumption };
}

class Impossible extends Error {}
