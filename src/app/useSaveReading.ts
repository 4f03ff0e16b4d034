/** Saving one measurement: on the disk before the screen says so, with the way back. */
import type { LevelEvent, ReadingEvent } from "../domain/event";
import { isoWithOffset, useApp } from "./app";
import { percent } from "./format";

/** Gives what saves an event, true once it is there; `draftKey`: the form that it came from. */
export function useSaveReading(carId: string) {
	const { model, toasts, now } = useApp();
	return async (event: ReadingEvent | LevelEvent, draftKey?: string): Promise<boolean> => {
		const before = model.state().now?.estimate.median;
		if (!(await model.appendTo(carId, [event], draftKey))) return false;
		toasts.show(`Saved. ${changeWords(before, model.state().now?.estimate.median)}`, {
			label: "Undo",
			run: () => model.takeBack([event.id], isoWithOffset(now()), carId),
		});
		return true;
	};
}

function changeWords(before: number | undefined, after: number | undefined): string {
	if (after === undefined) return "";
	const to = percent(after);
	const from = before === undefined ? to : percent(before);
	return from === to ? `It stays about ${to}.` : `About ${from} became about ${to}.`;
}
