/**
 * Asks the browser not to evict this app's data when space runs short. Call it after something was saved, not at load:
 * some browsers ask the driver. Resolves to the answer, or null where the browser can't say.
 */
export async function askToPersist(): Promise<boolean | null> {
	const storage = globalThis.navigator?.storage as StorageManager | undefined;
	if (typeof storage?.persist !== "function") return null;
	try {
		return (await storage.persisted()) || (await storage.persist());
	} catch {
		return null;
	}
}
