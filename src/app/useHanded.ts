/** What this phone remembers of its last hand-over of a car: when it was, and what the other phone then had. */
import { useEffect, useState } from "preact/hooks";
import { type Holdings, holdingsSchema } from "../share/holdings";
import { useApp } from "./app";
import { handWords } from "./words/hand";

export interface Handed {
	/** ISO 8601. */
	readonly at: string;
	readonly holdings: Holdings;
}

/** `handed` is undefined until it is read; null: nothing was handed over yet. */
export function useHanded(carId: string) {
	const { model, toasts } = useApp();
	const [handed, setHanded] = useState<Handed | null | undefined>(undefined);
	const key = `${carId}/handed`;
	useEffect(() => {
		let current = true;
		model.draft(key).then((raw) => {
			if (current) setHanded(readHanded(raw));
		});
		return () => {
			current = false;
		};
	}, [key]);
	return {
		handed,
		async note(next: Handed): Promise<void> {
			if ((await model.saveDraft(key, next)) === null) return;
			setHanded(next);
			toasts.show(handWords().noted);
		},
	};
}

function readHanded(raw: unknown): Handed | null {
	const { at, holdings } = (raw ?? {}) as Partial<Handed>;
	const sound = holdingsSchema.safeParse(holdings);
	return typeof at === "string" && Number.isFinite(Date.parse(at)) && sound.success
		? { at, holdings: sound.data }
		: null;
}
