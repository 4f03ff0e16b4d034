import { useLayoutEffect, useState } from "preact/hooks";

/** Never wider than the narrowest phone's room: a page that was once too wide stays so, and is measured so. */
const narrowest = 240;

/** The room there is and the size of the letters, both in CSS pixels: text in a drawing follows the system's text size. */
export function useMeasures(figure: { readonly current: HTMLElement | null }) {
	const [measures, setMeasures] = useState({ width: narrowest, text: 15 });
	useLayoutEffect(() => {
		const element = figure.current;
		if (!element || typeof ResizeObserver === "undefined") return;
		const measure = () => {
			const root = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
			setMeasures({ width: Math.max(narrowest, Math.floor(element.clientWidth)), text: Math.round(root * 0.875) });
		};
		measure();
		const observer = new ResizeObserver(measure);
		observer.observe(element);
		return () => observer.disconnect();
	}, []);
	return measures;
}
