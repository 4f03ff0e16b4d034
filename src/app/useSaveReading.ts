/** Saving one measurement: on the disk before the screen says so, with the way back. */
import type { LevelEvent, ReadingEvent } from "../domain/event";
import { isoWithOffset, useApp } from "./app";
import { percent } from "./format";
import { readingsWords } from "./words/readings";

/** Gives what saves an event, true once it is there; `draftKey`: the form that it came from. */
export function useSaveReading(carId: string) {
	const { model, toasts, now } = useApp();
	return async (event: ReadingEvent | LevelEvent, draftKey?: string): Promise<boolean> => {
		const before = model.state().now?.estimate.median;
		if (!(await model.appendTo(carId, [event], draftKey))) return false;
		toasts.show(savedWords(before, model.state().now?.estimate.median), {
			label: readingsWords().undo,
			run: () => model.takeBack([event.id], isoWithOffset(now()), carId),
		});
		return true;
	};
}

function savedWords(before: number | undefined, after: number | undefined): string {
	const words = readingsWords();
	if (after === undefined) return words.saved;
	const to = percent(after);
	const from = before === undefined ? to : percent(before);
	return from === to ? words.savedStays(to) : words.savedChanged(from, to);
}
