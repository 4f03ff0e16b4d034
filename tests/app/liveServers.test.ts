import { expect, test, vi } from "vitest";

vi.stubGlobal("__HEELTAP_LIVE__", ["wss://cars.example"]);

test("a server is reachable under the app's own host, or where the build was told so", async () => {
	const { isReachable } = await import("../../src/app/liveServers");
	const app = { protocol: "https:", host: "app.example" };
	expect(isReachable("wss://app.example/live", app)).toBe(true);
	expect(isReachable("wss://app.example:8443/live", app)).toBe(false);
	expect(isReachable("ws://app.example/live", app)).toBe(false);
	expect(isReachable("wss://app.example.evil.example/live", app)).toBe(false);
	expect(isReachable("wss://elsewhere.example/", app)).toBe(false);
	expect(isReachable("ws://localhost:4173/live", { protocol: "http:", host: "localhost:4173" })).toBe(true);
});
