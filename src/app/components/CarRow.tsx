import type { ComponentChildren } from "preact";
import { useId } from "preact/hooks";
import type { Need } from "../attention";
import { carLines } from "../carLines";
import type { Listed } from "../fleet";
import "./CarRow.css";

interface CarRowProps {
	readonly car: Listed;
	readonly now: number;
	/** Beside its name. */
	readonly mark?: string | undefined;
	/** Makes its name a button that takes up the whole row. */
	readonly onOpen?: () => void;
	readonly children?: ComponentChildren;
}

/** One car at a glance: what it needs first, then what is known of it. */
export function CarRow({ car, now, mark, onOpen, children }: CarRowProps) {
	const id = useId();
	const { need, title, lines } = carLines(car, now);
	const name = <span class="name">{car.name}</span>;
	return (
		<li class={`carrow ${need}`}>
			<div class="head">
				{onOpen ? (
					<button type="button" aria-describedby={`${id}-told`} onClick={onOpen}>
						{name}
					</button>
				) : (
					<h3>{name}</h3>
				)}
				{mark && <span class="invented">{mark}</span>}
			</div>
			<p class="told" id={`${id}-told`}>
				<strong>
					<Sign need={need} above={(car.figures?.above ?? 0) >= (car.figures?.below ?? 0)} />
					{title}
				</strong>{" "}
				{lines.join(" ")}
			</p>
			{children}
		</li>
	);
}

/** Triangles point the way the content is off, as the dots do; what goes against each other is crossed. */
function Sign({ need, above }: { readonly need: Need; readonly above: boolean }) {
	const off = above ? "M-8 6.5H8L0 -8Z" : "M-8 -6.5H8L0 8Z";
	const paths: Partial<Record<Need, string>> = {
		outside: off,
		maybe: off,
		doubt: "M-7 -5L-5 -7L0 -2L5 -7L7 -5L2 0L7 5L5 7L0 2L-5 7L-7 5L-2 0Z",
		odd: "M-7 -5L-5 -7L0 -2L5 -7L7 -5L2 0L7 5L5 7L0 2L-5 7L-7 5L-2 0Z",
		fine: "M-7 0a7 7 0 1 0 14 0a7 7 0 1 0 -14 0Z",
	};
	const path = paths[need];
	if (!path) return null;
	return (
		<svg viewBox="-9 -9 18 18" aria-hidden="true">
			<path d={path} fill={need === "maybe" ? "none" : "currentColor"} stroke="currentColor" stroke-width="2" />
		</svg>
	);
}
