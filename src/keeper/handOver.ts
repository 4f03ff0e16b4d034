/** What another phone hands over: what it would change, and the taking of it. Loaded when it is first asked for. */
import { type Estimate, estimateOf } from "../domain/estimator/estimate";
import { compareEvents, countingEvents, isTankEvent, type LogEvent } from "../domain/event";
import { err, ok, type Result } from "../domain/result";
import type { Calibration, Car } from "../domain/vehicle";
import { logOf, type Part, type Unjoinable } from "../share/part";
import { parseLog } from "../store/backup";
import { holesIn } from "../store/chain";
import { type Fault, faultOf } from "../store/errors";
import type { LogError } from "../store/logError";
import { mergeCars, newcomers } from "../store/merge";
import type { Decided } from "../store/settings";
import type { Merged, Store } from "../store/store";
import type { Log } from "../store/wire";
import { mostReckoned } from "./accounts";
import type { Ways } from "./fleet";

/** A log file, or a part that came in codes. */
export type Handed = { readonly text: string } | { readonly part: Part };

/** Why it is not taken; nothing was changed. */
export type HandedFault =
	| { readonly kind: "log"; readonly error: LogError }
	| { readonly kind: "part"; readonly why: Unjoinable }
	| { readonly kind: "store"; readonly fault: Fault };

export interface Handing {
	/** As it would be. */
	readonly car: Car;
	readonly carIsNew: boolean;
	/** Entries that are new here, in order of replay; voids last. */
	readonly added: readonly LogEvent[];
	readonly known: number;
	/** Gaps: entries that the devices wrote before these and that are not here either, at least one a gap. */
	readonly lacking: number;
	readonly decided: readonly Decided[];
	readonly calibrations: readonly Calibration[];
	readonly before: Standing | null;
	readonly after: Standing | null;
	/** So many new entries that what they come to is reckoned only once they are kept. */
	readonly tooLong: boolean;
}

export interface Standing {
	readonly estimate: Estimate;
	readonly calibration: Calibration | null;
}

export type Taken = Merged & { readonly car: Car };

/** What it would change, with the numbers that keeping it would show. `reckon` lets other work in. */
export async function lookedAt(
	store: Store,
	handed: Handed,
	reckon: Ways["reckon"],
): Promise<Result<Handing, HandedFault>> {
	const read = await joinable(store, handed);
	if (!read.ok) return read;
	const { log, own, events } = read.value;
	try {
		const byId = new Map(events.map((event) => [event.id, event]));
		const added = newcomers(byId, log.events, "event");
		const { car, decided } = own ? mergeCars(own, log.car) : { car: log.car, decided: [] };
		const before = new Set(own?.calibrations.map(({ id }) => id));
		const union = [...events, ...added];
		const ids = new Set(union.map(({ id }) => id));
		const tooLong = added.filter(isTankEvent).length > mostReckoned;
		const standing = async (car: Car, events: readonly LogEvent[]): Promise<Standing | null> => {
			if (!countingEvents(events).some(isTankEvent)) return null;
			const { belief, calibration } = (await reckon(car, events)).checkpoint.account;
			return { estimate: estimateOf(belief, calibration?.window ?? null), calibration };
		};
		return ok({
			car,
			carIsNew: !own,
			added: added.sort(compareEvents),
			known: log.events.length - added.length,
			lacking: holesIn(union, ids).length,
			decided,
			calibrations: car.calibrations.filter(({ id }) => !before.has(id)),
			before: own && !tooLong ? await standing(own, events) : null,
			after: tooLong ? null : await standing(car, union),
			tooLong,
		});
	} catch (error) {
		return refused(error);
	}
}

export async function takenIn(store: Store, handed: Handed): Promise<Result<Taken, HandedFault>> {
	const read = await joinable(store, handed);
	if (!read.ok) return read;
	try {
		const merged = await store.merge(read.value.log);
		return ok({ ...merged, car: read.value.log.car });
	} catch (error) {
		return refused(error);
	}
}

interface Joinable {
	readonly log: Log;
	readonly own: Car | null;
	readonly events: readonly LogEvent[];
}

async function joinable(store: Store, handed: Handed): Promise<Result<Joinable, HandedFault>> {
	const file = "text" in handed ? parseLog(handed.text) : null;
	if (file && !file.ok) return err({ kind: "log", error: file.error });
	const part = "part" in handed ? handed.part : null;
	const carId = (part ?? file?.value)?.car.id;
	const own = (await store.cars()).find(({ id }) => id === carId) ?? null;
	const events = own ? await store.events(own.id) : [];
	if (!part) return file ? ok({ log: file.value, own, events }) : err({ kind: "part", why: "otherCar" });
	const log = logOf(part, own, new Set(events.map(({ id }) => id)));
	return log.ok ? ok({ log: log.value, own, events }) : err({ kind: "part", why: log.error });
}

/** What the store refuses is said; anything else is a fault of ours. */
function refused(error: unknown): Result<never, HandedFault> {
	const fault = faultOf(error);
	if (!fault || fault.kind === "lost") throw error;
	return err({ kind: "store", fault });
}
