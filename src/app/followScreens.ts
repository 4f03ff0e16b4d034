import { focusOn, keepFocus } from "./keepFocus";
import { screenWords } from "./words/screens";

/** Says which screen is shown, and takes the keys and a screen reader to each new one. */
export function followScreens(): void {
	const main = document.querySelector("main");
	if (!main) return;
	const name = () => {
		const { [main.dataset.screen ?? ""]: said }: Readonly<Record<string, string>> = screenWords();
		if (!said) return;
		main.ariaLabel = said;
		document.title = `${said} · Heeltap`;
	};
	name();
	new MutationObserver(name).observe(main, { attributeFilter: ["data-screen"] });
	// Once it is drawn, so that its name is said and not the last one's.
	window.addEventListener("hashchange", () => setTimeout(() => focusOn(main)));
	keepFocus();
}
