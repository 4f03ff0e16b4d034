/** The database: its stores, and a connection that survives being dropped by the browser. */
import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB, type StoreNames } from "idb";
import { StorageLostError } from "./errors";
import { beginFreshFile } from "./freshFile";
import { longMs, soonMs, within } from "./patience";

interface Schema extends DBSchema {
	/** Raw cars by their id. */
	cars: { key: string; value: unknown };
	/** Raw events by car and event. */
	events: { key: [carId: string, eventId: string]; value: unknown };
	drafts: { key: string; value: unknown };
	preferences: { key: string; value: unknown };
	checkpoints: { key: string; value: unknown };
	/** By car, those of removed ones too. */
	heads: { key: string; value: unknown };
}

export type Database = IDBPDatabase<Schema>;
export type StoreName = StoreNames<Schema>;
export type Writing = IDBPTransaction<Schema, StoreName[], "readwrite">;

/** Each step takes the database one version on and only adds: a version that was taken back still reads. A released step never changes. */
const steps: ((db: Database) => void)[] = [
	(db) => {
		db.createObjectStore("cars", { keyPath: "id" });
		for (const name of ["events", "drafts", "preferences", "checkpoints"] as const) db.createObjectStore(name);
	},
	(db) => void db.createObjectStore("heads"),
];

const storeNames: readonly StoreName[] = ["cars", "events", "drafts", "preferences", "checkpoints", "heads"];

export interface Callbacks {
	/** Another tab needs a newer database, or is deleting it: this one has let go. */
	onStale?: (() => void) | undefined;
	/** The browser found the database damaged and began an empty one (only Chromium says so). */
	onWiped?: (() => void) | undefined;
}

export interface Connection {
	/**
	 * Does the work; if the connection turns out lost, once more on a new one. Throws StorageLostError, also where the storage
	 * does not answer; the work may then still succeed later, so it must do no harm when it is done again.
	 */
	run<T>(work: (db: Database) => Promise<T>): Promise<T>;
	close(): void;
}

export function connect(name: string, callbacks: Callbacks): Connection {
	let handle: Promise<Database> | null = null;
	let closed = false;
	let stale = false;

	function drop(dropped: Promise<Database>): void {
		if (handle === dropped) handle = null;
		dropped.then((db) => db.close()).catch(() => {});
	}
	function current(): Promise<Database> {
		if (closed) throw new StorageLostError("closed");
		if (handle) return handle;
		const onStale = () => {
			stale = true;
			callbacks.onStale?.();
		};
		const opened = (version?: number) => open(name, version, { ...callbacks, onStale }, () => drop(opening));
		const opening: Promise<Database> = opened(steps.length).catch(async (error) => {
			if (nameOf(error) !== "VersionError") throw error;
			// A tab that has seen the newer version come is to be reloaded; else that version was taken back.
			if (stale) throw new StorageLostError("newer", error);
			const db = await opened();
			if (storeNames.every((store) => db.objectStoreNames.contains(store))) return db;
			db.close();
			throw new StorageLostError("newer", error);
		});
		handle = opening;
		opening.catch(() => drop(opening));
		return opening;
	}
	return {
		async run(work) {
			for (let attempt = 1; ; attempt++) {
				const used = current();
				try {
					return await within(work(await used), longMs);
				} catch (error) {
					if (nameOf(error) === "QuotaExceededError") throw new StorageLostError("full", error);
					const unwritten = error instanceof StorageLostError && error.reason === "unwritten";
					const slow = error instanceof StorageLostError && error.reason === "slow";
					if (!unwritten && !slow && !losses.has(nameOf(error))) throw error;
					drop(used);
					if (slow || (unwritten && attempt === 2)) throw error;
					if (attempt === 2) throw new StorageLostError("lost", error);
				}
			}
		},
		close() {
			closed = true;
			if (handle) drop(handle);
		},
	};
}

/** What is written on a connection may be lost until this has resolved. */
const fresh = new WeakMap<Database, Promise<void>>();

interface WriteOptions<T> {
	readonly durability?: IDBTransactionDurability;
	readonly withinMs?: number;
	/** Hears of the result once it is on the disk, even after `write` gave up waiting for it. */
	readonly onDone?: (result: T) => void;
}

/**
 * One transaction, all or nothing; resolves when it is on the disk, which only `strict` guarantees. The work may await
 * nothing but requests of its transaction. One that hangs is called off if it still can be.
 */
export function write<T>(
	db: Database,
	stores: StoreName[],
	work: (tx: Writing) => Promise<T>,
	{ durability = "strict", withinMs = soonMs, onDone = () => {} }: WriteOptions<T> = {},
): Promise<T> {
	const tx = db.transaction(stores, "readwrite", { durability });
	tx.done.catch(() => {});
	async function written(): Promise<T> {
		let result: T;
		try {
			result = await work(tx);
			await tx.done;
			await fresh.get(db);
		} catch (error) {
			abort(tx);
			throw failureOf(tx.error ?? error);
		}
		onDone(result);
		return result;
	}
	return within(written(), withinMs, () => abort(tx));
}

/** A full disk says nothing but this in Chromium; so does a dead connection, which another may mend. */
function failureOf(error: unknown): unknown {
	return nameOf(error) === "UnknownError" ? new StorageLostError("unwritten", error) : error;
}

function abort(tx: Writing): void {
	try {
		tx.abort();
	} catch {
		// It has aborted by itself.
	}
}

/** What browsers throw when a connection has died: suspension, a crashed process, damage. No AbortError is our own. */
const losses = new Set(["InvalidStateError", "UnknownError", "AbortError"]);

function nameOf(error: unknown): string {
	return error instanceof Error || error instanceof DOMException ? error.name : "";
}

/** Tabs let go of an old database as soon as they hear of a newer one, if they are awake and not just writing. */
const letGoWithinMs = 800;

/** Without a version it is opened as it is. */
function open(
	name: string,
	version: number | undefined,
	{ onStale, onWiped }: Callbacks,
	onLost: () => void,
): Promise<Database> {
	return new Promise((resolve, reject) => {
		let givenUp = false;
		const giveUp = (error: unknown) => {
			givenUp = true;
			clearTimeout(timer);
			reject(error);
		};
		// Another process may hold the database.
		const timer = setTimeout(() => giveUp(new StorageLostError("slow")), soonMs);
		if (typeof indexedDB === "undefined") return giveUp(new StorageLostError("refused"));
		openDB<Schema>(name, version, {
			upgrade(db, oldVersion, _newVersion, _tx, event) {
				for (const step of steps.slice(oldVersion)) step(db);
				if ((event as { dataLoss?: string }).dataLoss === "total") onWiped?.();
			},
			blocked: () => void setTimeout(() => giveUp(new StorageLostError("blocked")), letGoWithinMs),
			blocking(_version, _wanted, event) {
				(event.target as IDBDatabase).close();
				onLost();
				onStale?.();
			},
			terminated: onLost,
		}).then(
			(db) => {
				clearTimeout(timer);
				fresh.set(db, beginFreshFile(name));
				// A request that was blocked still succeeds later, and must not block others in turn.
				if (givenUp) db.close();
				else resolve(db);
			},
			(error) => giveUp(openingError(error)),
		);
	});
}

function openingError(error: unknown): unknown {
	if (nameOf(error) === "SecurityError") return new StorageLostError("refused", error);
	return error;
}
