import type { ComponentChildren } from "preact";

/** One entry of a chart's legend: its mark, in a drawing of 28 by 24, and what it means. */
export function ChartKey({ label, children }: { readonly label: string; readonly children: ComponentChildren }) {
	return (
		<li>
			<svg width={28} height={24} aria-hidden="true">
				{children}
			</svg>
			{label}
		</li>
	);
}
