/** What the device keeps: cars, the events of their logs, and the app's own notes. */
import type { LogEvent } from "../domain/event";
import type { Car } from "../domain/vehicle";
import { changesOf, type Listener } from "./changes";
import { type Callbacks, type Connection, connect, type StoreName, write } from "./db";
import { eventsOf, readCar, readEvent, refuse } from "./records";
import { referenceError } from "./references";
import { append, type Merged, merge, removeCar, saveCar } from "./transactions";
import type { Log } from "./wire";

export { DuplicateIdError, StorageLostError } from "./errors";
export type { Merged } from "./transactions";

/**
 * Every operation throws StorageLostError where the browser can't do it, and every write resolves only when the data is
 * on the disk. What is no car or event by the log format, or names what is not there, is refused with a RangeError.
 */
export interface Store {
	cars(): Promise<Car[]>;
	/** Adds or replaces a car. A calibration that an event names can't be taken away. */
	saveCar(car: Car): Promise<void>;
	/** With the car go its events, and the drafts and checkpoints whose key is its id or begins with its id and a slash. */
	removeCar(carId: string): Promise<void>;
	/** In no particular order; without those this version can't read. */
	events(carId: string): Promise<LogEvent[]>;
	/** How many events there are, the unreadable included. */
	countEvents(carId: string): Promise<number>;
	/** How many events a newer version of the app wrote. They are kept; a backup made now would lack them. */
	unreadable(carId: string): Promise<number>;
	/**
	 * All or none. An event that is there already with the same contents is left; with others: DuplicateIdError. The
	 * draft that became these events goes in the same transaction.
	 */
	append(carId: string, events: readonly LogEvent[], options?: { dropDraft?: string }): Promise<void>;
	/** The union with another copy of a car's log, all or nothing. Throws DuplicateIdError where they contradict. */
	merge(log: Log): Promise<Merged>;
	draft(key: string): Promise<unknown>;
	saveDraft(key: string, value: unknown): Promise<void>;
	dropDraft(key: string): Promise<void>;
	preference(key: string): Promise<unknown>;
	savePreference(key: string, value: unknown): Promise<void>;
	/** What can be computed again from the events; a power cut may take it. */
	checkpoint(carId: string): Promise<unknown>;
	saveCheckpoint(carId: string, value: unknown): Promise<void>;
	dropCheckpoint(carId: string): Promise<void>;
	/** Hears of every change to cars, events and preferences, made here or in another tab. Returns the way to stop. */
	subscribe(listener: Listener): () => void;
	close(): void;
}

/** Opens the device's store. Throws StorageLostError. */
export async function openStore({
	name = "heeltap",
	...callbacks
}: Callbacks & { name?: string } = {}): Promise<Store> {
	const { run, close } = connect(name, callbacks);
	await run(async () => {});
	const changes = changesOf(name);
	const drafts = notesIn(run, "drafts", "strict");
	const preferences = notesIn(run, "preferences", "strict");
	const checkpoints = notesIn(run, "checkpoints", "relaxed");
	const rawEvents = (carId: string) => run((db) => db.getAll("events", eventsOf(carId)));

	return {
		cars: async () => (await run((db) => db.getAll("cars"))).flatMap(readCar),
		async saveCar(car) {
			await refuseBad(car, []);
			await run((db) => write(db, ["cars", "events"], (tx) => saveCar(tx, car)));
			changes.announce(null);
		},
		async removeCar(carId) {
			await run((db) => write(db, ["cars", "events", "drafts", "checkpoints"], (tx) => removeCar(tx, carId)));
			changes.announce(null);
		},

		events: async (carId) => (await rawEvents(carId)).flatMap(readEvent),
		countEvents: (carId) => run((db) => db.count("events", eventsOf(carId))),
		unreadable: async (carId) => (await rawEvents(carId)).filter((raw) => readEvent(raw).length === 0).length,
		async append(carId, events, { dropDraft } = {}) {
			await refuseBad(null, events);
			const stores: StoreName[] = dropDraft === undefined ? ["cars", "events"] : ["cars", "events", "drafts"];
			await run((db) => write(db, stores, (tx) => append(tx, carId, events, dropDraft)));
			changes.announce(carId);
		},
		async merge(log) {
			await refuseBad(log.car, log.events);
			refuse(referenceError(log, log));
			const merged = await run((db) => write(db, ["cars", "events"], (tx) => merge(tx, log)));
			changes.announce(null);
			changes.announce(log.car.id);
			return merged;
		},

		draft: drafts.get,
		saveDraft: drafts.set,
		dropDraft: drafts.drop,
		preference: preferences.get,
		async savePreference(key, value) {
			await preferences.set(key, value);
			changes.announce(null);
		},
		checkpoint: checkpoints.get,
		saveCheckpoint: checkpoints.set,
		dropCheckpoint: checkpoints.drop,

		subscribe: changes.subscribe,
		close() {
			close();
			changes.close();
		},
	};
}

async function refuseBad(car: Car | null, events: readonly LogEvent[]): Promise<void> {
	const checks = await import("./checks");
	checks.refuseBad(car, events);
}

function notesIn(
	run: Connection["run"],
	store: "drafts" | "preferences" | "checkpoints",
	durability: IDBTransactionDurability,
) {
	return {
		get: (key: string): Promise<unknown> => run((db) => db.get(store, key)),
		set: (key: string, value: unknown): Promise<void> =>
			run((db) => write(db, [store], async (tx) => void (await tx.objectStore(store).put(value, key)), durability)),
		drop: (key: string): Promise<void> =>
			run((db) => write(db, [store], (tx) => tx.objectStore(store).delete(key), durability)),
	};
}
