import type { ComponentChildren } from "preact";
import { useLayoutEffect, useRef } from "preact/hooks";

interface FoldProps {
	readonly summary: string;
	readonly class?: string;
	/** Something in it needs mending. */
	readonly wrong: boolean;
	readonly children: ComponentChildren;
}

/** A fold that opens where something in it needs mending; only the driver closes it, for a number is still being typed. */
export function Fold({ summary, wrong, children, class: className }: FoldProps) {
	const fold = useRef<HTMLDetailsElement>(null);
	useLayoutEffect(() => {
		if (wrong && fold.current) fold.current.open = true;
	}, [wrong]);
	return (
		<details class={className} ref={fold}>
			<summary>{summary}</summary>
			{children}
		</details>
	);
}
