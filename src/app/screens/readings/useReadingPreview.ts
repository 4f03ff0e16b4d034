/** What the typed measurement would do: one question at a time, and always the latest next. */
import { useEffect, useRef, useState } from "preact/hooks";
import type { LevelEvent, ReadingEvent } from "../../../domain/event";
import type { ReadingPreview } from "../../../keeper/readingPreview";
import { useApp } from "../../app";

export interface Answered {
	readonly preview: ReadingPreview;
	/** It is about what was typed before; the next answer is on its way. */
	readonly stale: boolean;
}

/** Null until there is an answer, and while nothing can be asked. */
export function useReadingPreview(carId: string, event: ReadingEvent | LevelEvent | null): Answered | null {
	const { model } = useApp();
	const [answer, setAnswer] = useState<{ readonly key: string; readonly preview: ReadingPreview } | null>(null);
	const wanted = useRef<ReadingEvent | LevelEvent | null>(null);
	const asking = useRef(false);
	const key = event && JSON.stringify(event);

	async function work(): Promise<void> {
		asking.current = true;
		while (wanted.current) {
			const question = wanted.current;
			wanted.current = null;
			const preview = await model.previewReading(carId, question).catch(() => null);
			if (preview) setAnswer({ key: JSON.stringify(question), preview });
		}
		asking.current = false;
	}
	useEffect(() => {
		wanted.current = event;
		if (!asking.current) work();
		return () => {
			wanted.current = null;
		};
	}, [key]);
	return event && answer ? { preview: answer.preview, stale: answer.key !== key } : null;
}
