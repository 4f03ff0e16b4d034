/** Forms that are kept nowhere but on the screen: loading the page anew would lose them. */
import { useEffect } from "preact/hooks";

const forms = new Set<symbol>();

/** Say so for as long as something is typed in a form that no draft keeps. */
export function useUnsaved(typed: boolean): void {
	useEffect(() => {
		if (!typed) return;
		const form = Symbol();
		forms.add(form);
		return () => void forms.delete(form);
	}, [typed]);
}

export function isAnythingUnsaved(): boolean {
	return forms.size > 0;
}
