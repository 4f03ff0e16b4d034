/** Half-typed forms, on disk with every change: they come back after a killed app and an update. */
import { useEffect, useRef, useState } from "preact/hooks";
import { useApp } from "./app";

/** A device that could not write may be able to a moment later. */
const againAfterMs = 2_000;

/** The draft under a key: `undefined` until it is read, then what was stored or `first()`. */
export function useDraft<Draft>(key: string, read: (raw: unknown) => Draft | null, first: () => Draft) {
	const { model } = useApp();
	const [draft, setDraft] = useState<Draft | undefined>(undefined);
	const left = useRef(false);
	const latest = useRef<Draft | undefined>(undefined);
	/** Tries again what could not be written, until it is on the disk or something else was typed. */
	async function store(next: Draft): Promise<void> {
		const failed = (await model.saveDraft(key, next)) === null;
		const due = () => latest.current === next && !left.current;
		if (failed && due()) setTimeout(() => due() && store(next), againAfterMs);
	}
	useEffect(() => {
		let current = true;
		model.draft(key).then((raw) => {
			if (current) setDraft(read(raw) ?? first());
		});
		return () => {
			current = false;
		};
	}, [key]);
	return {
		draft,
		/** Resolves once it is on disk, or the failure is on the screen. */
		async change(next: Draft): Promise<void> {
			if (left.current) return;
			latest.current = next;
			setDraft(next);
			// After the form was drawn and its question asked, still before anything else can happen.
			await Promise.resolve();
			await store(next);
		},
		/** No change counts any more: the form is being saved. */
		leave(leaving: boolean): void {
			left.current = leaving;
		},
		/** Throws it away and begins anew. */
		reset(): void {
			latest.current = undefined;
			model.dropDraft(key);
			setDraft(first());
		},
	};
}
