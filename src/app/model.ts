/** The app's state: what the keeper says, held for the screens, and the few things that can be done. */
import { useEffect, useState } from "preact/hooks";
import { countingEvents, type FillEvent, type LogEvent } from "../domain/event";
import type { Result } from "../domain/result";
import type { VolumeUnit } from "../domain/units";
import type { Car } from "../domain/vehicle";
import type { Damage } from "../keeper/care";
import type { Handed } from "../keeper/handOver";
import type { DraftStop, PlanAnswer, PlanAsk, Preview } from "../keeper/view";
import type { ReportNote } from "../store/report";
import type { BackupState } from "./backupState";
import { failureOf } from "./failure";
import type { Fleet } from "./fleet";
import type { KeeperPort } from "./keeperPort";
import { type LastSeen, nothingSeen } from "./lastSeen";
import { firstSettings, readSettings, type Settings } from "./settings";
import type { State } from "./state";

export type Model = ReturnType<typeof createModel>;

export function createModel(
	keeper: KeeperPort,
	newId: () => string,
	report: (error: unknown) => void,
	lastSeen: LastSeen = nothingSeen,
) {
	const seen = lastSeen.recall();
	let state: State = {
		phase: seen ? "ready" : "opening",
		cars: seen ? [seen.car] : [],
		settings: firstSettings,
		car: null,
		now: null,
		...seen,
		events: null,
		account: null,
		working: null,
		failure: null,
		damage: null,
		backup: null,
		fleet: null,
	};
	const listeners = new Set<() => void>();
	function set(change: Partial<State>): void {
		state = { ...state, ...change };
		for (const listener of listeners) listener();
	}

	/** Reads cars and settings, shows the tank as last seen, then brings the account up to date. */
	async function refresh(): Promise<void> {
		const [cars, raw] = await Promise.all([keeper.cars(), keeper.preference("settings")]);
		const settings = readSettings(raw);
		const named = (carId: string | null | undefined) => cars.find(({ id }) => id === carId);
		const car = named(settings.activeCar) ?? named(state.car?.id) ?? cars[0] ?? null;
		const same = car?.id === state.car?.id;
		set({ cars, settings, car, ...(same ? {} : { now: null, events: null, account: null }) });
		if (!car) {
			set({ phase: "ready" });
			return;
		}
		if (!state.account) {
			const now = await keeper.shown(car.id);
			if (state.car?.id !== car.id) return;
			// What was seen last is shown only as long as the store does not say otherwise.
			set(now ? { now, phase: "ready" } : { now: null });
			const events = await keeper.events(car.id);
			if (state.car?.id !== car.id) return;
			set({ events });
		}
		await refreshAccount(car.id);
		set({ phase: "ready" });
	}

	/** The car on the screen is that of the next start, too, whatever cars come in. */
	async function stayWithCar(): Promise<void> {
		const { car, settings } = state;
		if (car && car.id !== settings.activeCar) await saveSettings({ activeCar: car.id });
	}

	async function refreshAccount(carId: string): Promise<void> {
		const account = await keeper.account(carId, (share) => {
			if (state.car?.id === carId) set({ working: share < 1 ? share : null });
		});
		if (state.car?.id !== carId) return;
		const { now, car, events } = account;
		set({ account, now, car, events, working: null });
		if (now) lastSeen.note({ car, settings: state.settings, now });
	}

	const writing = new Set<Promise<unknown>>();
	/** Until it is done the page is not to be loaded anew. */
	function written<T>(work: Promise<T>): Promise<T> {
		const done: Promise<unknown> = work.catch(() => {}).finally(() => writing.delete(done));
		writing.add(done);
		return work;
	}

	/** Awaits what touches the store and keeps the failure to show it; what was typed stays on the screen. */
	async function tried<T>(work: () => Promise<T>): Promise<T | null> {
		try {
			const result = await work();
			if (state.failure !== null) set({ failure: null });
			return result;
		} catch (error) {
			const failure = await failureOf(error);
			set({ failure, phase: state.phase === "opening" ? "failed" : state.phase, working: null });
			report(error);
			return null;
		}
	}

	async function append(carId: string, events: readonly LogEvent[], dropDraft?: string): Promise<boolean> {
		const saved = await tried(async () => {
			lastSeen.forget();
			await written(keeper.append(carId, events, dropDraft === undefined ? {} : { dropDraft }));
			return true;
		});
		if (saved && carId === state.car?.id) await tried(() => refreshAccount(carId));
		return saved === true;
	}

	async function saveSettings(change: Partial<Settings>): Promise<void> {
		const settings = { ...state.settings, ...change };
		lastSeen.forget();
		const before = state.settings;
		set({ settings });
		try {
			await written(keeper.savePreference("settings", settings));
		} catch (error) {
			// What is not on the disk was not chosen.
			if (state.settings === settings) set({ settings: before });
			throw error;
		}
	}

	/** A log that comes from elsewhere; its car is then the active one. */
	function joined<Value extends { readonly car: Car }, Fault>(
		work: () => Promise<Result<Value, Fault>>,
	): Promise<Result<Value, Fault> | null> {
		return tried(async () => {
			lastSeen.forget();
			const result = await work();
			if (result.ok) {
				await saveSettings({ activeCar: result.value.car.id });
				await refresh();
			}
			return result;
		});
	}

	return {
		state: () => state,
		subscribe(listener: () => void): () => void {
			listeners.add(listener);
			return () => listeners.delete(listener);
		},
		start: () =>
			tried(async () => {
				await keeper.subscribe((carId) => {
					// Another tab, or this one; either way the store is the truth.
					if (carId === null) tried(refresh);
					else if (carId === state.car?.id) tried(() => refreshAccount(carId));
				});
				await refresh();
			}),

		/** Puts events on disk; true once they are there. `dropDraft`: the form they came from. */
		append: (events: readonly LogEvent[], dropDraft?: string): Promise<boolean> =>
			state.car ? append(state.car.id, events, dropDraft) : Promise.resolve(false),
		/** The same for a car that may no longer be the active one. */
		appendTo: append,
		/** Takes events back by voids; for voids, brings their targets back. */
		takeBack: (ids: readonly string[], at: string, carId = state.car?.id ?? ""): Promise<boolean> =>
			append(
				carId,
				ids.map((target) => ({ kind: "void", id: newId(), at, target }) as const),
			),
		saveCar: (car: Car, unit?: VolumeUnit) =>
			tried(async () => {
				lastSeen.forget();
				await keeper.saveCar(car, new Date().toISOString());
				if (unit) await saveSettings({ units: { ...state.settings.units, [car.id]: unit }, activeCar: car.id });
				await refresh();
				return true;
			}),
		/** A new car with its first events, from now on the active one; true once all is on disk. May be tried again. */
		addCar: async (car: Car, unit: VolumeUnit, events: readonly LogEvent[], dropDraft?: string): Promise<boolean> => {
			const added = await tried(async () => {
				lastSeen.forget();
				await keeper.saveCar(car);
				await saveSettings({ units: { ...state.settings.units, [car.id]: unit }, activeCar: car.id });
				// Last, and all or none: with the events goes the form that they came from.
				await keeper.append(car.id, events, dropDraft === undefined ? {} : { dropDraft });
				return true;
			});
			// On disk is saved, whatever comes of reading it back.
			if (added) await tried(refresh);
			return added === true;
		},
		removeCar: (carId: string) =>
			tried(async () => {
				lastSeen.forget();
				await keeper.removeCar(carId);
				await refresh();
				await stayWithCar();
				return true;
			}),
		saveSettings: (change: Partial<Settings>) =>
			tried(async () => {
				await saveSettings(change);
				if (change.activeCar !== undefined) await refresh();
			}),
		exportLog: (carId = state.car?.id, report?: ReportNote) =>
			tried(async () => (carId === undefined ? null : keeper.exportLog(carId, report))),
		importLog: (text: string) => joined(() => keeper.importLog(text)),
		lookAt: (handed: Handed) => tried(() => keeper.lookAt(handed)),
		take: (handed: Handed) => joined(() => keeper.take(handed)),
		/** The same for a car that is only watched: the active one stays, if there is one. */
		watch: (handed: Handed) =>
			tried(async () => {
				const result = await keeper.take(handed);
				if (result.ok) {
					await refresh();
					await stayWithCar();
				}
				return result;
			}),
		readReport: (text: string) => tried(() => keeper.readReport(text)),
		checkReport: keeper.checkReport,
		allCars: keeper.fleet,
		fleetSeen: (fleet: Fleet) => set({ fleet }),
		damaged: (damage: Damage | null) => set({ damage }),
		backedUp: (backup: BackupState) => set({ backup }),
		/** Brings back what there is of it; gives what was missing. */
		bringBack: () =>
			tried(async () => {
				lastSeen.forget();
				const back = await keeper.bringBack();
				set({ damage: null });
				await refresh();
				return { back };
			}),
		preview: (carId: string, draft: DraftStop): Promise<Preview | null> => keeper.preview(carId, draft),
		previewReading: keeper.previewReading,
		plan: (carId: string, ask: PlanAsk): Promise<PlanAnswer | null> => keeper.plan(carId, ask),
		measures: keeper.measures,
		places: keeper.places,
		running: keeper.running,
		why: keeper.why,
		whyEvidence: keeper.whyEvidence,
		contradiction: keeper.contradiction,
		table: keeper.table,
		live: keeper.live,
		draft: (key: string) => tried(() => keeper.draft(key)),
		saveDraft: (key: string, value: unknown) => tried(() => written(keeper.saveDraft(key, value))),
		dropDraft: (key: string) => tried(() => keeper.dropDraft(key)),
		preference: (key: string) => tried(() => keeper.preference(key)),
		savePreference: (key: string, value: unknown) => tried(() => keeper.savePreference(key, value)),
		/** Resolves once all that was to be written is on the disk, or has failed. */
		async written(): Promise<void> {
			while (writing.size > 0) await Promise.all(writing);
		},
		newId,
	};
}

export function useModel(model: Model): State {
	const [state, setState] = useState(model.state());
	useEffect(() => {
		// It may have changed between the drawing and this.
		setState(model.state());
		return model.subscribe(() => setState(model.state()));
	}, [model]);
	return state;
}

/** What fuel is counted in where nobody has said so, as after opening a backup. */
export function usualUnit(): VolumeUnit {
	return globalThis.navigator?.language === "en-US" ? "gal" : "L";
}

export function unitOf({ settings, car }: State): VolumeUnit {
	return car && Object.hasOwn(settings.units, car.id) ? settings.units[car.id] : usualUnit();
}

/** The fills of one stop that count, in order. */
export function fillsOfStop(events: readonly LogEvent[], stop: string): FillEvent[] {
	return countingEvents(events).filter((event) => event.kind === "fill" && event.stop === stop) as FillEvent[];
}
