/** The whole app on a store of its own, as a person meets it; only the worker is left out. */
import "fake-indexeddb/auto";
import { cleanup, configure, render } from "@testing-library/preact";
import { type UserEvent, userEvent } from "@testing-library/user-event";
import { Main } from "../../src/app/App";
import { AppContext } from "../../src/app/app";
import type { KeeperPort } from "../../src/app/keeperPort";
import type { LastSeen } from "../../src/app/lastSeen";
import { createModel, type Model } from "../../src/app/model";
import { createToasts } from "../../src/app/toasts";
import type { LogEvent } from "../../src/domain/event";
import { keeperOf } from "../../src/keeper/keeper";
import { openStore, type Store } from "../../src/store/store";
import type { Log } from "../../src/store/wire";
import { opened } from "./opened";

export interface RenderedApp {
	readonly user: UserEvent;
	readonly store: Store;
	readonly model: Model;
	/** The time; tests move it on. */
	readonly clock: { now: number };
	/** The stored events of a car, in order; of the only one unless named. */
	events(carId?: string): Promise<LogEvent[]>;
	/** As after the app was killed: everything is opened anew, on what is on disk. */
	restart(): Promise<RenderedApp>;
}

interface Options {
	/** Where the app opens. */
	readonly at?: string;
	/** What is on the phone already. */
	readonly logs?: readonly Log[];
	readonly now?: number;
	/** The name of the database: the same phone again. */
	readonly phone?: string;
	/** What the phone remembers beside its store; nothing unless named. */
	readonly lastSeen?: LastSeen;
	/** What the disk does otherwise than it should. */
	readonly wrap?: (keeper: KeeperPort) => KeeperPort;
}

// The estimator takes its time, and the machine may be busy with other tests.
configure({ asyncUtilTimeout: 45_000 });

let phones = 0;

export async function renderApp(options: Options = {}): Promise<RenderedApp> {
	const { at = "", logs = [], now = Date.parse("2026-06-01T15:30:00Z"), wrap = (keeper) => keeper } = options;
	const phone = options.phone ?? `phone ${++phones}`;
	const store = await openStore({ name: phone });
	opened.add(store);
	const start = opened.size;
	for (const log of logs) await store.merge(log);
	// Whoever has a log here counts in litres, wherever the tests run.
	const units = Object.fromEntries(logs.map(({ car }) => [car.id, "L"]));
	if (logs.length > 0) await store.savePreference("settings", { units });
	history.replaceState(null, "", `${location.pathname}${at}`);
	window.scrollTo = () => {};

	const clock = { now };
	// Called in the page itself, the keeper answers as it does through the worker.
	const keeper = wrap(keeperOf(store) as unknown as KeeperPort);
	let ids = 0;
	const model = createModel(
		keeper,
		// The same ids wherever the test stands among others: numbers hang on them.
		() => `phone-${start}-${++ids}`,
		() => {},
		options.lastSeen,
	);
	const toasts = createToasts();
	render(
		<AppContext.Provider value={{ model, toasts, now: () => clock.now }}>
			<Main />
		</AppContext.Provider>,
	);
	await model.start();
	return {
		user: userEvent.setup(),
		store,
		model,
		clock,
		async events(carId) {
			const id = carId ?? (await store.cars())[0]?.id ?? "";
			return (await store.events(id)).sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
		},
		async restart() {
			cleanup();
			store.close();
			return renderApp({ ...options, logs: [], at: location.hash, phone, now: clock.now });
		},
	};
}
