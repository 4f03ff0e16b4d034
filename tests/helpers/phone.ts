/** A phone as the store meets it: a database, a folder of files beside it, and what the page remembers. All outlive a restart. */
import { openDB } from "idb";
import { type Keeper, keeperOf } from "../../src/keeper/keeper";
import { copyingTo } from "../../src/store/copying";
import { type Folder, rescueIn } from "../../src/store/rescue";
import { openStore, type Store } from "../../src/store/store";
import { witnessIn } from "../../src/store/witness";

export interface MemoryFolder extends Folder {
	readonly files: Map<string, string>;
}

export function memoryFolder(): MemoryFolder {
	const files = new Map<string, string>();
	return {
		files,
		names: async () => [...files.keys()],
		read: async (name) => files.get(name) ?? "",
		append: async (name, text) => void files.set(name, (files.get(name) ?? "") + text),
		remove: async (name) => void files.delete(name),
	};
}

/** One at a time within this process. */
export function turns(): <T>(work: () => Promise<T>) => Promise<T> {
	let queue: Promise<unknown> = Promise.resolve();
	return (work) => {
		const done = queue.then(work);
		queue = done.catch(() => {});
		return done;
	};
}

export function memoryStorage(): Storage {
	const items = new Map<string, string>();
	return {
		getItem: (key: string) => items.get(key) ?? null,
		setItem: (key: string, value: string) => void items.set(key, value),
		removeItem: (key: string) => void items.delete(key),
		clear: () => items.clear(),
	} as never;
}

export interface Running {
	readonly store: Store;
	readonly keeper: Keeper;
	/** Writes what is waiting into the rescue copy. */
	copy(): Promise<void>;
	/** The page notes what every log must come to. */
	witness(): Promise<void>;
}

export type Records = Readonly<Record<string, readonly (readonly [key: IDBValidKey, value: unknown])[]>>;

const stores = ["cars", "events", "heads", "preferences"] as const;

export function aPhone(name: string, { hasFiles = true, remembers = true } = {}) {
	const folder = memoryFolder();
	const storage = memoryStorage();
	const inTurn = turns();
	const running: Store[] = [];
	const witness = witnessIn(() => storage);
	return {
		folder,
		storage,
		remembered: () => witness.recall(),
		async start(): Promise<Running> {
			const copying = copyingTo(async () => (hasFiles ? rescueIn(folder, inTurn) : null));
			const store = await openStore({ name, onWritten: copying.note });
			running.push(store);
			const keeper = keeperOf(store, copying);
			return {
				store,
				keeper,
				copy: copying.settle,
				async witness() {
					if (remembers) witness.note(await keeper.heads());
				},
			};
		},
		stop(): void {
			for (const store of running.splice(0)) store.close();
		},
		/** Everything in the database, as it lies there. */
		async records(): Promise<Records> {
			const db = await openDB(name);
			const read = async (store: string) => {
				const [keys, values] = await Promise.all([db.getAllKeys(store), db.getAll(store)]);
				return [store, keys.map((key, i) => [key, values[i]] as const)] as const;
			};
			const all = Object.fromEntries(await Promise.all(stores.map(read)));
			db.close();
			return all;
		},
		/** Behind the app's back: the database holds these records and no others. */
		async put(records: Records): Promise<void> {
			const db = await openDB(name);
			const tx = db.transaction(stores, "readwrite");
			for (const store of stores) {
				const to = tx.objectStore(store);
				to.clear();
				for (const [key, value] of records[store] ?? []) store === "cars" ? to.put(value) : to.put(value, key);
			}
			await tx.done;
			db.close();
		},
	};
}

export type Phone = ReturnType<typeof aPhone>;

/** Seeded chance, from 0 to below 1 (mulberry32). */
export function chance(seed: number): () => number {
	let state = seed >>> 0;
	return () => {
		state = (state + 0x6d2b79f5) >>> 0;
		let t = Math.imul(state ^ (state >>> 15), state | 1);
		t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
		return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
	};
}
