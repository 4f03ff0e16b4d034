import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";

interface DialogProps {
	readonly title: string;
	/** Escape, or the browser's own way out. */
	readonly onClose: () => void;
	readonly children: ComponentChildren;
}

/** A question that has to be answered first. Rendered only while it is open. */
export function Dialog({ title, onClose, children }: DialogProps) {
	const dialog = useRef<HTMLDialogElement>(null);
	useEffect(() => {
		const before = document.activeElement;
		// jsdom has no modal dialogs.
		if (dialog.current?.showModal) dialog.current.showModal();
		else dialog.current?.setAttribute("open", "");
		const shown = dialog.current;
		// The first answer changes nothing; what stands before it is still read from its top.
		shown?.querySelector(".answers")?.querySelector("button")?.focus({ preventScroll: true });
		// It is off the page by then, too late for the browser to give the focus back.
		return () => before instanceof HTMLElement && before.focus({ preventScroll: true });
	}, []);
	return (
		<dialog ref={dialog} aria-label={title} onClose={onClose} onCancel={onClose}>
			<div class="stack">
				<h2>{title}</h2>
				{children}
			</div>
		</dialog>
	);
}
