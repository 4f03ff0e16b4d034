/** What a data log offers for the account, each reading by itself: nothing is averaged. */
import type { LogRead } from "../datalog/readLog";
import { countingEvents, type LogEvent, type TankReading, type TrimReading } from "../domain/event";
import { type Fraction, fraction } from "../domain/quantity";
import { baselineShare } from "../domain/readings/trims";
import type { Calibration, Car } from "../domain/vehicle";
import { flashedNow } from "./calibrations";
import { parseNumber } from "./parseNumber";
import { type Remembered, type Unrecorded, usualNumbers } from "./readingDraft";

export type OfferKind = "trim" | "load" | "ethanol";

/** Where the car knows its ethanol content from. */
export type EthanolSource = "inferred" | "sensor";

export type Offer = { readonly kind: OfferKind; readonly reading: Unrecorded<TrimReading | TankReading> };

interface Context {
	/** In force when the log was recorded. */
	readonly calibration: Calibration | null;
	readonly source: EthanolSource;
	/** Uncertainties as the driver typed them last. */
	readonly instruments: Remembered;
}

/** The calibration that was flashed at an instant, ms since 1970. */
export function flashedAt(car: Car, events: readonly LogEvent[], at: number): Calibration | null {
	return flashedNow(
		car,
		events.filter((event) => event.kind !== "calibration" || Date.parse(event.at) <= at),
	);
}

/** What of a log is in the account. */
export interface Saved {
	/** The events that count. */
	readonly ids: ReadonlyMap<OfferKind, string>;
	/** One does not count any more, and a reading of some data log that was corrected does: perhaps it took its place. */
	readonly perhapsCorrected: boolean;
}

const offerKinds: readonly OfferKind[] = ["trim", "load", "ethanol"];
const idStart = "log-";

/** The id of a reading names its log, so that every later look at the same log finds it; `unique` keeps tries apart. */
export function savedId(fingerprint: string, kind: OfferKind, unique: string): string {
	return `${idStart}${fingerprint}-${kind}-${unique}`;
}

export function savedOf(events: readonly LogEvent[], fingerprint: string): Saved {
	const ofLog = savedId(fingerprint, "trim", "").slice(0, -"trim-".length);
	const ids = new Map<OfferKind, string>();
	if (!events.some(({ id }) => id.startsWith(ofLog))) return { ids, perhapsCorrected: false };
	const counting = countingEvents(events);
	for (const kind of offerKinds) {
		const event = counting.find(({ id }) => id.startsWith(savedId(fingerprint, kind, "")));
		if (event) ids.set(kind, event.id);
	}
	const known = events.filter(({ id }) => id.startsWith(ofLog)).length;
	const perhapsCorrected = known > ids.size && counting.some(isCorrected);
	return { ids, perhapsCorrected };
}

/** A correction keeps the method of what it replaces, under an id of its own. */
function isCorrected(event: LogEvent): boolean {
	return event.kind === "reading" && (event.method ?? "").startsWith("data log") && !event.id.startsWith(idStart);
}

export function offersOf({ finding }: LogRead, context: Context): readonly Offer[] {
	const { steady, load, ethanol } = finding;
	const { calibration, source } = context;
	const offers: Offer[] = [];
	if (steady?.found && calibration) {
		const { value, sd, model } = steady.found;
		const reading = trimReading(value, sd, calibration.calibratedFor, "data log");
		offers.push({ kind: "trim", reading: { ...reading, baselineSd: rounded(baselineShare * model) } });
	}
	// Where trims are carried into open loop the mixture is corrected, and would tell of a blend that fits.
	if (load?.found && calibration && load.agreement !== "carried") {
		const { value, sd } = load.found;
		const method = "data log, lambda under load";
		offers.push({ kind: "load", reading: trimReading(value, sd, calibration.calibratedFor, method) });
	}
	if (ethanol) {
		const own = parseNumber(context.instruments[source] ?? usualNumbers[source], 0.1, 25);
		const sd = rounded(Math.hypot(ethanol.spread, (own.ok ? own.value : Number(usualNumbers[source])) / 100));
		const value = fraction(rounded(ethanol.value));
		const method = "data log, the car’s own report (PID 52)";
		offers.push({ kind: "ethanol", reading: { kind: "reading", of: "tank", value, sd, method } });
	}
	return offers;
}

function trimReading(value: number, sd: number, calibratedFor: Fraction, method: string): Unrecorded<TrimReading> {
	return { kind: "reading", of: "trim", value: rounded(value), sd: rounded(sd), calibratedFor, method };
}

/** Nobody needs more than hundredths of a percent. */
function rounded(value: number): number {
	return Math.round(value * 1e4) / 1e4;
}
