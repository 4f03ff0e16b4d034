/** The estimate that follows the typing: one question at a time, and always the latest next. */
import { useEffect, useRef, useState } from "preact/hooks";
import type { DraftStop, Preview } from "../keeper/view";
import { useApp } from "./app";

/** The last answer, with the stop that it is about. */
export interface Previewed extends Preview {
	readonly about: DraftStop;
}

export function usePreview(carId: string, stop: DraftStop | null): Previewed | null {
	const { model } = useApp();
	const [preview, setPreview] = useState<Previewed | null>(null);
	const waiting = useRef<DraftStop | null>(null);
	const asking = useRef(false);
	const gone = useRef(false);
	const key = stop && JSON.stringify(stop);
	useEffect(() => {
		if (!stop) return;
		waiting.current = stop;
		if (!asking.current) ask();
		async function ask(): Promise<void> {
			asking.current = true;
			while (waiting.current && !gone.current) {
				const question = waiting.current;
				waiting.current = null;
				const answer = await model.preview(carId, question).catch(() => null);
				if (answer && !gone.current) setPreview({ ...answer, about: question });
			}
			asking.current = false;
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
