import { suspectedFrom } from "../domain/doubt/odd";
import { estimateOf, levelOf } from "../domain/estimator/estimate";
import { compareEvents, isTankEvent, type LevelEvent, type LogEvent, type ReadingEvent } from "../domain/event";
import { modelVersion } from "../domain/modelVersion";
import type { MixGrid } from "../domain/plan/mixTable";
import { ok, type Result } from "../domain/result";
import type { Car } from "../domain/vehicle";
import type { Desk } from "../live/desk";
import type { LiveAsk } from "../live/state";
import { copyingTo } from "../store/copying";
import type { Heads } from "../store/head";
import type { LogError } from "../store/logError";
import type { ReportNote } from "../store/report";
import type { Merged, Store } from "../store/store";
import { inTurns } from "../store/turns";
import { agrees, preparedLog, type Replayed, replayed } from "./accounts";
import { storedPoint, storePoint } from "./checkpoints";
import type { Ways } from "./fleet";
import type { Handed } from "./handOver";
import { mendFor } from "./mend";
import { previewsOf } from "./previews";
import type { AccountView, DraftStop, LogLine, PlanAsk, TankNow } from "./view";

export type Keeper = ReturnType<typeof keeperOf>;

/** What is kept between sessions to show the tank before the log is read. */
interface Shown {
	readonly count: number;
	readonly settings: string;
	/** None in what an older version of the app kept. */
	readonly model?: number;
	readonly now: TankNow | null;
}

/** The account that was looked at last. */
interface Open {
	readonly car: Car;
	readonly state: Replayed;
	readonly view: AccountView;
	readonly ahead: ReturnType<typeof previewsOf>;
}

/** `copying`: where what is written is copied to; nowhere unless named. */
export function keeperOf(store: Store, copying = copyingTo(async () => null)) {
	let open: Open | null = null;
	let remembered: Heads = {};
	let desk: Promise<Desk> | null = null;
	// Two replays at once would only be slower.
	const inTurn = inTurns();

	async function carOf(carId: string): Promise<Car> {
		const car = (await store.cars()).find(({ id }) => id === carId);
		if (!car) throw new RangeError(`no car with the id ${JSON.stringify(carId)} is on this device`);
		return car;
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
		open = { car, state, view, ahead: previewsOf(car, state, (other) => storedPoint(store, other)) };
		if (now) {
			const shown: Shown = { count, settings: settingsOf(car), model: modelVersion, now };
			await ifPossible(() => store.saveCheckpoint(`${carId}/shown`, shown));
		}
		return view;
	}

	/** Answered from the open account; null where there is none. */
	const asked = <T>(carId: string, answer: (from: Open) => Promise<T>): Promise<T | null> =>
		inTurn(async () => {
			if (open?.car.id !== carId) await view(carId, () => {});
			return open ? answer(open) : null;
		});

	/** How cars are reckoned that nobody looks at: in small steps. `keeping`: with points to go on from. */
	const aside = (keeping: boolean): Ways => ({
		settingsOf,
		nowOf: tankNow,
		async reckon(car, events) {
			const log = preparedLog(car, events);
			if (open?.car.id === car.id && open.state.log.prints.at(-1) === log.prints.at(-1)) return open.state;
			return replayed(log, await storedPoint(store, log), async (point) => {
				await new Promise((done) => setTimeout(done));
				if (keeping) await ifPossible(() => storePoint(store, log, point));
			});
		},
		async contradictionOf(car, state) {
			const closely = await import("./contradiction");
			const odd = await closely.oddIn(car, state, (log) => storedPoint(store, log));
			return odd && closely.contradictionOf(odd);
		},
	});

	return {
		cars: () => store.cars(),
		/** Every car at a glance, as it was last reckoned; quick. */
		fleet: async () => (await import("./fleet")).fleetOf(store, { settingsOf }),
		/** Reckons a car for the view of all, if its log has changed since. */
		async catchUp(carId: string): Promise<void> {
			// The car on the screen comes first, and need not be reckoned twice.
			await inTurn(async () => {});
			await (await import("./fleet")).caughtUp(store, carId, aside(true));
		},
		/** What a report says; nothing is kept. */
		readReport: async (text: string) => (await import("./reports")).readReport(store, text),
		/** What the entries of a report come to; null: they would take too long. */
		checkReport: async (text: string) => (await import("./reports")).checkReport(text, aside(false)),
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
		preview: (carId: string, draft: DraftStop) => asked(carId, ({ ahead }) => ahead.preview(draft)),
		/** What a reading or a look at the gauge would do, before it is saved. */
		previewReading: (carId: string, event: ReadingEvent | LevelEvent) =>
			asked(carId, async ({ car, ahead }) =>
				(await import("./readingPreview")).readingPreview(ahead.atPump, car.tank, event),
			),
		/** How much of each to pump; null where no calibration says what for. */
		plan: (carId: string, ask: PlanAsk) =>
			asked(carId, async ({ car, ahead }) => (await import("./ahead")).answered(ask, ahead.atPump, car)),
		/** What every measurement at a stop is worth; no offers: of the tank as it stands. */
		measures: (carId: string, ask: PlanAsk) =>
			asked(carId, async ({ car, ahead }) => (await import("./advice")).measuresAt(car, ahead.atPump, ask)),
		/** What is known of every place's pumps. */
		places: (carId: string, at: string) =>
			asked(carId, async ({ ahead }) => (await import("./advice")).placesKnown(ahead.atPump, at)),
		/** What the car burns and how far it goes; null while no leg was measured. */
		running: (carId: string, at: string) =>
			asked(carId, async ({ ahead }) => (await import("./running")).runningAt(ahead.atPump, at)),
		/** What is wrong among the last entries, if something is. */
		async contradiction(carId: string) {
			const closely = await import("./contradiction");
			const odd = await asked(carId, ({ car, state }) => closely.oddIn(car, state, (log) => storedPoint(store, log)));
			return odd && closely.contradictionOf(odd);
		},
		/** What carries the present uncertainty, and where the fuel comes from; null while nothing is known of the tank. */
		why: (carId: string) =>
			asked(carId, async ({ car, state }) =>
				(await import("./why")).whyAt(car, state, (log) => storedPoint(store, log)),
			),
		/** What each reading, gauge, click and odometer from a position on does for the range. */
		whyEvidence: (carId: string, from: number) =>
			asked(carId, async ({ car, state }) =>
				(await import("./why")).evidenceAt(car, state, (log) => storedPoint(store, log), from),
			),
		/** What amounts of the first two offers make of the tank; null where there are fewer. */
		table: (carId: string, ask: PlanAsk, grid: MixGrid) =>
			asked(carId, async ({ car, ahead }) => (await import("./advice")).tableAt(car, ahead.atPump, ask, grid)),

		/** On disk when this resolves. */
		append: (carId: string, events: readonly LogEvent[], options?: { dropDraft?: string }) =>
			store.append(carId, events, options),
		saveCar: (car: Car, at?: string) => store.saveCar(car, at),
		removeCar(carId: string): Promise<void> {
			// Set up anew it may come to the same count.
			if (open?.car.id === carId) open = null;
			return store.removeCar(carId);
		},
		/** `report`: what is said beside the log, which makes it a report. */
		async exportLog(carId: string, report?: ReportNote): Promise<string> {
			const { formatLog } = await import("../store/backup");
			return formatLog({ car: await carOf(carId), events: await store.events(carId) }, report);
		},
		/** The union with a log file. */
		async importLog(text: string): Promise<Result<Merged & { car: Car }, LogError>> {
			const { parseLog } = await import("../store/backup");
			const log = parseLog(text);
			if (!log.ok) return log;
			const merged = await store.merge(log.value);
			return ok({ ...merged, car: log.value.car });
		},
		/** What a log file, or a part of a log from another phone, would change. */
		async lookAt(handed: Handed) {
			// The car on the screen comes first, and may be filled meanwhile.
			await inTurn(async () => {});
			return (await handOver()).lookedAt(store, handed, aside(false).reckon);
		},
		/** The union with it. */
		take: (handed: Handed) => inTurn(async () => (await handOver()).takenIn(store, handed)),
		/** What every log must come to, for the page to remember. */
		async heads(): Promise<Heads> {
			const [heads, cars] = await Promise.all([store.heads(), store.cars()]);
			const names = new Map(cars.map(({ id, name }) => [id, { name }]));
			return Object.fromEntries(Object.entries(heads).map(([id, head]) => [id, { ...head, ...names.get(id) }]));
		},
		/** What is missing against the rescue copy and what the page remembers; null: nothing. */
		async check(heads: Heads) {
			remembered = heads;
			return (await import("./care")).checked(store, copying, heads);
		},
		/** Brings back what there is of it; gives what was missing. */
		bringBack: () =>
			inTurn(async () => {
				// Another log may come to the same count.
				open = null;
				return (await import("./care")).broughtBack(store, copying, remembered);
			}),
		/** Replication through a server of the users' own. */
		async live(ask: LiveAsk) {
			desk ??= import("../live/desk").then(({ openDesk }) => openDesk(store));
			// What could not be opened is tried again with the next question.
			desk.catch(() => {
				desk = null;
			});
			return (await desk).answer(ask);
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

const handOver = () => import("./handOver");

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

function oddNow(lines: readonly LogLine[]): boolean {
	return lines.slice(suspectedFrom(lines.map(({ event }) => event))).some(({ odd }) => odd);
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
		odd: oddNow(lines),
		mend: mendFor(account.belief, estimate, account.calibration, car.tank, state.log.counting, last.at),
	};
}
