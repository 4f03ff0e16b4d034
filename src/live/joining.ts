/** Joins what came with the log of this phone: the same union as a hand-over, in one strict write. */
import type { LogEvent } from "../domain/event";
import type { Car } from "../domain/vehicle";
import { DuplicateIdError } from "../store/errors";
import { mergeCars, newcomers } from "../store/merge";
import type { Store } from "../store/store";

export interface Joined {
	/** Entries that are new here. */
	readonly added: number;
	/** What can't be joined before more has come. */
	readonly held: readonly LogEvent[];
	/** Entries and calibrations that say something else under an id that is here. */
	readonly contradicting: number;
	/** Whether the car is on this phone now. */
	readonly here: boolean;
}

/** Throws what the store throws; nothing is changed then. */
export async function joinedIn(
	store: Store,
	carId: string,
	cars: readonly Car[],
	events: readonly LogEvent[],
): Promise<Joined> {
	const own = (await store.cars()).find(({ id }) => id === carId) ?? null;
	let contradicting = 0;
	let car = own;
	for (const other of cars) {
		try {
			car = car ? mergeCars(car, other).car : other;
		} catch (error) {
			if (!(error instanceof DuplicateIdError)) throw error;
			contradicting++;
		}
	}
	if (!car) return { added: 0, held: events, contradicting, here: false };
	const stored = new Map<string, LogEvent>((own ? await store.events(carId) : []).map((event) => [event.id, event]));
	const fresh: LogEvent[] = [];
	for (const event of events) {
		try {
			for (const each of newcomers(stored, [event], "event")) {
				stored.set(each.id, each);
				fresh.push(each);
			}
		} catch (error) {
			if (!(error instanceof DuplicateIdError)) throw error;
			contradicting++;
		}
	}
	const calibrations = new Set(car.calibrations.map(({ id }) => id));
	const { joinable, held } = parted(fresh, stored, calibrations);
	if (joinable.length === 0 && cars.length === 0) return { added: 0, held, contradicting, here: true };
	const { added } = await store.merge({ car, events: joinable });
	return { added, held, contradicting, here: true };
}

/** Without the entries that name what is not here, and those that name such in turn. */
function parted(fresh: readonly LogEvent[], ids: Map<string, LogEvent>, calibrations: ReadonlySet<string>) {
	let joinable = [...fresh];
	const held: LogEvent[] = [];
	for (;;) {
		const lacking = joinable.filter(
			(event) =>
				(event.kind === "void" && !ids.has(event.target)) ||
				(event.kind === "calibration" && !calibrations.has(event.calibration)),
		);
		if (lacking.length === 0) return { joinable, held };
		held.push(...lacking);
		for (const { id } of lacking) ids.delete(id);
		const gone = new Set(lacking);
		joinable = joinable.filter((event) => !gone.has(event));
	}
}
