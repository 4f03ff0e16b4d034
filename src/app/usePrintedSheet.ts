import { useEffect } from "preact/hooks";
import "./usePrintedSheet.css";

/** While the screen is shown, printing puts its sheet on paper and nothing else; every other screen prints as it is. */
export function usePrintedSheet(): void {
	useEffect(() => {
		const { dataset } = document.documentElement;
		dataset.prints = "sheet";
		return () => {
			delete dataset.prints;
		};
	}, []);
}
