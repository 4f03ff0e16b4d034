/** What a message says once it is opened: an event, or the car with its settings and calibrations. Packed like hand-overs. */
import type { LogEvent } from "../domain/event";
import { err, ok, type Result } from "../domain/result";
import type { Car } from "../domain/vehicle";
import { MangledError } from "../share/bytes";
import { packed, unpacked } from "../share/pack";
import { digestOf } from "../store/head";
import { carSchema, eventSchema } from "../store/wire";
import type { Unsealable } from "./seal";

export type Contents = { readonly event: LogEvent } | { readonly car: Car };

export function packedContents(contents: Contents): Uint8Array {
	return packed("event" in contents ? { events: [contents.event] } : contents);
}

/** By what the other phones' copies of the same are known. */
export function nameOf(contents: Contents): string {
	return "event" in contents ? contents.event.id : `car/${digestOf(contents.car)}`;
}

export function readContents(bytes: Uint8Array): Result<Contents, Unsealable> {
	let raw: unknown;
	try {
		raw = unpacked(bytes);
	} catch (error) {
		if (error instanceof MangledError) return err("damaged");
		throw error;
	}
	const { events, car } = (raw ?? {}) as Partial<Record<"events" | "car", unknown>>;
	if (car !== undefined) {
		const read = carSchema.safeParse(car);
		return read.success ? ok({ car: read.data }) : err("newer");
	}
	if (!Array.isArray(events) || events.length !== 1) return err("newer");
	const read = eventSchema.safeParse(events[0]);
	// Sealed with our key by an app that wrote it in good faith: what we can't read it knew.
	return read.success ? ok({ event: read.data }) : err("newer");
}
