/** What the app was opened with: a file by the system, or something that another app shared. Each is given once. */
import { takeLaunched } from "../pwa/launch";

/** The service worker puts it here: src/sw/shared.ts. */
const cacheName = "heeltap-shared";

/** Null where nothing waits; rejects where the phone does not give the file. */
export async function waitingFile(): Promise<Blob | null> {
	const launched = takeLaunched();
	return launched ? launched.getFile() : putByForUs();
}

async function putByForUs(): Promise<Blob | null> {
	if (!("caches" in globalThis)) return null;
	const cache = await caches.open(cacheName);
	const [request] = await cache.keys();
	const response = request && (await cache.match(request));
	await caches.delete(cacheName);
	return response ? response.blob() : null;
}
