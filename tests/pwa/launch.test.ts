import { afterEach, expect, test } from "vitest";
import { followLaunches, type Launched, takeLaunched } from "../../src/pwa/launch";

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

test("followLaunches keeps what the app was opened with until it is taken, and leads to where it is looked at: one file, or many", () => {
	let launch = (_: { targetURL?: string; files?: readonly Launched[] }) => {};
	const launchQueue = {
		setConsumer: (consumer: typeof launch) => {
			launch = consumer;
		},
	};
	followLaunches(Object.assign(window, { launchQueue }));
	const file = { name: "log.json", getFile: async () => new File(["{}"], "log.json") };
	launch({ targetURL: "https://host.test/app/", files: [file] });
	expect(location.hash).toMatch(/^#\/take\/file\d+$/);
	expect(takeLaunched()).toEqual([file]);
	expect(takeLaunched()).toEqual([]);
	launch({ files: [file, { ...file, name: "other.json" }] });
	expect(location.hash).toMatch(/^#\/reports\/file\d+$/);
	expect(takeLaunched().map(({ name }) => name)).toEqual(["log.json", "other.json"]);
	launch({ targetURL: "https://host.test/app/#/fill", files: [] });
	expect(location.hash).toBe("#/fill");
});

test("followLaunches goes where a tapped warning leads", () => {
	const serviceWorker = new EventTarget();
	Object.defineProperty(navigator, "serviceWorker", { configurable: true, value: serviceWorker });
	followLaunches(window);
	serviceWorker.dispatchEvent(new MessageEvent("message", { data: { type: "GO", hash: "#/cars/b" } }));
	expect(location.hash).toBe("#/cars/b");
	serviceWorker.dispatchEvent(new MessageEvent("message", { data: { type: "other", hash: "#/fill" } }));
	expect(location.hash).toBe("#/cars/b");
	Reflect.deleteProperty(navigator, "serviceWorker");
});

test("followLaunches asks nothing of a browser that knows no launch queue", () => {
	expect(() => followLaunches(window)).not.toThrow();
});
