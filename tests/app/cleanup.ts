import { cleanup } from "@testing-library/preact";
import { afterAll, afterEach, vi } from "vitest";
import { opened } from "./opened";

afterEach(() => {
	// Testing Library does this by itself only where test functions are globals.
	cleanup();
	for (const store of opened) store.close();
	opened.clear();
	history.replaceState(null, "", location.pathname);
});

afterAll(async () => {
	// Preact runs effects within 100 ms of a drawing: the page must not be taken away before.
	await new Promise((passed) => setTimeout(passed, 200));
	// The next file may find itself in this very page.
	vi.useRealTimers();
	vi.restoreAllMocks();
	vi.unstubAllGlobals();
	for (const name of Object.getOwnPropertyNames(navigator)) Reflect.deleteProperty(navigator, name);
	Reflect.deleteProperty(document, "visibilityState");
	localStorage.clear();
	sessionStorage.clear();
});
