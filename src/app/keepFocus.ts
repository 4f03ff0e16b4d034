/** Where the keys and a screen reader are, when what they were on goes away. */

/** Parts of a screen that say what they are, or hold what remains. */
const parts = "main, dialog, section, form, fieldset, ul, ol";

/** Focuses what is no control, for as long as it stays there. */
export function focusOn(part: HTMLElement): void {
	if (!part.hasAttribute("tabindex")) {
		part.tabIndex = -1;
		part.addEventListener("blur", () => part.removeAttribute("tabindex"), { once: true });
	}
	part.focus({ preventScroll: true });
}

/** From now on the focus is never lost: it goes to what the control stood in, or back to where it was before a message. */
export function keepFocus(): void {
	let control: HTMLElement | null = null;
	let around: readonly HTMLElement[] = [];
	let beforeMessage: HTMLElement | null = null;

	document.addEventListener("focusin", ({ target }) => {
		if (!(target instanceof HTMLElement)) return;
		control = target;
		around = partsAround(target);
		if (!target.closest(".toasts")) beforeMessage = target;
	});
	// Whoever taps beside everything wants no focus.
	document.addEventListener("pointerdown", ({ target }) => {
		if (target instanceof Node && !control?.contains(target)) control = null;
	});
	new MutationObserver(() => {
		if (!control || document.activeElement !== document.body) return;
		// Disabled while something is written, it has the focus again afterwards.
		if (control.isConnected) return control.focus({ preventScroll: true });
		const back = around.length === 0 && beforeMessage?.isConnected ? beforeMessage : null;
		const home = back ?? around.find((part) => part.isConnected) ?? document.querySelector("main");
		if (home) focusOn(home);
	}).observe(document.body, { subtree: true, childList: true, attributeFilter: ["disabled"] });
}

function partsAround(control: HTMLElement): HTMLElement[] {
	const found: HTMLElement[] = [];
	for (let part = control.parentElement; part; part = part.parentElement) if (part.matches(parts)) found.push(part);
	return found;
}
