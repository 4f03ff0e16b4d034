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
		// jsdom has no modal dialogs.
		if (dialog.current?.showModal) dialog.current.showModal();
		else dialog.current?.setAttribute("open", "");
		const shown = dialog.current;
		// Closed properly, it gives the focus back to where it was.
		return () => shown?.close?.();
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
