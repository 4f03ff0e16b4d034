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
}
export type ReadingEvent = TankReading | PumpReading | TrimReading;

export interface LevelEvent extends Recorded {
	readonly kind: "level";
	/** Fuel gauge, fraction of the capacity. */
	readonly gauge: Fraction;
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

/**
 * The events that count, in order of replay. Voids are taken from the last to the first, so that a void may itself be
 * voided by a later one.
 */
export function countingEvents(events: readonly LogEvent[]): LogEvent[] {
	const decorated = events.map((event) => ({ event, at: instant(event.at) as Instant }));
	decorated.sort((a, b) => a.at - b.at || (a.event.id < b.event.id ? -1 : 1));
	const voided = new Set<string>();
	for (let i = decorated.length - 1; i >= 0; i--) {
		const { event } = decorated[i];
		if (event.kind === "void" && !voided.has(event.id)) voided.add(event.target);
	}
	return decorated.flatMap(({ event }) => (event.kind === "void" || voided.has(event.id) ? [] : [event]));
}
