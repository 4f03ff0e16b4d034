/** Making entries count or not. Nothing is asked first; what was done can be undone. */
import { useState } from "preact/hooks";
import type { LogEvent } from "../domain/event";
import { isoWithOffset, useApp } from "./app";
import { targetsFor } from "./logView";
import { logScreenWords } from "./words/log";

export function useTakingBack() {
	const { model, toasts, now } = useApp();
	const [busy, setBusy] = useState(false);

	/** Lets some events count, perhaps new ones, and others not; true once that is on disk. */
	async function change(
		counting: readonly string[],
		notCounting: readonly string[],
		said: string,
		added: readonly LogEvent[] = [],
	): Promise<boolean> {
		const at = isoWithOffset(now());
		const targets = targetsFor(model.state().account?.events ?? [], counting, notCounting);
		const voids = targets.map((target): LogEvent => ({ kind: "void", id: model.newId(), at, target }));
		setBusy(true);
		const done = await model.append([...added, ...voids]);
		setBusy(false);
		if (done) {
			const words = logScreenWords();
			const run = () => void change(notCounting, [...counting, ...added.map(({ id }) => id)], words.asBefore);
			toasts.show(said, { label: words.undo, run });
		}
		return done;
	}

	return { busy, change };
}
