import { afterEach, expect, test } from "vitest";
import { followLaunches } from "../../src/pwa/launch";

afterEach(() => {
	location.hash = "";
});

test("followLaunches goes where a shortcut points and stays put for the plain icon", () => {
	let launch = (_: { targetURL?: string }) => {};
	const launchQueue = {
		setConsumer: (consumer: typeof launch) => {
			launch = consumer;
		},
	};
	followLaunches(Object.assign(window, { launchQueue }));
	launch({ targetURL: "https://host.test/app/#/fill" });
	expect(location.hash).toBe("#/fill");
	launch({ targetURL: "https://host.test/app/" });
	launch({});
	expect(location.hash).toBe("#/fill");
});

test("followLaunches asks nothing of a browser that knows no launch queue", () => {
	expect(() => followLaunches(window)).not.toThrow();
});
