/**
 * The one who keeps the accounts: reads and writes the store, replays logs, looks ahead. Runs in a worker, so that neither
 * the disk nor the estimator ever holds up the screen; tests run it beside the page.
 */
import { absorb } from "../domain/estimator/absorb";
import type { Belief } from "../domain/estimator/belief";
import { estimateOf, levelOf } from "../domain/estimator/estimate";
import { outlookOf } from "../domain/estimator/outlook";
import { prepared, smallSample } from "../domain/estimator/resample";
import { compareEvents, countingEvents, isTankEvent, type LogEvent } from "../domain/event";
import { seedsFor } from "../domain/random";
import { err, ok, type Result } from "../domain/result";
import type { Car } from "../domain/vehicle";
import type { Merged, Store } from "../store/store";
import { agrees, type Checkpoint, type Prepared, preparedLog, type Replayed, replayed } from "./accounts";
import { storedPoint, storePoint } from "./checkpoints";
import { mendFor } from "./mend";
import type { AccountView, DraftStop, LogLine, Preview, TankNow } from "./view";

export type Keeper = ReturnType<typeof keeperOf>;

/** What is kept between sessions to show the tank before the log is read. */
interface Shown {
	readonly count: number;
	readonly settings: string;
	readonly now: TankNow;
}

export function keeperOf(store: Store) {
	let open: { car: Car; events: LogEvent[]; state: Replayed; view: AccountView } | null = null;
	let queue: Promise<unknown> = Promise.resolve();
	/** One thing after another: two replays at once would only be slower. */
	function inTurn<T>(work: () => Promise<T>): Promise<T> {
		const done = queue.then(work);
		queue = done.catch(() => {});
		return done;
	}

	async function carOf(carId: string): Promise<Car> {
		const car = (await store.cars()).find(({ id }) => id === carId);
		if (!car) throw new RangeError(`no car with the id ${JSON.stringify(carId)} is on this device`);
		return car;
	}

	/** Accounts of parts of the open log, for previews of stops that lie back in time; the last one is remembered. */
	let base: Checkpoint | null = null;
	async function baseOf(log: Prepared): Promise<Checkpoint> {
		const known = [...(open?.state.recent ?? []), ...(base ? [base] : [])];
		const near = known.some(({ account }) => agrees(log, account));
		const { checkpoint } = await replayed(log, near ? known : await storedPoint(store, log));
		base = checkpoint;
		return checkpoint;
	}

	async function view(carId: string, progress: (share: number) => void): Promise<AccountView> {
		const [car, count] = await Promise.all([carOf(carId), store.countEvents(carId)]);
		// Events are only ever added, so an equal count is an equal log.
		if (open && open.view.count === count && JSON.stringify(open.car) === JSON.stringify(car)) return open.view;
		const events = await store.events(carId);
		const log = preparedLog(car, events);
		const known = open?.car.id === carId ? open.state.recent : [];
		const from = known.some(({ account }) => agrees(log, account)) ? known : await storedPoint(store, log);
		const state = await replayed(log, from, async (point) => {
			progress(point.account.position / log.counting.length);
			await ifPossible(() => storePoint(store, log, point));
		});
		const now = tankNow(car, state);
		const lines = linesOf(state);
		const view = { car, count, now, lines, events: events.sort(compareEvents), unreadable: count - events.length };
		open = { car, events, state, view };
		if (now) {
			const shown: Shown = { count, settings: settingsOf(car), now };
			await ifPossible(() => store.saveCheckpoint(`${carId}/shown`, shown));
		}
		return view;
	}

	return {
		cars: () => store.cars(),
		/** The tank as last seen, if nothing has changed since; quick. */
		async shown(carId: string): Promise<TankNow | null> {
			const [car, count, raw] = await Promise.all([
				carOf(carId),
				store.countEvents(carId),
				store.checkpoint(`${carId}/shown`),
			]);
			const shown = raw as Shown | undefined;
			return shown && shown.count === count && shown.settings === settingsOf(car) ? shown.now : null;
		},
		/** All events this version can read, in order; quick. */
		events: async (carId: string) => (await store.events(carId)).sort(compareEvents),
		account: (carId: string, progress: (share: number) => void = () => {}) => inTurn(() => view(carId, progress)),
		preview: (carId: string, draft: DraftStop) =>
			inTurn(async () => {
				if (open?.car.id !== carId) await view(carId, () => {});
				return open && previewOf(open.car, open.events, draft, baseOf);
			}),

		/** On disk when this resolves. */
		append: (carId: string, events: readonly LogEvent[], options?: { dropDraft?: string }) =>
			store.append(carId, events, options),
		saveCar: (car: Car) => store.saveCar(car),
		removeCar(carId: string): Promise<void> {
			// Set up anew it may come to the same count.
			if (open?.car.id === carId) open = null;
			return store.removeCar(carId);
		},
		async exportLog(carId: string): Promise<string> {
			const { formatLog } = await import("../store/backup");
			return formatLog({ car: await carOf(carId), events: await store.events(carId) });
		},
		/** The union with a log file; the error is a sentence. */
		async importLog(text: string): Promise<Result<Merged & { car: Car }, string>> {
			const { describeLogError, parseLog } = await import("../store/backup");
			const log = parseLog(text);
			if (!log.ok) return err(describeLogError(log.error));
			const merged = await store.merge(log.value);
			return ok({ ...merged, car: log.value.car });
		},
		draft: (key: string) => store.draft(key),
		saveDraft: (key: string, value: unknown) => store.saveDraft(key, value),
		dropDraft: (key: string) => store.dropDraft(key),
		preference: (key: string) => store.preference(key),
		savePreference: (key: string, value: unknown) => store.savePreference(key, value),
		/** Hears of changes, also those made in other tabs; null: the cars or the preferences. */
		subscribe: (listener: (carId: string | null) => void) => void store.subscribe(listener),
	};
}

function settingsOf({ tank, calibrations }: Car): string {
	return JSON.stringify([tank, calibrations]);
}

/** What can be computed again is kept if it can be; a full disk must not stop anything. */
async function ifPossible(work: () => Promise<void>): Promise<void> {
	try {
		await work();
	} catch {}
}

function linesOf({ log, checkpoint }: Replayed): LogLine[] {
	return log.counting.flatMap((event, i) => {
		const left = checkpoint.left[i];
		return left && isTankEvent(event) ? [{ event, ...left }] : [];
	});
}

function tankNow(car: Car, state: Replayed): TankNow | null {
	const { account } = state.checkpoint;
	const lines = linesOf(state);
	const newest = lines.at(-1);
	if (!newest) return null;
	const { event: last, surprise } = newest;
	const estimate = estimateOf(account.belief, account.calibration?.window ?? null);
	const together =
		last.kind === "fill" ? lines.filter(({ event }) => event.kind === "fill" && event.stop === last.stop) : [newest];
	const before = lines[lines.indexOf(together[0]) - 1];
	return {
		estimate,
		level: levelOf(account.belief),
		calibration: account.calibration,
		last,
		surprise,
		lastStop: together.flatMap(({ event }) => (event.kind === "fill" ? [event] : [])),
		medianBefore: before ? before.figures.median : null,
		mend: mendFor(account.belief, estimate, account.calibration, car.tank, state.log.counting, last.at),
	};
}

async function previewOf(
	car: Car,
	events: readonly LogEvent[],
	draft: DraftStop,
	baseOf: (log: Prepared) => Promise<Checkpoint>,
): Promise<Preview> {
	const { fills, next, instead } = draft;
	const first = fills[0] ?? next;
	const counting = countingEvents(events);
	const before = counting.filter(
		(event) => !instead.includes(event.id) && (!first || Date.parse(event.at) <= Date.parse(first.at)),
	);
	const checkpoint = await baseOf(preparedLog(car, before));
	const { calibration } = checkpoint.account;
	const window = calibration?.window ?? null;
	// A smaller sample than the kept one, where that is large: quick enough to follow the typing.
	const start = prepared(checkpoint.account.belief, smallSample, seedsFor("preview"));
	let belief: Belief = start;
	let beforeLast: Belief = start;
	let surprise = null;
	for (const fill of fills) {
		beforeLast = belief;
		({ belief, surprise } = absorb(belief, fill, car.tank, smallSample));
	}
	const estimate = estimateOf(belief, window);
	const pour = next ?? fills.at(-1);
	const at = fills.at(-1)?.at ?? first?.at ?? "";
	return {
		estimate,
		surprise,
		before: estimateOf(start, window),
		calibration,
		outlook: window && pour ? outlookOf(next ? belief : beforeLast, pour, car.tank, window) : null,
		mend: fills.length > 0 ? mendFor(belief, estimate, calibration, car.tank, [...before, ...fills], at) : null,
	};
}
