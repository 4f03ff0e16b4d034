/** The estimate that follows the typing: one question at a time, and always the latest next. */
import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import type { DraftStop, Preview } from "../keeper/view";
import { useApp } from "./app";

/** The last answer, with the stop that it is about. */
export interface Previewed extends Preview {
	readonly about: DraftStop;
}

const restMs = 150;

export function usePreview(carId: string, stop: DraftStop | null): Previewed | null {
	const { model } = useApp();
	const [preview, setPreview] = useState<Previewed | null>(null);
	const waiting = useRef<DraftStop | null>(null);
	const wake = useRef(() => {});
	const asking = useRef(false);
	const gone = useRef(false);
	const key = stop && JSON.stringify(stop);
	// Before the next picture is painted: a frame is a third of the time there is.
	useLayoutEffect(() => {
		if (!stop) return;
		waiting.current = stop;
		wake.current();
		if (!asking.current) ask();
		async function ask(): Promise<void> {
			asking.current = true;
			while (waiting.current && !gone.current) {
				const question = waiting.current;
				waiting.current = null;
				await answer({ ...question, quick: true });
				// Once the typing rests, the very numbers that saving will show.
				if (!waiting.current) await rest();
				if (!waiting.current) await answer(question);
			}
			asking.current = false;
		}
		function rest(): Promise<void> {
			return new Promise((rested) => {
				wake.current = rested;
				setTimeout(rested, restMs);
			});
		}
		async function answer(about: DraftStop): Promise<void> {
			const answered = await model.preview(carId, about).catch(() => null);
			if (answered && !gone.current) setPreview({ ...answered, about });
		}
	}, [key]);
	useEffect(() => {
		gone.current = false;
		return () => {
			gone.current = true;
		};
	}, []);
	return preview;
}
