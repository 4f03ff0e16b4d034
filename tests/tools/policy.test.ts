import { expect, test } from "vitest";
import { headers, liveServers } from "../../src/tools/policy";

test("without being told so, the app goes to its own host alone", () => {
	expect(liveServers("")).toEqual([]);
	expect(headers["Content-Security-Policy"]).toContain("connect-src 'self';");
});

test("servers that are named to the build are added, and nothing wider", () => {
	expect(liveServers(" wss://cars.example  wss://b.example:8443 ")).toEqual([
		"wss://cars.example",
		"wss://b.example:8443",
	]);
	const others = [
		"wss:",
		"wss://*",
		"wss://*.example",
		"ws://cars.example",
		"https://cars.example",
		"wss://cars.example/live",
	];
	for (const server of [...others, "*", "wss://cars.example; script-src *", "wss://cars.example:1234567"])
		expect(() => liveServers(server), server).toThrow(/^HEELTAP_LIVE must name servers like/);
});
