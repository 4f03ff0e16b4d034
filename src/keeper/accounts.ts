/** Accounts at hand: replays a log from the latest point that still holds, and remembers such points. */

import type { Surprise } from "../domain/estimator/absorb";
import { type Account, advanced, fingerprints, openAccount } from "../domain/estimator/replay";
import { countingEvents, type LogEvent } from "../domain/event";
import type { Car } from "../domain/vehicle";
import type { Figures } from "./view";

/** What one event left behind: figures where it concerned the tank. */
export type Left = { readonly figures: Figures; readonly surprise: Surprise | null } | null;

/** A point of the account from which it can go on, with what was said up to it. Disposable. */
export interface Checkpoint {
	readonly account: Account;
	readonly left: readonly Left[];
}

/** Particles kept in memory in all: enough to take back the last few entries without a full replay. */
const rememberedParticles = 2 ** 18;

export interface Replayed {
	readonly counting: readonly LogEvent[];
	readonly checkpoint: Checkpoint;
	/** The last events' accounts, the newest last; for taking back. */
	readonly recent: readonly Checkpoint[];
}

/**
 * Brings the account of a log up to date. Starts from the latest of `from` that agrees with the log, so the result is that of
 * a full replay. `progress` hears the share done and may wait, which lets other work in.
 */
export async function replayed(
	car: Car,
	events: readonly LogEvent[],
	from: readonly Checkpoint[],
	progress: (share: number) => Promise<void> | void = () => {},
): Promise<Replayed> {
	const counting = countingEvents(events);
	const prints = fingerprints(car, counting);
	const usable = from.filter(({ account }) => prints[account.position] === account.fingerprint);
	usable.sort((a, b) => a.account.position - b.account.position);
	const recent = usable;
	let { account, left } = recent.at(-1) ?? { account: openAccount(car), left: [] };
	const start = account.position;
	for (let i = start; i < counting.length; i++) {
		const step = advanced(account, counting[i], car);
		account = step.account;
		left = [...left, step.entry && { figures: figuresOf(step.entry.estimate), surprise: step.entry.surprise }];
		recent.push({ account, left });
		while (recent.length > 1 && particlesIn(recent) > rememberedParticles) recent.shift();
		await progress((i + 1 - start) / (counting.length - start));
	}
	return { counting, checkpoint: { account, left }, recent };
}

function particlesIn(checkpoints: readonly Checkpoint[]): number {
	return checkpoints.reduce((sum, { account }) => sum + account.belief.weight.length, 0);
}

function figuresOf({ median, low, high, below, above, lawfulLow, lawfulHigh }: Figures): Figures {
	return { median, low, high, below, above, lawfulLow, lawfulHigh };
}
