/** What the app was opened with: files by the system, or something that another app shared. Each is given once. */
import { takeLaunched } from "../pwa/launch";

/** The service worker puts it here: src/sw/putBy.ts. */
const cacheName = "heeltap-shared";

export interface Waiting {
	/** Empty: it has none. */
	readonly name: string;
	/** Null: it was too large to be put by. Rejects where the phone does not give it. */
	readonly open: () => Promise<File | null>;
}

/** The one that waits; null where none does. Rejects where the phone does not give it. */
export async function waitingFile(): Promise<Blob | null> {
	const [first] = await waitingFiles();
	return first ? first.open() : null;
}

export async function waitingFiles(): Promise<readonly Waiting[]> {
	const launched = takeLaunched();
	if (launched.length === 0) return putByForUs();
	return launched.map((handle) => ({ name: handle.name, open: () => handle.getFile() }));
}

async function putByForUs(): Promise<Waiting[]> {
	if (!("caches" in globalThis)) return [];
	const cache = await caches.open(cacheName);
	const responses = await Promise.all((await cache.keys()).map((request) => cache.match(request)));
	const waiting = await Promise.all(responses.filter((response) => response !== undefined).map(waitingIn));
	await caches.delete(cacheName);
	return waiting;
}

async function waitingIn(response: Response): Promise<Waiting> {
	const name = decodeURIComponent(response.headers.get("x-name") ?? "");
	const blob = await response.blob();
	const file = response.headers.has("x-too-large") ? null : new File([blob], name, { type: blob.type });
	return { name, open: async () => file };
}
