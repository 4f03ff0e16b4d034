/**
 * All cars at a glance: read from what is kept of each when it is reckoned, which is when entries come in; never reckoned for
 * the list. Loaded when it is first asked for, and given what it reckons with: it shares no file with the first load.
 */
import type { LogEvent } from "../domain/event";
import { modelVersion } from "../domain/modelVersion";
import type { Car } from "../domain/vehicle";
import type { Store } from "../store/store";
import type { Replayed } from "./accounts";
import { aboutOf, checkedKey, type FleetCar, type Glance } from "./glance";
import type { Contradiction, TankNow } from "./view";

/** What is kept of a log, and which log it is of: events are only ever added, so an equal count is an equal log. */
export interface Kept {
	readonly count: number;
	readonly settings: string;
	readonly model?: number;
}

/** The keeper's own ways to reckon. */
export interface Ways {
	settingsOf(car: Car): string;
	/** Lets other questions be answered in between. */
	reckon(car: Car, events: readonly LogEvent[]): Promise<Replayed>;
	nowOf(car: Car, state: Replayed): TankNow | null;
	contradictionOf(car: Car, state: Replayed): Promise<Pick<Contradiction, "grave" | "entries"> | null>;
}

interface KeptTank extends Kept {
	readonly now: TankNow | null;
}

/** What is odd about the last entries, where something is. */
interface KeptDoubt extends Kept {
	readonly grave: boolean;
	readonly about: string;
}

/** What a full disk would not take: the watch goes on without it, as long as the app runs. */
const unkept = new WeakMap<Store, Map<string, KeptTank | KeptDoubt>>();

async function keep(store: Store, key: string, kept: KeptTank | KeptDoubt): Promise<void> {
	const held = unkept.get(store) ?? new Map<string, KeptTank | KeptDoubt>();
	unkept.set(store, held);
	try {
		await store.saveCheckpoint(key, kept);
		held.delete(key);
	} catch {
		held.set(key, kept);
	}
}

async function keptUnder(store: Store, key: string): Promise<unknown> {
	return unkept.get(store)?.get(key) ?? store.checkpoint(key);
}

const tankKey = (carId: string) => `${carId}/shown`;
const doubtKey = (carId: string) => `${carId}/doubt`;

/** Every car as it was last reckoned; quick. */
export async function fleetOf(store: Store, ways: Pick<Ways, "settingsOf">): Promise<FleetCar[]> {
	return Promise.all((await store.cars()).map((car) => fleetCar(store, car, ways)));
}

async function fleetCar(store: Store, car: Car, { settingsOf }: Pick<Ways, "settingsOf">): Promise<FleetCar> {
	const [count, tank] = await Promise.all([store.countEvents(car.id), keptUnder(store, tankKey(car.id))]);
	const stands: Required<Kept> = { count, settings: settingsOf(car), model: modelVersion };
	const kept = ifCurrent<KeptTank>(tank, stands);
	const glance = glanceOf(car, kept?.now ?? null, false);
	if (!kept) return { ...glance, current: false, checked: false };
	if (!kept.now?.odd) return { ...glance, current: true, checked: false };
	const doubt = ifCurrent<KeptDoubt>(await keptUnder(store, doubtKey(car.id)), stands);
	if (!doubt) return { ...glanceOf(car, null, false), current: false, checked: false };
	const checked = (await store.draft(checkedKey(car.id))) === doubt.about;
	return { ...glance, grave: doubt.grave, current: true, checked };
}

function ifCurrent<K extends Kept>(raw: unknown, stands: Required<Kept>): K | null {
	const kept = raw as K | undefined;
	const same = kept?.count === stands.count && kept.settings === stands.settings && kept.model === stands.model;
	return same ? (kept ?? null) : null;
}

/** Reckons a car whose entries or settings have changed, and keeps what comes of it. */
export async function caughtUp(store: Store, carId: string, ways: Ways): Promise<void> {
	const car = (await store.cars()).find(({ id }) => id === carId);
	if (!car || (await fleetCar(store, car, ways)).current) return;
	const [events, count] = await Promise.all([store.events(carId), store.countEvents(carId)]);
	const state = await ways.reckon(car, events);
	const now = ways.nowOf(car, state);
	const stands = { count, settings: ways.settingsOf(car), model: modelVersion };
	if (now?.odd) {
		const found = await ways.contradictionOf(car, state);
		const doubt: KeptDoubt = { ...stands, grave: found?.grave ?? false, about: aboutOf(found?.entries ?? []) };
		await keep(store, doubtKey(carId), doubt);
	}
	await keep(store, tankKey(carId), { ...stands, now } satisfies KeptTank);
}

export function glanceOf({ id, name }: Car, now: TankNow | null, grave: boolean): Glance {
	return {
		carId: id,
		name,
		figures: now && chancesOf(now),
		calibration: now?.calibration ?? null,
		surprise: now?.surprise ?? null,
		grave,
		lastAt: now?.last.at ?? null,
	};
}

function chancesOf({ estimate: { median, low, high, below, above } }: TankNow): Glance["figures"] {
	return { median, low, high, below, above };
}
