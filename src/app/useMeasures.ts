import { useEffect, useState } from "preact/hooks";

/** The room there is and the size of the letters, both in CSS pixels: text in a drawing follows the system's text size. */
export function useMeasures(figure: { readonly current: HTMLElement | null }) {
	const [measures, setMeasures] = useState({ width: 324, text: 15 });
	useEffect(() => {
		const element = figure.current;
		if (!element || typeof ResizeObserver === "undefined") return;
		const observer = new ResizeObserver(() => {
			const root = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
			setMeasures({ width: Math.max(240, Math.floor(element.clientWidth)), text: Math.round(root * 0.875) });
		});
		observer.observe(element);
		return () => observer.disconnect();
	}, []);
	return measures;
}
