/** Tells the parts of the app, here and in other tabs, what has changed. */

/** The id of the car whose events changed; null when cars or preferences did. */
export type Listener = (carId: string | null) => void;

export interface Changes {
	subscribe(listener: Listener): () => void;
	/** Call after the data is safely stored. */
	announce(carId: string | null): void;
	close(): void;
}

export function changesOf(name: string): Changes {
	const listeners = new Set<Listener>();
	let closed = false;
	const channel = typeof BroadcastChannel === "undefined" ? null : new BroadcastChannel(name);
	const tell = (carId: string | null) => {
		// A listener that throws must not make a write that has succeeded look failed.
		for (const listener of listeners) queueMicrotask(() => listeners.has(listener) && listener(carId));
	};
	channel?.addEventListener("message", ({ data }) => {
		if (typeof data === "string" || data === null) tell(data);
	});
	return {
		subscribe(listener) {
			const own: Listener = (carId) => listener(carId);
			listeners.add(own);
			return () => listeners.delete(own);
		},
		announce(carId) {
			// A write may end after the store was closed.
			if (closed) return;
			channel?.postMessage(carId);
			tell(carId);
		},
		close() {
			closed = true;
			listeners.clear();
			channel?.close();
		},
	};
}
