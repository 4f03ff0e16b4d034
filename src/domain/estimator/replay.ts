/** The account of a tank: a fold of its log. */
import { countingEvents, isTankEvent, type LogEvent, type TankEvent } from "../event";
import { modelVersion } from "../modelVersion";
import type { Calibration, Car } from "../vehicle";
import { absorb, initialBelief, type Surprise } from "./absorb";
import type { Belief } from "./belief";
import { type Estimate, estimateOf } from "./estimate";

/** One event that changed or observed the tank, with what was believed after it. */
export interface Entry {
	readonly event: TankEvent;
	readonly estimate: Estimate;
	readonly surprise: Surprise | null;
	/** As in `Absorbed`. */
	readonly likelihood: number;
	/** The calibration in force, if any. */
	readonly calibration: Calibration | null;
}

/** Where the account stands after some of the events that count. */
export interface Account {
	/** How many of the events that count, in order, are in it. */
	readonly position: number;
	/** Fingerprint of those events and of the car's tank: equal fingerprints, equal accounts. */
	readonly fingerprint: number;
	readonly belief: Belief;
	readonly calibration: Calibration | null;
}

export function openAccount(car: Car): Account {
	return {
		position: 0,
		fingerprint: fingerprints(car, [])[0],
		belief: initialBelief(car.id, car.tank),
		calibration: car.calibrations[0] ?? null,
	};
}

/** The account with one more event in it, and the entry this makes, if it concerns the tank. */
export function advanced(account: Account, event: LogEvent, car: Car): { account: Account; entry: Entry | null } {
	const next = {
		...account,
		position: account.position + 1,
		fingerprint: chained(account.fingerprint, JSON.stringify(event)),
	};
	if (event.kind === "calibration") {
		const calibration = car.calibrations.find(({ id }) => id === event.calibration) ?? account.calibration;
		return { account: { ...next, calibration }, entry: null };
	}
	if (!isTankEvent(event)) return { account: next, entry: null };
	const { belief, surprise, likelihood } = absorb(account.belief, event, car.tank);
	const { calibration } = account;
	const estimate = estimateOf(belief, calibration?.window ?? null);
	return { account: { ...next, belief }, entry: { event, estimate, surprise, likelihood, calibration } };
}

/** Fingerprints of the account after 0, 1, 2 … of the events that count. */
export function fingerprints(car: Car, counting: readonly LogEvent[]): number[] {
	const prints = [chained(modelVersion, JSON.stringify([car.id, car.tank, car.calibrations]))];
	for (const [i, event] of counting.entries()) prints.push(chained(prints[i], JSON.stringify(event)));
	return prints;
}

/** Every entry of a log, in order. */
export function* replay(car: Car, events: readonly LogEvent[]): Generator<Entry> {
	let account = openAccount(car);
	for (const event of countingEvents(events)) {
		const step = advanced(account, event, car);
		account = step.account;
		if (step.entry) yield step.entry;
	}
}

/** 53-bit hash of a text, seeded with the one before (two 32-bit FNV-1a lanes). */
function chained(before: number, text: string): number {
	let a = (before | 0) ^ 0x811c9dc5;
	let b = ((before / 4294967296) | 0) ^ 0x1b873593;
	for (let i = 0; i < text.length; i++) {
		const code = text.charCodeAt(i);
		a = Math.imul(a ^ code, 0x01000193);
		b = Math.imul(b ^ code, 0x85ebca6b);
		b ^= b >>> 13;
	}
	return (b >>> 11) * 4294967296 + (a >>> 0);
}
