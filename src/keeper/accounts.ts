/** Accounts at hand: replays a log from the latest point that still holds, and remembers such points. */

import { isOdd } from "../domain/doubt/odd";
import { type Account, advanced, fingerprints, openAccount } from "../domain/estimator/replay";
import { countingEvents, type LogEvent } from "../domain/event";
import type { Car } from "../domain/vehicle";
import type { Figures, LogLine } from "./view";

/** What one event left behind: figures where it concerned the tank. */
export type Left = Omit<LogLine, "event"> | null;

/** A point of the account from which it can go on, with what was said up to it. Disposable. */
export interface Checkpoint {
	readonly account: Account;
	readonly left: readonly Left[];
}

/** The events that count, and the fingerprint of the account after each of them, the first being that of none. */
export interface Prepared {
	readonly car: Car;
	readonly counting: readonly LogEvent[];
	readonly prints: readonly number[];
}

export function preparedLog(car: Car, events: readonly LogEvent[]): Prepared {
	const counting = countingEvents(events);
	return { car, counting, prints: fingerprints(car, counting) };
}

/** Whether a point stands for the beginning of this very log. */
export function agrees(
	{ prints }: Prepared,
	account: { readonly position: number; readonly fingerprint: number },
): boolean {
	return prints[account.position] === account.fingerprint;
}

export interface Replayed {
	readonly log: Prepared;
	readonly checkpoint: Checkpoint;
	/** The last points, the newest last; for taking back. */
	readonly recent: readonly Checkpoint[];
}

/** Particles kept in memory in all: enough to take back the last few entries without a full replay. */
const rememberedParticles = 2 ** 18;

/** More tank events than a look alone is worth: they are reckoned once they are kept. A log of ten years has some thousands. */
export const mostReckoned = 3_000;

/**
 * Brings the account of a log up to date. Starts from the latest of `from` that agrees with the log, so the result is that of
 * a full replay. `passed` hears of every new point and may wait, which lets other work in.
 */
export async function replayed(
	log: Prepared,
	from: readonly Checkpoint[],
	passed: (checkpoint: Checkpoint) => Promise<void> | void = () => {},
): Promise<Replayed> {
	const recent = from.filter(({ account }) => agrees(log, account));
	recent.sort((a, b) => a.account.position - b.account.position);
	let checkpoint: Checkpoint = recent.at(-1) ?? { account: openAccount(log.car), left: [] };
	for (const event of log.counting.slice(checkpoint.account.position)) {
		const { account, entry } = advanced(checkpoint.account, event, log.car);
		const left = entry && { figures: figuresOf(entry.estimate), surprise: entry.surprise, odd: isOdd(entry) };
		checkpoint = { account, left: [...checkpoint.left, left] };
		recent.push(checkpoint);
		while (recent.length > 1 && particlesIn(recent) > rememberedParticles) recent.shift();
		await passed(checkpoint);
	}
	return { log, checkpoint, recent };
}

/** The account of the beginning of a log: from the points at hand if one of them will do, else from the disk, if that answers. */
export async function reached(
	earlier: Prepared,
	recent: readonly Checkpoint[],
	stored: (log: Prepared) => Promise<readonly Checkpoint[]>,
): Promise<Checkpoint> {
	const near = recent.some(({ account }) => agrees(earlier, account));
	return (await replayed(earlier, near ? recent : await stored(earlier).catch(() => []))).checkpoint;
}

function particlesIn(checkpoints: readonly Checkpoint[]): number {
	return checkpoints.reduce((sum, { account }) => sum + account.belief.weight.length, 0);
}

function figuresOf({ median, low, high, below, above, lawfulLow, lawfulHigh }: Figures): Figures {
	return { median, low, high, below, above, lawfulLow, lawfulHigh };
}
