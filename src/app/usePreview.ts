/** The estimate that follows the typing: one question at a time, and always the latest next. */
import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import type { DraftStop, Preview } from "../keeper/view";
import { useApp } from "./app";
import type { Model } from "./model";

/** An answer, with the stop that it is about. */
export interface Previewed extends Preview {
	readonly about: DraftStop;
}

/** Where answers come from. Only what shows them is drawn anew, not the form that asks. */
export type PreviewSource = ReturnType<typeof previewSource>;

/** After so long without a key the typing rests. */
const restMs = 150;

function previewSource(model: Model, carId: string) {
	let shown: Previewed | null = null;
	let waiting: DraftStop | null = null;
	let asking = false;
	let wake = () => {};
	const listeners = new Set<() => void>();

	async function work(): Promise<void> {
		asking = true;
		while (waiting) {
			const question = waiting;
			waiting = null;
			await answer({ ...question, quick: true });
			// Once the typing rests, the very numbers that saving will show.
			if (!waiting) await rest();
			if (!waiting && listeners.size > 0) await answer(question);
		}
		asking = false;
	}
	function rest(): Promise<void> {
		return new Promise((rested) => {
			wake = rested;
			setTimeout(rested, restMs);
		});
	}
	async function answer(about: DraftStop): Promise<void> {
		const answered = await model.preview(carId, about).catch(() => null);
		if (!answered) return;
		shown = { ...answered, about };
		for (const listener of listeners) listener();
	}
	return {
		shown: () => shown,
		ask(stop: DraftStop): void {
			waiting = stop;
			wake();
			if (!asking) work();
		},
		subscribe(listener: () => void): () => void {
			listeners.add(listener);
			return () => listeners.delete(listener);
		},
	};
}

/** Asks about a stop whenever it changes. */
export function usePreviewSource(carId: string, stop: DraftStop | null): PreviewSource {
	const { model } = useApp();
	const source = useRef<PreviewSource | null>(null);
	source.current ??= previewSource(model, carId);
	const key = stop && JSON.stringify(stop);
	// Before the next picture is painted: a frame is a third of the time there is.
	useLayoutEffect(() => {
		if (stop) source.current?.ask(stop);
	}, [key]);
	return source.current;
}

/** The latest answer. */
export function usePreviewed(source: PreviewSource): Previewed | null {
	const [shown, setShown] = useState(source.shown());
	useEffect(() => {
		setShown(source.shown());
		return source.subscribe(() => setShown(source.shown()));
	}, [source]);
	return shown;
}
