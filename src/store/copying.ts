/** Hands what was written to the rescue copy a moment later, off the way of the save. What is missed is made up at the next start. */
import type { Rescue } from "./rescue";
import type { Written } from "./written";

const afterMs = 250;

/** `open` is called with the first need. */
export function copyingTo(open: () => Promise<Rescue | null>) {
	let rescue: Promise<Rescue | null> | null = null;
	let waiting: Written[] = [];
	let timer: ReturnType<typeof setTimeout> | undefined;
	let sparing = false;

	function here(): Promise<Rescue | null> {
		rescue ??= open().catch(() => null);
		return rescue;
	}
	/** Resolves once all that was noted is copied, or could not be. */
	async function settle(): Promise<void> {
		clearTimeout(timer);
		timer = undefined;
		const now = waiting;
		waiting = [];
		if (now.length === 0) return;
		try {
			await (await here())?.write(now);
		} catch {
			// A full disk must not stop anything.
		}
	}
	return {
		note(written: Written): void {
			if (sparing && "preference" in written) return;
			waiting.push(written);
			timer ??= setTimeout(settle, afterMs);
		},
		settle,
		here,
		/** Whether the preferences in the copy are to stay as they are. */
		spare(preferences: boolean): void {
			sparing = preferences;
		},
	};
}

export type Copying = ReturnType<typeof copyingTo>;
