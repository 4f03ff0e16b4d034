import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { type Surroundings, watchForUpdates } from "../../src/pwa/update";

const hourMs = 3_600_000;

/** What the module listens to lives as long as the page; here, as long as a test. */
const listening: (() => void)[] = [];

beforeEach(() => {
	vi.useFakeTimers();
	for (const target of [window, document] as EventTarget[]) {
		const add = target.addEventListener.bind(target);
		vi.spyOn(target, "addEventListener").mockImplementation((type, listener) => {
			add(type, listener);
			listening.push(() => target.removeEventListener(type, listener));
		});
	}
});
afterEach(() => {
	for (const stop of listening.splice(0)) stop();
	vi.useRealTimers();
	vi.restoreAllMocks();
	sessionStorage.clear();
});

test("watchForUpdates loads nothing before the first paint", async () => {
	const { env } = aBrowser();
	const watching = watchForUpdates(callbacks(), env);
	expect(env.openWorkbox).not.toHaveBeenCalled();
	await vi.advanceTimersByTimeAsync(50);
	await watching;
	expect(env.openWorkbox).toHaveBeenCalledOnce();
});

test("watchForUpdates does nothing where there are no service workers", async () => {
	const { env } = aBrowser({ supported: false });
	await watchForUpdates(callbacks(), env);
	await vi.advanceTimersByTimeAsync(50);
	expect(env.openWorkbox).not.toHaveBeenCalled();
});

test("watchForUpdates rejects when the browser refuses to register", async () => {
	const { env, workbox } = aBrowser();
	workbox.register.mockRejectedValue(new Error("no space left"));
	const watching = expect(watchForUpdates(callbacks(), env)).rejects.toThrow("no space left");
	await vi.advanceTimersByTimeAsync(50);
	await watching;
});

test("the first version says it is ready, and its taking over the page neither reloads nor offers", async () => {
	const { workbox, env, told } = await watched({ controlled: false });
	workbox.say("controlling");
	workbox.say("activated");
	expect(told.onReady).toHaveBeenCalledOnce();
	expect(told.onWaiting).not.toHaveBeenCalled();
	expect(env.reload).not.toHaveBeenCalled();
});

test("a waiting version is offered once and not applied by itself", async () => {
	const { workbox, env, told } = await watched();
	workbox.say("waiting");
	workbox.say("waiting");
	await vi.advanceTimersByTimeAsync(24 * hourMs);
	expect(told.onWaiting).toHaveBeenCalledOnce();
	expect(told.onReady).not.toHaveBeenCalled();
	expect(workbox.messageSkipWaiting).not.toHaveBeenCalled();
	expect(env.reload).not.toHaveBeenCalled();
});

test("apply lets the waiting version take over and reloads once when it has", async () => {
	const { workbox, env, told } = await watched();
	workbox.say("waiting");
	told.apply();
	expect(workbox.messageSkipWaiting).toHaveBeenCalledOnce();
	expect(env.reload).not.toHaveBeenCalled();
	workbox.say("controlling");
	expect(env.reload).toHaveBeenCalledOnce();
	await vi.advanceTimersByTimeAsync(10_000);
	expect(env.reload).toHaveBeenCalledOnce();
});

test("apply reloads after two seconds when nobody tells that the new version has taken over", async () => {
	const { workbox, env, told } = await watched();
	workbox.say("waiting");
	told.apply();
	await vi.advanceTimersByTimeAsync(1_999);
	expect(env.reload).not.toHaveBeenCalled();
	await vi.advanceTimersByTimeAsync(1);
	expect(env.reload).toHaveBeenCalledOnce();
});

test("a version accepted in another tab is offered here, and apply reloads at once", async () => {
	const { workbox, env, told } = await watched();
	workbox.say("controlling");
	expect(env.reload).not.toHaveBeenCalled();
	expect(told.onWaiting).toHaveBeenCalledOnce();
	told.apply();
	expect(env.reload).toHaveBeenCalledOnce();
});

test("a version that began to install before the library was there is offered too", async () => {
	const installing = Object.assign(new EventTarget(), { state: "installing" });
	const { told } = await watched({ installing });
	installing.state = "installed";
	installing.dispatchEvent(new Event("statechange"));
	expect(told.onWaiting).toHaveBeenCalledOnce();
});

test("a new version is looked for on load, on coming back, on pageshow and every hour", async () => {
	const { workbox } = await watched();
	expect(workbox.update).toHaveBeenCalledTimes(1);
	setVisibility("hidden");
	expect(workbox.update).toHaveBeenCalledTimes(1);
	setVisibility("visible");
	expect(workbox.update).toHaveBeenCalledTimes(2);
	window.dispatchEvent(new Event("pageshow"));
	expect(workbox.update).toHaveBeenCalledTimes(3);
	await vi.advanceTimersByTimeAsync(2 * hourMs);
	expect(workbox.update).toHaveBeenCalledTimes(5);
});

test("looking for a version stays quiet offline and survives a failure", async () => {
	const { workbox, browser } = await watched();
	browser.online = false;
	window.dispatchEvent(new Event("pageshow"));
	expect(workbox.update).toHaveBeenCalledTimes(1);
	browser.online = true;
	workbox.update.mockRejectedValueOnce(new TypeError("failed to fetch"));
	window.dispatchEvent(new Event("pageshow"));
	await vi.advanceTimersByTimeAsync(hourMs);
	expect(workbox.update).toHaveBeenCalledTimes(3);
});

test("a part of the app that is gone reloads the page once, and neither offline nor while something typed would be lost", async () => {
	const { env, browser } = await watched();
	browser.online = false;
	window.dispatchEvent(new Event("vite:preloadError"));
	expect(env.reload).not.toHaveBeenCalled();
	browser.online = true;
	browser.unsaved = true;
	window.dispatchEvent(new Event("vite:preloadError"));
	expect(env.reload).not.toHaveBeenCalled();
	browser.unsaved = false;
	window.dispatchEvent(new Event("vite:preloadError"));
	window.dispatchEvent(new Event("vite:preloadError"));
	expect(env.reload).toHaveBeenCalledOnce();
});

function aBrowser(options: { controlled?: boolean; supported?: boolean; installing?: EventTarget } = {}) {
	const listeners = new Map<string, (event: object) => void>();
	const workbox = {
		addEventListener: vi.fn((type: string, listener: (event: object) => void) => listeners.set(type, listener)),
		register: vi.fn(async () => ({ installing: options.installing ?? null })),
		update: vi.fn(async () => {}),
		messageSkipWaiting: vi.fn(),
		say: (type: string) => listeners.get(type)?.({ type }),
	};
	const browser = { online: true, unsaved: false };
	const env = {
		supported: options.supported ?? true,
		openWorkbox: vi.fn(async () => workbox),
		controlled: () => options.controlled ?? true,
		online: () => browser.online,
		unsaved: () => browser.unsaved,
		reload: vi.fn(),
	};
	return { workbox, browser, env: env as typeof env & Surroundings };
}

function callbacks() {
	const told = {
		onReady: vi.fn(),
		onWaiting: vi.fn((apply: () => void) => {
			told.apply = apply;
		}),
		apply: () => {},
	};
	return told;
}

async function watched(options: Parameters<typeof aBrowser>[0] = {}) {
	const made = aBrowser(options);
	const told = callbacks();
	const watching = watchForUpdates(told, made.env);
	await vi.advanceTimersByTimeAsync(50);
	await watching;
	return { ...made, told };
}

function setVisibility(state: DocumentVisibilityState) {
	vi.spyOn(document, "visibilityState", "get").mockReturnValue(state);
	document.dispatchEvent(new Event("visibilitychange"));
}
