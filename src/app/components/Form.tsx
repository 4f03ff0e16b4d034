import type { ComponentChildren } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";

interface FormProps {
	/** Null: something is wrong and said beside its field. Else resolves to whether it is saved. */
	readonly onSave: () => Promise<boolean> | null;
	/** The screen is left once it is saved: no second time. */
	readonly once?: boolean;
	readonly label: string;
	readonly children: ComponentChildren;
}

/** Saves once, however often the button is hit; where something is wrong, goes to the first fault. */
export function Form({ onSave, once = false, label, children }: FormProps) {
	const form = useRef<HTMLFormElement>(null);
	const saving = useRef(false);
	const [refusals, setRefusals] = useState(0);
	useEffect(() => {
		if (refusals > 0) form.current?.querySelector<HTMLElement>("[aria-invalid=true], .fault[tabindex]")?.focus();
	}, [refusals]);
	async function save(event: Event): Promise<void> {
		event.preventDefault();
		if (saving.current) return;
		const saved = onSave();
		if (!saved) return setRefusals(refusals + 1);
		saving.current = true;
		saving.current = (await saved) && once;
	}
	return (
		<form class="stack form" ref={form} noValidate aria-label={label} onSubmit={save}>
			{children}
		</form>
	);
}
