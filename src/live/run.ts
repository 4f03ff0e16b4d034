/** One car's replication on its way: what ends it, stirs it, and wakes it; and whose turn it is among the tabs. */
import type { LiveCar } from "./notes";
import { settable } from "./settable";

export interface Run {
	readonly car: LiveCar;
	readonly ended: Promise<void>;
	over: boolean;
	/** Whether this tab is the one that does it. */
	locked: boolean;
	changed(): Promise<void>;
	/** Something of the car has changed. */
	stir(): void;
	/** There is a reason to try at once. */
	wake(): void;
	/** Resolves after so many ms, or when woken; with `byChange` also by a change of the car. */
	woken(ms: number, byChange: boolean): Promise<void>;
	end(): void;
}

export function runOf(car: LiveCar): Run {
	const ended = settable();
	let heard: (() => void)[] = [];
	let sleeping: { byChange: boolean; done: () => void } | null = null;
	const run: Run = {
		car,
		ended: ended.promise,
		over: false,
		locked: false,
		changed: () => new Promise((done) => heard.push(done)),
		stir() {
			for (const done of heard.splice(0)) done();
			if (sleeping?.byChange) sleeping.done();
		},
		wake: () => sleeping?.done(),
		woken: (ms, byChange) =>
			new Promise((resolve) => {
				const timer = setTimeout(() => sleeping?.done(), ms);
				sleeping = {
					byChange,
					done() {
						clearTimeout(timer);
						sleeping = null;
						resolve();
					},
				};
			}),
		end() {
			run.over = true;
			ended.resolve();
			sleeping?.done();
			heard = [];
		},
	};
	return run;
}

/** Does the work while this tab is the one whose turn it is. */
export async function locked(name: string, run: Run, work: () => Promise<void>): Promise<void> {
	const begin = async () => {
		if (run.over) return;
		run.locked = true;
		await work().finally(() => {
			run.locked = false;
		});
	};
	if (typeof navigator === "undefined" || !navigator.locks) return begin();
	const giveUp = new AbortController();
	run.ended.then(() => !run.locked && giveUp.abort());
	await navigator.locks.request(name, { signal: giveUp.signal }, begin);
}
