import { useLayoutEffect } from "preact/hooks";
import "./usePrintedSheet.css";

/**
 * While the screen is shown, printing puts its sheet, or its report, on paper and nothing else; every other screen prints as
 * it is.
 */
export function usePrintedSheet(prints: "sheet" | "report" = "sheet"): void {
	useLayoutEffect(() => {
		const { dataset } = document.documentElement;
		dataset.prints = prints;
		return () => {
			delete dataset.prints;
		};
	}, []);
}
