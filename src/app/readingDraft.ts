/** A measurement as typed so far: what is kept through a killed app, and how it becomes an event. */
import type { LevelEvent, LogEvent, ReadingEvent } from "../domain/event";
import { err, ok, type Result } from "../domain/result";
import type { VolumeUnit } from "../domain/units";
import type { Car } from "../domain/vehicle";
import { isoWithOffset } from "./app";
import { readNumber } from "./numberWords";
import { typedNumber } from "./typedNumber";
import { numbersWords } from "./words/numbers";

export type ReadingKind = "analyser" | "reported" | "tube" | "trim" | "gauge";

export interface ReadingDraft<Form> {
	/** Becomes the event's id, so that what is shown before saving is what is shown after. */
	readonly id: string;
	/** Null: when it is saved. */
	readonly at: string | null;
	/** When saving was first tried: a second try must write the very same. */
	readonly triedAt: string | null;
	/** When it was typed last, ms; null: nothing is typed, or unknown. */
	readonly notedAt: number | null;
	readonly form: Form;
}

/** What a form is filled in with when it is opened. */
export interface ReadingContext {
	readonly car: Car;
	readonly events: readonly LogEvent[];
	readonly unit: VolumeUnit;
	/** A number as it was typed the last time with this instrument, else the usual one. */
	readonly usual: (instrument: Instrument) => string;
}

/** What measures, as its uncertainty is remembered on this device. */
export type Instrument = keyof typeof usualNumbers;

/** What is remembered once a measurement is saved. */
export type Remembered = Readonly<Record<string, string>>;

export function contextOf(
	car: Car,
	events: readonly LogEvent[],
	unit: VolumeUnit,
	remembered: Remembered,
): ReadingContext {
	const recall = (key: string) => (Object.hasOwn(remembered, key) ? remembered[key] : undefined);
	const usual = (instrument: Instrument) => recall(instrument) ?? typedNumber(usualNumbers[instrument]);
	return { car, events, unit, usual };
}

/** In points of ethanol unless said otherwise. */
export const usualNumbers = {
	/** Common practice, unless its maker states another. */
	analyser: "2.5",
	/** A sensor supplier's five points either way (from memory), anything within being as likely: 5 / √3. */
	sensor: "3",
	/** As far off as a trim of 3 % makes an estimate that rests on the trims. */
	inferred: "8",
	/** Half the step between two marks of a usual cylinder, mL. */
	cylinder: "0.5",
	/** Nothing: the method's own uncertainty is the usual one. */
	method: "",
	/** Percent of the fuel demand (common practice). */
	trim: "3",
} as const;

/** Without what it gets as it is recorded. */
export type Unrecorded<Event> = Event extends unknown ? Omit<Event, "id" | "at"> : never;

export type Reading = Unrecorded<ReadingEvent | LevelEvent>;

export type Faults<Form> = Partial<Record<keyof Form, string>>;
export type Read<Form, Event = Reading> = Result<Event, Faults<Form>>;

/** A stored draft, if that is what it is. Older ones do not tell when they were typed. */
export function readReadingDraft<Form>(raw: unknown): ReadingDraft<Form> | null {
	const draft = raw as Partial<ReadingDraft<Form>> | null | undefined;
	const mine = typeof draft?.id === "string" && typeof draft.form === "object" && draft.form !== null;
	return mine ? ({ notedAt: null, ...draft } as ReadingDraft<Form>) : null;
}

/** What was measured holds for so long: people drive on and fill up (common practice). */
const holdsMs = 2 * 3_600_000;

/** When it was measured, ISO 8601 with offset: as chosen, or when saving was tried, or long ago as typed; null: now. */
export function timeOf({ at, triedAt, notedAt }: ReadingDraft<unknown>, now: number): string | null {
	const typedAt = notedAt !== null && now - notedAt > holdsMs ? isoWithOffset(notedAt) : null;
	return at ?? triedAt ?? typedAt;
}

/** All of the parts, or the faults of those that are wrong. */
export function together<Parts extends Record<string, Result<unknown, string>>>(
	parts: Parts,
): Result<
	{ [Name in keyof Parts]: Parts[Name] extends Result<infer Value, string> ? Value : never },
	Partial<Record<keyof Parts, string>>
> {
	const entries = Object.entries(parts);
	const faults = entries.flatMap(([name, part]) => (part.ok ? [] : [[name, part.error] as const]));
	if (faults.length > 0) return err(Object.fromEntries(faults) as Partial<Record<keyof Parts, string>>);
	return ok(Object.fromEntries(entries.map(([name, part]) => [name, part.ok && part.value])) as never);
}

/** A standard uncertainty in points, as a fraction. */
export function readSd(typed: string, example: string): Result<number, string> {
	const [least, most] = [0.1, 25];
	const limits = numbersWords().pointLimits(typedNumber(least), typedNumber(most));
	const sd = readNumber(typed, least, most, { example, limits });
	return sd.ok ? ok(sd.value / 100) : sd;
}
