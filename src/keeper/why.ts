/** Why the number is what it is: answered from the open account, loaded when first asked. */
import type { Belief } from "../domain/estimator/belief";
import { isTankEvent, type LogEvent, type TankEvent } from "../domain/event";
import type { Car } from "../domain/vehicle";
import { type EvidenceFound, evidenceOf } from "../domain/why/evidence";
import { type Why, whyOf } from "../domain/why/why";
import { type Checkpoint, type Prepared, preparedLog, type Replayed, reached } from "./accounts";

export interface WhyAnswer extends Why {
	/** How many events that count come before the part that was traced. */
	readonly from: number;
}

type Stored = (log: Prepared) => Promise<Checkpoint[]>;

/** Particles: widths are then sure to about a hundredth, and to about a fiftieth where the account is run many times. */
const whySample = 2 ** 14;
const evidenceSample = 2 ** 13;

/** Stops that are traced: few, as most of the fuel is young; many where that does not do. */
const [fewStops, manyStops] = [4, 12];

/** Null while the log says nothing about the tank. */
export async function whyAt(car: Car, replay: Replayed, stored: Stored): Promise<WhyAnswer | null> {
	const { counting } = replay.log;
	if (!counting.some(isTankEvent)) return null;
	const few = beginning(counting, fewStops);
	const answer = await tracedFrom(few, car, replay, stored);
	const many = beginning(counting, manyStops);
	return answer.cut && many < few ? tracedFrom(many, car, replay, stored) : answer;
}

/** What each reading, gauge, click and odometer from that position on does for the range. */
export async function evidenceAt(car: Car, replay: Replayed, stored: Stored, from: number): Promise<EvidenceFound> {
	const before = await beliefAt(from, car, replay, stored);
	return evidenceOf(before, tankEvents(replay.log.counting.slice(from)), car.tank, evidenceSample);
}

async function tracedFrom(from: number, car: Car, replay: Replayed, stored: Stored): Promise<WhyAnswer> {
	const before = await beliefAt(from, car, replay, stored);
	return { ...whyOf(before, tankEvents(replay.log.counting.slice(from)), car.tank, whySample), from };
}

/** Position of the last start, or of the first fill of so many stops ago, whichever is later. */
function beginning(counting: readonly LogEvent[], stops: number): number {
	const first = new Map<string, number>();
	let start = 0;
	for (const [position, event] of counting.entries()) {
		if (event.kind === "start") start = position;
		if (event.kind === "fill" && !first.has(event.stop)) first.set(event.stop, position);
	}
	const positions = [...first.values()];
	return Math.max(start, positions[positions.length - stops] ?? 0);
}

/** Replays are remembered by the state of the log: both questions are asked of the same one. */
const begun = new WeakMap<Replayed, { readonly position: number; readonly belief: Belief }>();

/** The account as it was kept then: whatever points are at hand, the answer is the same to the last bit. */
async function beliefAt(position: number, car: Car, replay: Replayed, stored: Stored): Promise<Belief> {
	const known = begun.get(replay);
	if (known?.position === position) return known.belief;
	const earlier = preparedLog(car, replay.log.counting.slice(0, position));
	const { belief } = (await reached(earlier, replay.recent, stored)).account;
	begun.set(replay, { position, belief });
	return belief;
}

function tankEvents(events: readonly LogEvent[]): TankEvent[] {
	return events.filter(isTankEvent);
}
