/** Phones without a browser: a store and a desk each, on the client that the app has. */
import "fake-indexeddb/auto";
import { WebSocket as NodeSocket } from "undici";
import { type Desk, openDesk } from "../../src/live/desk";
import { connectTo } from "../../src/live/natsWire";
import { openNotes } from "../../src/live/notes";
import type { LiveAsk, LiveState } from "../../src/live/state";
import { openStore, type Store } from "../../src/store/store";
import type { Log } from "../../src/store/wire";

// Node 20 has none of its own.
globalThis.WebSocket ??= NodeSocket as never;

export interface LivePhone {
	readonly store: Store;
	readonly desk: Desk;
	ask(ask: LiveAsk): ReturnType<Desk["answer"]>;
	state(carId: string): Promise<LiveState | undefined>;
	/** Resolves once all cars that are replicated are caught up with the server and nothing waits. */
	caughtUp(): Promise<void>;
	stop(): Promise<void>;
}

let phones = 0;

export async function openLivePhone(logs: readonly Log[] = [], name = `live phone ${++phones}`): Promise<LivePhone> {
	const store = await openStore({ name });
	for (const log of logs) await store.merge(log);
	const desk = await openDesk(store, {
		connect: ({ access }, onLost) => connectTo(access, onLost),
		now: () => Date.now(),
		name: `${name} live`,
	});
	const states = async () => (await desk.answer({ do: "states" })).states;
	return {
		store,
		desk,
		ask: (ask) => desk.answer(ask),
		state: async (carId) => (await states()).find((state) => state.carId === carId),
		async caughtUp() {
			const notes = await openNotes(`${name} live`);
			try {
				for (;;) {
					let done = true;
					for (const { carId } of await notes.cars()) {
						const known = await notes.known(carId);
						const events = await store.events(carId);
						const own = (await store.cars()).some(({ id }) => id === carId);
						if (!own || events.some(({ id }) => !known.has(id))) done = false;
					}
					if (done) return;
					await new Promise((passed) => setTimeout(passed, 50));
				}
			} finally {
				notes.close();
			}
		},
		async stop() {
			await desk.answer({ do: "rest" });
			await new Promise((passed) => setTimeout(passed, 50));
			store.close();
		},
	};
}
