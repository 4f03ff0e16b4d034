/**
 * One connection's worth of replication of one car: take all that has come since, send all that the server lacks, and go on
 * with both until the connection is gone. What the server has is known by reading it back alone: an answer to a send is no
 * more than a reason not to send it again on this connection. So nothing hangs on the length of the window in which the
 * server itself knows doubles, and what it loses it gets again.
 */
import type { LogEvent } from "../domain/event";
import type { Car } from "../domain/vehicle";
import type { Store } from "../store/store";
import { type Contents, nameOf, packedContents, readContents } from "./contents";
import { joinedIn } from "./joining";
import { type LiveCar, type LiveNotes, noProgress, type Progress } from "./notes";
import { lackingAt } from "./outbox";
import { type Sealer, sealerOf } from "./seal";
import type { Arrived, Reading, Wire } from "./wire";

export interface Standing {
	readonly phase: "taking" | "sending" | "caughtUp";
	/** Entries that wait to be sent. */
	readonly waiting: number;
	readonly progress: Progress;
}

export interface Surroundings {
	readonly store: Store;
	readonly notes: LiveNotes;
	/** Of the app. */
	readonly version: string;
	readonly now: () => number;
	readonly tell: (standing: Standing) => void;
	/** Resolves with the next change of the log, or whatever else is a reason to look anew. */
	readonly changed: () => Promise<void>;
	/** Resolves when it is to end, and says nothing. */
	readonly ended: Promise<void>;
}

/** The car was removed from this phone: it is not to be brought back. */
export class CarGoneError extends Error {
	override readonly name = "CarGoneError";
}

/** Messages that are opened and joined in one write. */
const batch = 1_000;
/** Messages on their way at once. */
const window = 200;

/** Ends when `ended` resolves; rejects when the connection is gone, the server refuses, or the store does. */
export async function replicate(car: LiveCar, wire: Wire, around: Surroundings): Promise<void> {
	const { store, notes, now, tell, changed, ended } = around;
	const { carId } = car;
	const sealer = await sealerOf(car.key, car.access.token);
	const begun = await beginning(car, wire, around);
	const { reading } = begun;
	let { progress } = begun;
	const known = await notes.known(carId);
	const sent = new Set<string>();
	let over = false;
	ended.then(() => {
		over = true;
	});

	async function takeIn(arrived: readonly Arrived[]): Promise<void> {
		const taken = await opened(arrived, sealer, carId);
		const before = progress;
		const joined = await joinedIn(store, carId, taken.cars, [...before.held, ...taken.events]);
		if (!joined.here && before.joined) throw new CarGoneError();
		const last = arrived[arrived.length - 1];
		const { refused } = before;
		progress = {
			...before,
			seq: last.seq,
			mark: last.mark,
			held: joined.held,
			joined: joined.here,
			heard: now(),
			news: joined.added > 0 ? now() : before.news,
			newerFrom: before.newerFrom ?? (taken.newer === null ? null : { seq: taken.newer, version: around.version }),
			refused: {
				damaged: refused.damaged + taken.damaged,
				newer: refused.newer + taken.newerCount,
				contradicting: refused.contradicting + joined.contradicting,
				again: refused.again + (arrived[0].seq > begun.readUpTo ? repetitionsIn(taken.names, known) : 0),
			},
		};
		await notes.advance(carId, progress, taken.names);
		for (const name of taken.names) known.add(name);
	}

	try {
		while (!over) {
			const arrived = reading.take(batch);
			if (arrived.length > 0) {
				await takeIn(arrived);
				continue;
			}
			if (reading.behind() > 0) {
				tell({ phase: "taking", waiting: 0, progress });
				await Promise.race([reading.news(), ended]);
				continue;
			}
			const change = changed();
			const lacking = await lackingAt(store, carId, known);
			if (!lacking && progress.joined) throw new CarGoneError();
			const unsent = (lacking ?? []).filter((contents) => !sent.has(nameOf(contents)));
			if (unsent.length > 0) {
				tell({ phase: "sending", waiting: unsent.length, progress });
				await send(unsent.slice(0, window), wire, sealer, sent);
				continue;
			}
			progress = { ...progress, heard: now(), joined: progress.joined || lacking !== null };
			tell({ phase: "caughtUp", waiting: 0, progress });
			await Promise.race([reading.news(), change, ended]);
		}
	} finally {
		reading.stop();
		// When the server was last heard of is worth keeping, and nothing more.
		await notes.advance(carId, progress, []).catch(() => {});
	}
}

async function send(lacking: readonly Contents[], wire: Wire, sealer: Sealer, sent: Set<string>): Promise<void> {
	const sending: Promise<void>[] = [];
	for (const contents of lacking) {
		const name = nameOf(contents);
		const [id, data] = await Promise.all([sealer.messageId(name), sealer.seal(packedContents(contents))]);
		const done = wire.send(id, data);
		done.catch(() => {});
		sending.push(done);
		sent.add(name);
	}
	await Promise.all(sending);
}

interface Beginning {
	readonly reading: Reading;
	readonly progress: Progress;
	/** What is read up to here was read before. */
	readonly readUpTo: number;
}

/** Where to go on: at the last message that was taken, if the server still has it. Else it has lost its end, or all. */
async function beginning({ carId }: LiveCar, wire: Wire, { notes, version, ended }: Surroundings): Promise<Beginning> {
	let progress = await notes.progress(carId);
	const { newerFrom, seq: readUpTo } = progress;
	if (newerFrom && newerFrom.version !== version) {
		// This version may read what that one could not.
		progress = {
			...progress,
			seq: newerFrom.seq - 1,
			mark: "",
			newerFrom: null,
			refused: { ...progress.refused, newer: 0 },
		};
		await notes.advance(carId, progress, []);
		return { reading: await wire.read(newerFrom.seq), progress, readUpTo };
	}
	if (progress.mark === "") return { reading: await wire.read(progress.seq + 1), progress, readUpTo };
	const reading = await wire.read(progress.seq);
	let [first] = reading.take(1);
	if (!first && reading.behind() > 0) {
		await Promise.race([reading.news(), ended]);
		[first] = reading.take(1);
	}
	if (first?.seq === progress.seq && first.mark === progress.mark) return { reading, progress, readUpTo };
	reading.stop();
	progress = {
		...noProgress,
		joined: progress.joined,
		held: progress.held,
		heard: progress.heard,
		news: progress.news,
	};
	await notes.restart(carId, progress);
	return { reading: await wire.read(1), progress, readUpTo: 0 };
}

function repetitionsIn(names: readonly string[], known: ReadonlySet<string>): number {
	return names.length - new Set(names.filter((name) => !known.has(name))).size;
}

interface Opened {
	readonly cars: Car[];
	readonly events: LogEvent[];
	readonly names: string[];
	damaged: number;
	newerCount: number;
	newer: number | null;
}

async function opened(arrived: readonly Arrived[], sealer: Sealer, carId: string): Promise<Opened> {
	const taken: Opened = { cars: [], events: [], names: [], damaged: 0, newerCount: 0, newer: null };
	for (const { seq, data } of arrived) {
		const bytes = await sealer.open(data);
		const read = bytes.ok ? readContents(bytes.value) : bytes;
		if (!read.ok) {
			if (read.error === "damaged") taken.damaged++;
			else {
				taken.newerCount++;
				taken.newer ??= seq;
			}
			continue;
		}
		const contents = read.value;
		if ("car" in contents && contents.car.id !== carId) {
			taken.damaged++;
			continue;
		}
		taken.names.push(nameOf(contents));
		if ("car" in contents) taken.cars.push(contents.car);
		else taken.events.push(contents.event);
	}
	return taken;
}
