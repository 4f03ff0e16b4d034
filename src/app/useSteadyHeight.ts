import type { RefObject } from "preact";
import { useLayoutEffect, useRef } from "preact/hooks";

/** What grew with an answer stays as tall, so that no key below moves away under a thumb; until the width changes. */
export function useSteadyHeight<Part extends HTMLElement>(answer: unknown): RefObject<Part | null> {
	const part = useRef<Part>(null);
	const width = useRef(0);
	useLayoutEffect(() => {
		const element = part.current;
		if (!element || !answer) return;
		if (width.current !== element.offsetWidth) element.style.minHeight = "";
		width.current = element.offsetWidth;
		element.style.minHeight = `${element.offsetHeight}px`;
	}, [answer]);
	return part;
}
