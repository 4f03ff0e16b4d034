/** New versions: offered in a toast, and never taken over the head of what is typed and kept nowhere else. */
import { browser, watchForUpdates } from "../pwa/update";
import type { Model } from "./model";
import type { Toasts } from "./toasts";
import { isAnythingUnsaved } from "./unsaved";
import { deviceWords } from "./words/device";
import { wordsReady } from "./words/language";
import { shellWords } from "./words/shell";

/** `script` is the address of the service worker. */
export async function watchUpdates(
	model: Pick<Model, "written">,
	toasts: Pick<Toasts, "show">,
	script: string,
	env = browser(script, { isAnythingUnsaved, written: model.written }),
): Promise<void> {
	await wordsReady();
	const { onThisPhone, newVersion, restart } = shellWords();
	const { unsavedSomewhere, beginAnew } = deviceWords();
	await watchForUpdates(
		{
			onReady: () => toasts.show(onThisPhone),
			onWaiting(apply) {
				const begin = () => void model.written().then(apply);
				const ask = () => toasts.show(unsavedSomewhere, { label: beginAnew, run: begin }, true);
				toasts.show(newVersion, { label: restart, run: () => (isAnythingUnsaved() ? ask() : begin()) }, true);
			},
		},
		env,
	);
}
