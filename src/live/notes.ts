/**
 * What a phone keeps for replication, in a database of its own: neither backups nor hand-overs nor the rescue copy reach it,
 * so keys and credentials stay on the phone.
 */
import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { LogEvent } from "../domain/event";
import type { Access } from "../share/liveCode";

/** A car that is replicated. */
export interface LiveCar {
	readonly carId: string;
	readonly access: Access;
	readonly key: Uint8Array;
}

export interface Refused {
	/** Can't be opened: damaged, or of another car or key. */
	readonly damaged: number;
	/** Of a later version of the app. */
	readonly newer: number;
	/** Says something else under an id that is here already. */
	readonly contradicting: number;
	/** Came once more: sent by two phones at once, or played again by somebody. Changes nothing. */
	readonly again: number;
}

/** How far a car's messages were taken, and what came of it. */
export interface Progress {
	/** The last message taken; 0 before the first. */
	readonly seq: number;
	readonly mark: string;
	/** Taken, and to be joined once what they name is here. */
	readonly held: readonly LogEvent[];
	readonly refused: Refused;
	/** The first message that only a later version can read, and the version that could not; null: none. */
	readonly newerFrom: { readonly seq: number; readonly version: string } | null;
	/** Once the car was on this phone; if it is gone after that, its driver has removed it. */
	readonly joined: boolean;
	/** When the server last answered, ms since 1970; null: never. */
	readonly heard: number | null;
	/** When entries of another phone last came; null: never. */
	readonly news: number | null;
}

export const noProgress: Progress = {
	seq: 0,
	mark: "",
	held: [],
	refused: { damaged: 0, newer: 0, contradicting: 0, again: 0 },
	newerFrom: null,
	joined: false,
	heard: null,
	news: null,
};

export interface LiveNotes {
	cars(): Promise<LiveCar[]>;
	/** Begins anew where the car was replicated in another way. */
	keep(car: LiveCar): Promise<void>;
	forget(carId: string): Promise<void>;
	progress(carId: string): Promise<Progress>;
	/** Names of what the server has of the car (`nameOf`). */
	known(carId: string): Promise<Set<string>>;
	/** Both at once, or neither. */
	advance(carId: string, progress: Progress, known: Iterable<string>): Promise<void>;
	/** The server has lost something: all is to be taken and sent anew. */
	restart(carId: string, progress: Progress): Promise<void>;
	close(): void;
}

interface Schema extends DBSchema {
	cars: { key: string; value: LiveCar };
	progress: { key: string; value: Progress };
	known: { key: [carId: string, name: string]; value: 1 };
}

export async function openNotes(name: string): Promise<LiveNotes> {
	const db: IDBPDatabase<Schema> = await openDB<Schema>(name, 1, {
		upgrade(db) {
			for (const store of ["cars", "progress", "known"] as const) db.createObjectStore(store);
		},
		blocking: (_version, _wanted, event) => (event.target as IDBDatabase).close(),
	});
	const all = ["cars", "progress", "known"] as const;
	const knownOf = (carId: string) => IDBKeyRange.bound([carId], [carId, []]);
	const writing = () => db.transaction(all, "readwrite", { durability: "strict" });
	type Writing = ReturnType<typeof writing>;

	async function written(work: (tx: Writing) => Promise<unknown>[]): Promise<void> {
		const tx = writing();
		await Promise.all([...work(tx), tx.done]);
	}
	return {
		cars: () => db.getAll("cars"),
		async keep(car) {
			const before = await db.get("cars", car.carId);
			const same = before?.access.token === car.access.token && before.access.server === car.access.server;
			await written((tx) => [
				tx.objectStore("cars").put(car, car.carId),
				...(same
					? []
					: [tx.objectStore("progress").delete(car.carId), tx.objectStore("known").delete(knownOf(car.carId))]),
			]);
		},
		forget: (carId) =>
			written((tx) => [
				tx.objectStore("cars").delete(carId),
				tx.objectStore("progress").delete(carId),
				tx.objectStore("known").delete(knownOf(carId)),
			]),
		progress: async (carId) => ({ ...noProgress, ...(await db.get("progress", carId)) }),
		known: async (carId) => new Set((await db.getAllKeys("known", knownOf(carId))).map(([, name]) => name)),
		advance: (carId, progress, known) =>
			written((tx) => [
				tx.objectStore("progress").put(progress, carId),
				...[...known].map((name) => tx.objectStore("known").put(1, [carId, name])),
			]),
		restart: (carId, progress) =>
			written((tx) => [
				tx.objectStore("progress").put(progress, carId),
				tx.objectStore("known").delete(knownOf(carId)),
			]),
		close: () => db.close(),
	};
}
