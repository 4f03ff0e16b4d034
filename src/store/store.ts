/** What the device keeps: cars, the events of their logs, and the app's own notes. */
import type { LogEvent } from "../domain/event";
import type { Car } from "../domain/vehicle";
import { changesOf, type Listener } from "./changes";
import { type Callbacks, type Connection, connect, type StoreName, write } from "./db";
import { DuplicateIdError, StorageLostError } from "./errors";
import type { Head, Heads } from "./head";
import { longMs } from "./patience";
import { eventsOf, readCar, readEvent } from "./records";
import type { Repair } from "./repair";
import type { Holdings } from "./snapshot";
import type { Merged } from "./transactions";
import type { Log } from "./wire";
import type { Written } from "./written";

export { DuplicateIdError, RefusedError, StorageLostError, TooManyError } from "./errors";
export type { Merged } from "./transactions";

/**
 * Every operation throws StorageLostError where the browser can't do it, and every write resolves only when the data is
 * on the disk. What is no car or event by the log format, or names what is not there, is refused with a RefusedError.
 */
export interface Store {
	cars(): Promise<Car[]>;
	/**
	 * Adds or replaces a car. A calibration that an event names can't be taken away. `at`: when its settings were changed, for
	 * other phones that have them otherwise.
	 */
	saveCar(car: Car, at?: string): Promise<void>;
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
	/**
	 * The union with another copy of a car's log, or a part of one, all or nothing. Throws DuplicateIdError where they
	 * contradict.
	 */
	merge(log: Log): Promise<Merged>;
	draft(key: string): Promise<unknown>;
	saveDraft(key: string, value: unknown): Promise<void>;
	dropDraft(key: string): Promise<void>;
	preference(key: string): Promise<unknown>;
	savePreference(key: string, value: unknown): Promise<void>;
	/** What can be computed again from the events; a power cut may take it, or leave it unreadable, which is the same here. */
	checkpoint(carId: string): Promise<unknown>;
	saveCheckpoint(carId: string, value: unknown): Promise<void>;
	dropCheckpoint(carId: string): Promise<void>;
	/** What every car's log must come to, removed cars included; a car of an older version has none until it is written to. */
	heads(): Promise<Heads>;
	snapshot(): Promise<Holdings>;
	/** Puts back what went missing, all or nothing. */
	repair(repair: Repair): Promise<void>;
	/** Hears of every change to cars, events and preferences, made here or in another tab. Returns the way to stop. */
	subscribe(listener: Listener): () => void;
	close(): void;
}

interface Options extends Callbacks {
	readonly name?: string;
	/** Hears of what this connection has written, once it is on the disk. */
	readonly onWritten?: (written: Written) => void;
}

/** Opens the device's store. Throws StorageLostError. */
export async function openStore({
	name = "heeltap",
	onWritten = () => {},
	...callbacks
}: Options = {}): Promise<Store> {
	const { run, close } = connect(name, callbacks);
	await run(async () => {});
	const changes = changesOf(name);
	const drafts = notesIn(run, "drafts", "strict");
	const preferences = notesIn(run, "preferences", "strict");
	const checkpoints = notesIn(run, "checkpoints", "relaxed");
	/** Tells of what is on the disk, be it later than anyone waited for it. */
	const told = (carId: string | null) => (written: Written | null) => {
		if (written) onWritten(written);
		changes.announce(carId);
	};
	const rawEvents = (carId: string) => run((db) => db.getAll("events", eventsOf(carId)));

	return {
		async cars() {
			const raw = await run((db) => db.getAll("cars"));
			const cars = raw.flatMap(readCar);
			// Not the same as a phone without a car: nobody is to set one up anew.
			if (raw.length > 0 && cars.length === 0) throw new StorageLostError("newer");
			return cars;
		},
		async saveCar(car, at) {
			await refuseBad(car, []);
			const { saveCar } = await transactions();
			const onDone = told(null);
			await run((db) => write(db, ["cars", "events", "heads"], (tx) => saveCar(tx, car, at), { onDone }));
		},
		async removeCar(carId) {
			const { removeCar } = await transactions();
			const stores: StoreName[] = ["cars", "events", "heads", "drafts", "checkpoints"];
			await run((db) => write(db, stores, (tx) => removeCar(tx, carId), { onDone: told(null) }));
		},

		events: async (carId) => (await rawEvents(carId)).flatMap(readEvent),
		countEvents: (carId) => run((db) => db.count("events", eventsOf(carId))),
		unreadable: async (carId) => (await rawEvents(carId)).filter((raw) => readEvent(raw).length === 0).length,
		async append(carId, events, { dropDraft } = {}) {
			await refuseBad(null, events);
			const { append } = await transactions();
			const stores: StoreName[] = ["cars", "events", "heads", ...(dropDraft === undefined ? [] : ["drafts" as const])];
			const onDone = told(carId);
			try {
				await run((db) => write(db, stores, (tx) => append(tx, carId, events, dropDraft), { onDone }));
			} catch (error) {
				throw error instanceof DuplicateIdError ? new DuplicateIdError(error.of, error.id, true) : error;
			}
		},
		async merge(log) {
			await refuseBad(log.car, log.events);
			const { merge } = await transactions();
			const onDone = ({ written }: { readonly written: Written }) => {
				told(null)(written);
				changes.announce(log.car.id);
			};
			const stores: StoreName[] = ["cars", "events", "heads"];
			const whole = { withinMs: longMs, onDone };
			const { written: _, ...merged } = await run((db) => write(db, stores, (tx) => merge(tx, log), whole));
			return merged;
		},

		draft: drafts.get,
		saveDraft: drafts.set,
		dropDraft: drafts.drop,
		preference: preferences.get,
		async savePreference(key, value) {
			await preferences.set(key, value);
			told(null)({ preference: key, value });
		},
		checkpoint: (carId) => run((db) => db.get("checkpoints", carId).catch(ifTorn)),
		saveCheckpoint: checkpoints.set,
		dropCheckpoint: checkpoints.drop,

		heads: () =>
			run(async (db) => {
				const tx = db.transaction("heads");
				const [keys, heads] = await Promise.all([tx.store.getAllKeys(), tx.store.getAll()]);
				return Object.fromEntries(keys.map((carId, i) => [carId, heads[i] as Head]));
			}),
		snapshot: async () => run((await import("./snapshot")).snapshot),
		async repair(plan) {
			const { repair } = await import("./repair");
			for (const written of await run((db) => repair(db, plan))) onWritten(written);
			changes.announce(null);
			for (const { carId } of plan.cars) changes.announce(carId);
		},

		subscribe: changes.subscribe,
		close() {
			close();
			changes.close();
		},
	};
}

/** What only writing needs loads with the first write. */
const transactions = () => import("./transactions");

/** Chromium keeps large values in files of their own, and a cut may leave a value whose file can't be read, or is not there. */
const torn = ["UnknownError", "NotReadableError"];

function ifTorn(error: unknown): undefined {
	if (!(error instanceof DOMException) || !torn.includes(error.name)) throw error;
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
			run((db) => write(db, [store], async (tx) => void (await tx.objectStore(store).put(value, key)), { durability })),
		drop: (key: string): Promise<void> =>
			run((db) => write(db, [store], (tx) => tx.objectStore(store).delete(key), { durability })),
	};
}
