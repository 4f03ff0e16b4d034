/** Saving a stop: once, after the question about the lean limit, and on the disk before the screen says so. */
import { useRef, useState } from "preact/hooks";
import type { VoidEvent } from "../domain/event";
import type { VolumeUnit } from "../domain/units";
import type { Car } from "../domain/vehicle";
import { budgetsOf } from "../domain/warnings";
import type { DraftStop, Preview } from "../keeper/view";
import { isoWithOffset, useApp } from "./app";
import { type FillDraft, fillsOf } from "./fillDraft";
import { percent } from "./format";
import { inTime } from "./inTime";
import { askOnceToPersist } from "./keptData";
import { momentAfter } from "./moment";
import { fillWords } from "./words/fill";
import { shellWords } from "./words/shell";

interface Saving {
	readonly car: Car;
	readonly unit: VolumeUnit;
	/** The draft's key in the store; it goes with the save. */
	readonly draftKey: string;
	readonly change: (draft: FillDraft) => Promise<void>;
	/** Stops the form from being stored while it is on its way into the log. */
	readonly leave: (leaving: boolean) => void;
	/** Where to go once it is saved. */
	readonly then: string;
}

/** The question is asked only where an answer comes in time: what was pumped must not wait for a long replay. */
const answerWithinMs = 4_000;

export function useSaveStop({ car, unit, draftKey, change, leave, then }: Saving) {
	const { model, toasts, now } = useApp();
	const [saving, setSaving] = useState(false);
	const [asking, setAsking] = useState<Preview | null>(null);
	// State changes come too late for the second of two quick taps.
	const busy = useRef(false);

	function lookAhead(stop: DraftStop): Promise<Preview | null> {
		return inTime(model.preview(car.id, stop), answerWithinMs);
	}

	async function save(draft: FillDraft, agreed: boolean): Promise<void> {
		if (busy.current) return;
		busy.current = true;
		setSaving(true);
		const done = await attempt(draft, agreed);
		leave(done);
		setSaving(false);
		busy.current = done;
		if (done) location.hash = then;
	}

	async function attempt(draft: FillDraft, agreed: boolean): Promise<boolean> {
		const moment = momentAfter(model.state().events ?? [], now());
		const fills = fillsOf(draft, car.tank, unit, moment);
		const outcome = agreed ? asking : await lookAhead({ fills, next: null, instead: draft.instead, mend: true });
		if (!agreed && outcome && goesTooFar(outcome)) {
			setAsking(outcome);
			return false;
		}
		setAsking(null);
		// On disk first: written after the stop, it would come back as a form that was never saved. Not before the question:
		// who goes back may pump, and save, much later.
		await change(draft.triedAt === null ? { ...draft, triedAt: isoWithOffset(moment) } : draft);
		leave(true);
		const at = isoWithOffset(now());
		const voids = draft.instead.map((target): VoidEvent => ({ kind: "void", id: model.newId(), at, target }));
		const events = [...voids, ...fills];
		if (!(await model.appendTo(car.id, events, draftKey))) return false;
		const ids = events.map(({ id }) => id);
		const { saved, savedAbout } = fillWords();
		toasts.show(outcome ? savedAbout(percent(outcome.estimate.median)) : saved, {
			label: shellWords().undo,
			run: () => model.takeBack(ids, isoWithOffset(now()), car.id),
		});
		askOnceToPersist(model);
		return true;
	}

	return { saving, asking, save, dismiss: () => setAsking(null) };
}

/** Past the lean limit, and not on the way back from there. */
function goesTooFar({ estimate, before, calibration }: Preview): boolean {
	const { above } = estimate;
	return above !== null && above > budgetsOf(calibration).lean && above >= (before.above ?? 0);
}
