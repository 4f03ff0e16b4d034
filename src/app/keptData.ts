/** How safe the browser keeps what the app stores, as far as a page can tell. */
import { askToPersist } from "../store/durability";

/** Whether the browser has promised not to clear the data by itself; null: it does not say. */
export async function isKept(): Promise<boolean | null> {
	const storage = navigator.storage as StorageManager | undefined;
	if (typeof storage?.persisted !== "function") return null;
	return storage.persisted().catch(() => null);
}

/** Whether the app runs from the home screen, or as an app of its own. */
export function isInstalled(): boolean {
	const { standalone } = navigator as { readonly standalone?: boolean };
	return standalone === true || globalThis.matchMedia?.("(display-mode: standalone)").matches === true;
}

/**
 * Whether this is the engine that deletes after seven days (webkit.org/blog/10218). Nothing asks for the habit itself; only
 * WebKit on Apple's systems has this event.
 */
export function isSafariEngine(): boolean {
	return "GestureEvent" in globalThis;
}

interface Preferences {
	preference(key: string): Promise<unknown>;
	savePreference(key: string, value: unknown): Promise<unknown>;
}

const askedKey = "asked to keep data";

/**
 * Asks the browser to keep the data: once in a tab, and once more where the app was installed, for then the answer may be
 * another. Some browsers pass the question on to the driver. Call it after a fill was saved.
 */
export async function askOnceToPersist(preferences: Preferences): Promise<void> {
	const asked = await preferences.preference(askedKey);
	const places: readonly unknown[] = Array.isArray(asked) ? asked : [];
	const place = isInstalled() ? "installed" : "tab";
	if (places.includes(place)) return;
	// Noted first: whoever turns away is not asked again.
	await preferences.savePreference(askedKey, [...places, place]);
	await askToPersist();
}
