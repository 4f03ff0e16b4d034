/** A part of a car's log, or all of it, on its way from one phone to another. */
import type { LogEvent } from "../domain/event";
import { err, ok, type Result } from "../domain/result";
import type { Calibration, Car } from "../domain/vehicle";
import { mostEvents } from "../store/limits";
import { settingsIn } from "../store/settings";
import { carSchema, eventSchema, type Log } from "../store/wire";
import { readable, type Unreadable } from "./frame";
import { type Holdings, holdingsOf, knowsCalibration, lackingIn, settingsDigest } from "./holdings";
import { packed, unpacked } from "./pack";

export interface Part {
	/** Of a part only the calibrations that the other phone may lack. */
	readonly car: Car;
	/** The id of the car's first calibration, which counts until another is flashed. */
	readonly first?: string;
	readonly events: readonly LogEvent[];
	/** All that the sender has: also for a phone that has nothing of the car. */
	readonly whole: boolean;
}

/** What is to be handed over. */
export type Wanted =
	| { readonly what: "all" | "lastStop" }
	/** From an instant on, ms since 1970. */
	| { readonly what: "since"; readonly instant: number }
	| { readonly what: "lacking"; readonly holdings: Holdings };

export function partOf(car: Car, events: readonly LogEvent[], wanted: Wanted): Part {
	const first = car.calibrations[0]?.id;
	const named = first === undefined ? {} : { first };
	if (wanted.what === "all") return { car, ...named, events, whole: true };
	const lacking = wanted.what === "lacking";
	const chosen = lacking
		? lackingIn(events, wanted.holdings)
		: withTargets(events, withFollowing(events, chosenOf(events, wanted)));
	const flashed = new Set(chosen.flatMap((event) => (event.kind === "calibration" ? [event.calibration] : [])));
	const calibrations = car.calibrations.filter(({ id }) =>
		lacking ? !knowsCalibration(wanted.holdings, id) : flashed.has(id),
	);
	return { car: { ...lightly(car, wanted.what === "lastStop"), calibrations }, ...named, events: chosen, whole: false };
}

/** With a stop the fuel system, which moves no number of the account, need not travel. */
function lightly(car: Car, light: boolean): Car {
	if (!light) return car;
	const { id, name, tank, calibrations, currency, changed } = car;
	return {
		id,
		name,
		tank,
		calibrations,
		...(currency && { currency }),
		...(changed && { changed: forThese(changed) }),
	};
}

function forThese({ fuelSystem: _, ...rest }: NonNullable<Car["changed"]>): NonNullable<Car["changed"]> {
	return rest;
}

function chosenOf(events: readonly LogEvent[], wanted: Wanted): LogEvent[] {
	if (wanted.what === "since") return events.filter(({ at }) => Date.parse(at) >= wanted.instant);
	const fills = events.filter((event) => event.kind === "fill");
	const last = fills.reduce<LogEvent | undefined>(
		(newest, fill) => (newest && Date.parse(newest.at) >= Date.parse(fill.at) ? newest : fill),
		undefined,
	);
	if (last?.kind !== "fill") return [...events];
	const together = fills.filter(({ stop }) => stop === last.stop);
	const began = Math.min(...together.map(({ at }) => Date.parse(at)));
	return events.filter(({ at }) => Date.parse(at) >= began);
}

/** With what their devices wrote after them: a correction takes back by one event and puts right by another, of an earlier time. */
function withFollowing(events: readonly LogEvent[], chosen: readonly LogEvent[]): LogEvent[] {
	const following = new Map<string, LogEvent[]>();
	for (const event of events)
		if (event.after !== undefined) following.set(event.after, [...(following.get(event.after) ?? []), event]);
	return [...reachedFrom(chosen, ({ id }) => following.get(id) ?? [])];
}

/** With what they take back: the other phone may not have it yet. */
function withTargets(events: readonly LogEvent[], chosen: readonly LogEvent[]): LogEvent[] {
	const byId = new Map(events.map((event) => [event.id, event]));
	const taken = reachedFrom(chosen, (event) => {
		const target = event.kind === "void" ? byId.get(event.target) : undefined;
		return target ? [target] : [];
	});
	return events.filter((event) => taken.has(event));
}

function reachedFrom(
	chosen: readonly LogEvent[],
	onward: (event: LogEvent) => readonly LogEvent[],
): ReadonlySet<LogEvent> {
	const reached = new Set(chosen);
	// A set's loop also comes to what is added on the way.
	for (const event of reached) for (const next of onward(event)) reached.add(next);
	return reached;
}

/** What the other phone has once it has taken the part; `before`: what it was known to have. */
export function holdingsAfter(car: Car, events: readonly LogEvent[], part: Part, before: Holdings | null): Holdings {
	if (part.whole) return holdingsOf(car, events);
	const lacked = new Set((before ? lackingIn(events, before) : events).map(({ id }) => id));
	for (const { id } of part.events) lacked.delete(id);
	const given = new Set(part.car.calibrations.map(({ id }) => id));
	const calibrations = car.calibrations.filter(({ id }) => given.has(id) || (before && knowsCalibration(before, id)));
	const after = holdingsOf(
		{ ...part.car, calibrations },
		events.filter(({ id }) => !lacked.has(id)),
	);
	const knew = before?.settings === settingsDigest(car);
	return knew ? { ...after, settings: before.settings } : after;
}

export function packedPart({ car: { id, calibrations, ...settings }, first, events, whole }: Part): Uint8Array {
	return packed({ id, car: settings, first, calibrations, events, whole });
}

export function readPart(body: Uint8Array): Result<Part, Unreadable> {
	return readable(() => {
		const raw = unpacked(body) as Record<string, unknown> | null;
		if (typeof raw !== "object" || raw === null || !Array.isArray(raw.events)) return err("mangled");
		const { id, first, events, whole } = raw;
		if (events.length > mostEvents || (first !== undefined && typeof first !== "string")) return err("mangled");
		const car = carSchema.safeParse({ ...(raw.car as object), id, calibrations: raw.calibrations });
		const read = events.map((event) => eventSchema.safeParse(event));
		const sound = read.flatMap(({ success, data }) => (success ? [data] : []));
		if (!car.success || sound.length < events.length) return err("mangled");
		return ok({ car: car.data, ...(first !== undefined && { first }), events: sound, whole: whole === true });
	});
}

/** Why a part can't be joined to what is here. `otherCar`: the car is not on this phone. */
export type Unjoinable = "otherCar" | "calibrationLacking" | "entryLacking";

/** The part as the log that is to be merged with one's own, which may be a part, too. */
export function logOf(part: Part, own: Car | null, ownIds: { has(id: string): boolean }): Result<Log, Unjoinable> {
	if (part.whole) return ok({ car: part.car, events: part.events });
	if (!own) return err("otherCar");
	const byId = new Map([...own.calibrations, ...part.car.calibrations].map((each) => [each.id, each]));
	const first = part.first === undefined ? [] : [byId.get(part.first)];
	const ids = new Set(part.events.map(({ id }) => id));
	for (const event of part.events) {
		if (event.kind === "calibration" && !byId.has(event.calibration)) return err("calibrationLacking");
		if (event.kind === "void" && !ids.has(event.target) && !ownIds.has(event.target)) return err("entryLacking");
	}
	if (first.some((each) => each === undefined)) return err("calibrationLacking");
	const calibrations: Calibration[] = [];
	for (const each of [...first, ...part.car.calibrations])
		if (each && !calibrations.some(({ id }) => id === each.id)) calibrations.push(each);
	return ok({ car: { ...settingsIn(part.car, own), id: own.id, calibrations }, events: part.events });
}
