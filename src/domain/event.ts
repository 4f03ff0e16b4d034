/** What a log holds: the car, and facts about its tank. Nothing is edited in place: a correction is a void and a new event. */
import { type ContentRange, type Fraction, type Instant, instant, type Litres } from "./quantity";

/** A fuel as bought: its name in the log and the contents its label allows. */
export interface Product {
	readonly id: string;
	readonly range: ContentRange;
}

interface Recorded {
	readonly id: string;
	/** ISO 8601 with offset, kept as it was written. */
	readonly at: string;
	/** Id of the event that the same device wrote before it for this car: shows a hole in the log, and nothing of the tank. */
	readonly after?: string;
}

/** What the driver can vouch for: limits, or a value with its standard uncertainty. */
export type Contents = { readonly range: ContentRange } | { readonly value: Fraction; readonly sd: number };

export interface StartEvent extends Recorded {
	readonly kind: "start";
	readonly contents: Contents;
	/** Fuel gauge, fraction of the capacity. */
	readonly gauge?: Fraction;
}

export interface FillEvent extends Recorded {
	readonly kind: "fill";
	/** Shared by all fills of one stop: nothing is burned between them. */
	readonly stop: string;
	readonly product: Product;
	/** As the dispenser displayed. */
	readonly litres: Litres;
	readonly place?: string;
	/** Fuel gauge before the stop's first fill, fraction of the capacity. */
	readonly gauge?: Fraction;
	/** Filled until the nozzle's first click. */
	readonly toClick?: boolean;
	/** Odometer at the stop, km. */
	readonly odometerKm?: number;
	/** What a litre cost, in the car's currency. */
	readonly pricePerLitre?: number;
}

interface Measured extends Recorded {
	readonly kind: "reading";
	/** Standard uncertainty, in the unit of the value. */
	readonly sd: number;
	readonly method?: string;
}

/** The content of the tank, or of a sample from a pump, volume fraction. */
export interface TankReading extends Measured {
	readonly of: "tank";
	readonly value: Fraction;
}
export interface PumpReading extends Measured {
	readonly of: "pump";
	readonly value: Fraction;
	readonly place: string;
	readonly product: Product;
}
/** Closed-loop fuel trim, K(E)/K(E₀) − 1, on a calibration made for E₀. */
export interface TrimReading extends Measured {
	readonly of: "trim";
	readonly value: number;
	readonly calibratedFor: Fraction;
	/**
	 * The part of `sd` that is the car's own and the same in all its trims, to be learned; less than `sd`. Left out: nothing
	 * is learned.
	 */
	readonly baselineSd?: number;
}
export type ReadingEvent = TankReading | PumpReading | TrimReading;

export interface LevelEvent extends Recorded {
	readonly kind: "level";
	/** Fuel gauge, fraction of the capacity. */
	readonly gauge: Fraction;
	/** Odometer, km. */
	readonly odometerKm?: number;
}

export interface CalibrationEvent extends Recorded {
	readonly kind: "calibration";
	/** The calibration now flashed to the car. */
	readonly calibration: string;
}

export interface VoidEvent extends Recorded {
	readonly kind: "void";
	/** The event that is not to count. */
	readonly target: string;
}

export type LogEvent = StartEvent | FillEvent | ReadingEvent | LevelEvent | CalibrationEvent | VoidEvent;

/** The events that change or observe the tank. */
export type TankEvent = StartEvent | FillEvent | ReadingEvent | LevelEvent;

export function isTankEvent(event: LogEvent): event is TankEvent {
	return event.kind !== "calibration" && event.kind !== "void";
}

/** Order of replay: by instant, then by id. */
export function compareEvents(a: LogEvent, b: LogEvent): number {
	return instant(a.at) - instant(b.at) || (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);
}

/** The events that count, in order of replay. */
export function countingEvents(events: readonly LogEvent[]): LogEvent[] {
	const decorated = events.map((event) => ({ event, at: instant(event.at) as Instant }));
	decorated.sort((a, b) => a.at - b.at || (a.event.id < b.event.id ? -1 : 1));
	const ordered = decorated.map(({ event }) => event);
	const voided = voidedIn(ordered);
	return ordered.filter((event) => event.kind !== "void" && !voided.has(event.id));
}

/**
 * The ids of events that do not count. A void may itself be voided, whatever their times say: clocks differ, and two taps
 * may share a minute. So a void is decided once all that aim at it are; of voids that aim at each other the last goes first.
 */
function voidedIn(ordered: readonly LogEvent[]): Set<string> {
	const voids = new Map(ordered.flatMap((event) => (event.kind === "void" ? [[event.id, event] as const] : [])));
	const undecided = new Map<string, number>();
	for (const { target } of voids.values()) undecided.set(target, (undecided.get(target) ?? 0) + 1);
	const free = [...voids.values()].filter(({ id }) => !undecided.has(id));
	const decided = new Set<string>();
	const voided = new Set<string>();
	for (const first of [...free, ...[...voids.values()].reverse()]) {
		let next: VoidEvent | undefined = first;
		while (next !== undefined && !decided.has(next.id)) {
			decided.add(next.id);
			if (!voided.has(next.id)) voided.add(next.target);
			const left: number = (undecided.get(next.target) ?? 0) - 1;
			undecided.set(next.target, left);
			next = left > 0 ? undefined : voids.get(next.target);
		}
	}
	return voided;
}

/** The ids of events that do not count, each with the voids that count against it. */
export function voidedBy(events: readonly LogEvent[]): Map<string, string[]> {
	const ordered = [...events].sort(compareEvents);
	const voids = new Map([...voidedIn(ordered)].map((id): [string, string[]] => [id, []]));
	for (const event of ordered)
		if (event.kind === "void" && !voids.has(event.id)) voids.get(event.target)?.push(event.id);
	return voids;
}
