/** Files on their way into a phone that has a log already: each must come in whole, or be refused whole. */
import "fake-indexeddb/auto";
import { isDeepStrictEqual } from "node:util";
import { openDB } from "idb";
import { readLogFile } from "../../src/app/readLogFile";
import { countingEvents, type LogEvent } from "../../src/domain/event";
import type { Result } from "../../src/domain/result";
import { keeperOf } from "../../src/keeper/keeper";
import { type Log, parseLog } from "../../src/store/backup";
import { faultOf } from "../../src/store/errors";
import type { LogError } from "../../src/store/logError";
import { openStore } from "../../src/store/store";
import { soundTexts } from "./hostileLogs";
import { quickReplay } from "./quickReplay";
import { saidOf, sentenceOf } from "./sentences";

export interface Attempt {
	readonly outcome: "imported" | "refused";
	/** From the file's bytes to the answer, in a refusal to the words of it. */
	readonly ms: number;
	/** Why it was refused; empty where it was not. */
	readonly words: string;
}

export interface ImportingPhone {
	/** Throws an Error that says what was not as it must be. */
	take(bytes: Uint8Array<ArrayBuffer>): Promise<Attempt>;
	close(): void;
}

/** Its own log is the first of the sound ones, so that some files contradict it. */
export async function importingPhone(name: string): Promise<ImportingPhone> {
	const store = await openStore({ name });
	const keeper = keeperOf(store);
	const raw = await openDB(name);
	const own = parsedOr(soundTexts[0]);
	await store.merge(own);
	let untouched = await contents();

	/** All that is stored, read past the store's own code. */
	async function contents(names: readonly string[] = [...raw.objectStoreNames]): Promise<readonly unknown[]> {
		const tx = raw.transaction(names);
		return Promise.all(names.flatMap((name) => [tx.objectStore(name).getAllKeys(), tx.objectStore(name).getAll()]));
	}
	async function checkWhole({ car, events }: Log): Promise<void> {
		const before = car.id === own.car.id ? own.events : [];
		const wanted = new Map([...before, ...events].map((event) => [event.id, event]));
		const kept = await store.events(car.id);
		must(kept.length === wanted.size, "some of it is missing in the store");
		const other = kept.find((event) => !isDeepStrictEqual(linkless(event), linkless(wanted.get(event.id))));
		must(!other, `the store holds ${JSON.stringify(other)}`);
		const again = parseLog((await keeper.exportLog(car.id)) ?? "");
		must(again.ok, "a backup of it can't be read");
		checkFigures(car, kept);
		await keeper.removeCar(car.id);
		must(!(await store.cars()).some(({ id }) => id === car.id), "its car can't be removed");
		await store.merge(own);
		untouched = await contents();
	}

	return {
		async take(bytes) {
			const file = new File([bytes], "log.json");
			const began = performance.now();
			const text = await readLogFile(file);
			const answer = text.ok ? await keeper.importLog(text.value).then(inWords, refusal) : text;
			const ms = performance.now() - began;
			if (answer.ok) {
				await checkWhole(parsedOr(text.ok ? text.value : ""));
				return { outcome: "imported", ms, words: "" };
			}
			const words = answer.error;
			must(
				/^[^\p{Control}\p{Surrogate}\p{Format}\p{Zl}\p{Zp}]{10,400}$/u.test(words),
				`it was refused with ${JSON.stringify(words)}`,
			);
			must(isDeepStrictEqual(await contents(), untouched), "the store was changed by a file that was refused");
			return { outcome: "refused", ms, words };
		},
		close() {
			raw.close();
			store.close();
		},
	};
}

/** An event that was here already keeps its own link to the one before it. */
function linkless(event: LogEvent | undefined): unknown {
	return { ...event, after: undefined };
}

/** The store refuses what contradicts it by throwing. */
async function refusal(error: unknown): Promise<{ readonly ok: false; readonly error: string }> {
	if (faultOf(error)) return { ok: false, error: await sentenceOf(error) };
	throw error;
}

function inWords<Value>(answer: Result<Value, LogError>): Result<Value, string> {
	return answer.ok ? answer : { ok: false, error: saidOf(answer.error) };
}

/** Whatever is taken can be reckoned: a log that is allowed leads to no NaN. */
function checkFigures(car: Log["car"], events: Log["events"]): void {
	for (const { estimate } of quickReplay(car, countingEvents(events).slice(0, 50), 64)) {
		const { low, median, high } = estimate;
		must(0 <= low && low <= median && median <= high && high <= 1, `it leads to ${low}, ${median}, ${high}`);
	}
}

function parsedOr(text: string): Log {
	const log = parseLog(text.replace(/^\ufeff/, ""));
	if (!log.ok) throw new Error(saidOf(log.error));
	return log.value;
}

function must(holds: boolean, otherwise: string): void {
	if (!holds) throw new Error(otherwise);
}
