/** Short messages at the foot of the screen, each with what can be done about it. */
export interface Toast {
	readonly id: number;
	readonly text: string;
	readonly action?: { readonly label: string; readonly run: () => void } | undefined;
	/** Stays until it is dismissed. */
	readonly stays: boolean;
}

export type Toasts = ReturnType<typeof createToasts>;

const shownMs = 8_000;

export function createToasts() {
	let toasts: readonly Toast[] = [];
	let next = 1;
	const listeners = new Set<() => void>();
	function set(changed: readonly Toast[]): void {
		toasts = changed;
		for (const listener of listeners) listener();
	}
	function dismiss(id: number): void {
		set(toasts.filter((toast) => toast.id !== id));
	}
	return {
		list: () => toasts,
		subscribe(listener: () => void): () => void {
			listeners.add(listener);
			return () => listeners.delete(listener);
		},
		show(text: string, action?: Toast["action"], stays = false): void {
			const toast = { id: next++, text, action, stays };
			// The same words twice are one message; an old undo makes way for the new one.
			set([...toasts.filter((other) => other.text !== text && (other.stays || !action)), toast]);
			const end = () => set(toasts.filter(({ id, stays }) => stays || id !== toast.id));
			if (!stays) setTimeout(end, shownMs);
		},
		/** Whoever has reached it takes their time. */
		keep(id: number): void {
			set(toasts.map((toast) => (toast.id === id ? { ...toast, stays: true } : toast)));
		},
		dismiss,
	};
}
