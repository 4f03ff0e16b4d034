import { afterEach, expect, test, vi } from "vitest";
import { askToPersist } from "../../src/store/durability";

afterEach(() => {
	vi.unstubAllGlobals();
});

const browser = (storage: unknown) => vi.stubGlobal("navigator", { storage });

test("askToPersist gives the browser's answer", async () => {
	for (const answer of [true, false]) {
		browser({ persisted: async () => false, persist: async () => answer });
		expect(await askToPersist()).toBe(answer);
	}
});

test("askToPersist does not ask again for what was granted", async () => {
	const persist = vi.fn();
	browser({ persisted: async () => true, persist });
	expect(await askToPersist()).toBe(true);
	expect(persist).not.toHaveBeenCalled();
});

test("askToPersist gives null where the browser can't say", async () => {
	vi.stubGlobal("navigator", undefined);
	expect(await askToPersist()).toBeNull();
	browser(undefined);
	expect(await askToPersist()).toBeNull();
	browser({});
	expect(await askToPersist()).toBeNull();
	browser({ persisted: async () => false, persist: () => Promise.reject(new TypeError("not here")) });
	expect(await askToPersist()).toBeNull();
});
