/** The plan that follows the form: one question at a time, the latest next, off the page's own thread. */
import { useEffect, useRef, useState } from "preact/hooks";
import type { PlanAnswer, PlanAsk } from "../keeper/view";
import { useApp } from "./app";

/** An answer with the question it belongs to; null: there is none. */
export interface Shown {
	readonly ask: PlanAsk;
	readonly answer: PlanAnswer | null;
}

export interface PlanSource {
	/** The last that was answered. */
	readonly shown: Shown | null;
	/** Whether that is the question as it stands now. */
	readonly current: boolean;
}

/** After so long without a change it is asked. */
const restMs = 200;

/**
 * Null: nothing can be asked yet. `log` changes with the log: then the same question has another answer. The first question
 * waits for `firstMs`.
 */
export function usePlan(carId: string, ask: PlanAsk | null, log: number, firstMs = 0): PlanSource {
	const { model } = useApp();
	const [shown, setShown] = useState<(Shown & { readonly key: string }) | null>(null);
	const key = ask && JSON.stringify([ask, log]);
	const latest = useRef(key);
	latest.current = key;
	useEffect(() => {
		if (!ask) return;
		async function answer(asked: PlanAsk): Promise<void> {
			const answered = await model.plan(carId, asked).catch(() => null);
			if (key !== null && latest.current === key) setShown({ key, ask: asked, answer: answered });
		}
		// What is filled in from the log is asked at once, what is being changed once it rests.
		const timer = setTimeout(answer, shown ? restMs : firstMs, ask);
		return () => clearTimeout(timer);
	}, [carId, key]);
	return { shown, current: shown !== null && shown.key === key };
}
