/**
 * What a phone has of a car's log, in a code that one QR holds: so that the other hands over only what is lacking. Every
 * device chains what it writes (`store/chain.ts`), so a chain that is whole is told by its end, its length and a sum.
 */
import * as z from "zod/mini";
import type { LogEvent } from "../domain/event";
import { err, ok, type Result } from "../domain/result";
import type { Car } from "../domain/vehicle";
import { digestOf, digestOfText } from "../store/head";
import { readable, type Unreadable, unframed } from "./frame";
import { packed, unpacked } from "./pack";

export interface Holdings {
	readonly id: string;
	/** Short digest of the car's settings. */
	readonly settings: number;
	/** Short digests of the calibrations' ids. */
	readonly calibrations: readonly number[];
	/** Of each chain, as far as it is whole from its end backwards: short digest of the end, length, sum of the digests. */
	readonly runs: readonly (readonly [end: number, length: number, sum: number])[];
}

/** Digests of 35 bits: in a log of a thousand entries two share one by a chance of 1 in 70,000, and the sum then tells. */
const modulus = 2 ** 35;
/** Most chains that are told of, the newest; a log that has more comes from a time without chains. */
const mostRuns = 24;

function shortDigest(id: string): number {
	return digestOfText(id) % modulus;
}

/** What a phone's settings of a car come to: those that differ have something to tell each other. */
export function settingsDigest({ id: _, calibrations: __, ...settings }: Car): number {
	return digestOf(settings) % modulus;
}

export function holdingsOf(car: Car, events: readonly LogEvent[]): Holdings {
	const byId = new Map(events.map((event) => [event.id, event]));
	const named = new Set(events.map(({ after }) => after));
	const ends = events.filter((event) => !named.has(event.id));
	ends.sort((a, b) => Date.parse(b.at) - Date.parse(a.at) || (a.id < b.id ? -1 : 1));
	const runs = ends.slice(0, mostRuns).map((end) => {
		const { ids, sum } = walked(end, byId, Number.POSITIVE_INFINITY);
		return [shortDigest(end.id), ids.length, sum] as const;
	});
	const calibrations = car.calibrations.map((calibration) => shortDigest(calibration.id));
	return { id: car.id, settings: settingsDigest(car), calibrations, runs };
}

/** Backwards along the chain, as far as it is here. */
function walked(end: LogEvent, byId: ReadonlyMap<string, LogEvent>, most: number): { ids: string[]; sum: number } {
	const ids: string[] = [];
	const seen = new Set<string>();
	let sum = 0;
	for (let next: LogEvent | undefined = end; next && !seen.has(next.id) && ids.length < most; ) {
		ids.push(next.id);
		seen.add(next.id);
		sum = (sum + shortDigest(next.id)) % modulus;
		next = next.after === undefined ? undefined : byId.get(next.after);
	}
	return { ids, sum };
}

/** The events that the other phone may lack; where its chains say otherwise than ours, all of them. */
export function lackingIn(events: readonly LogEvent[], { runs }: Holdings): LogEvent[] {
	const byId = new Map(events.map((event) => [event.id, event]));
	const byDigest = new Map(events.map((event) => [shortDigest(event.id), event]));
	const known = new Set<string>();
	for (const [end, length, sum] of runs) {
		const last = byDigest.get(end);
		const run = last && walked(last, byId, length);
		if (run?.ids.length === length && run.sum === sum) for (const id of run.ids) known.add(id);
	}
	return events.filter(({ id }) => !known.has(id));
}

export function knowsCalibration({ calibrations }: Holdings, id: string): boolean {
	return calibrations.includes(shortDigest(id));
}

const digest = z.int().check(z.gte(0), z.lt(modulus));
export const holdingsSchema: z.ZodMiniType<Holdings, unknown> = z.object({
	id: z.string().check(z.minLength(1), z.maxLength(200)),
	settings: digest,
	calibrations: z.array(digest).check(z.maxLength(100)),
	runs: z.array(z.tuple([digest, z.int().check(z.gte(1), z.lte(20_000)), digest])).check(z.maxLength(mostRuns)),
});

export function packedHoldings(holdings: Holdings): Uint8Array {
	return packed(holdings);
}

export function readHoldings(payload: string): Result<Holdings, Unreadable> {
	return readable(() => {
		const body = unframed("hand", payload);
		if (!body.ok) return body;
		const holdings = holdingsSchema.safeParse(unpacked(body.value));
		return holdings.success ? ok(holdings.data) : err("mangled");
	});
}
