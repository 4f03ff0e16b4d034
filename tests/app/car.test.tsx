import { screen, waitFor, within } from "@testing-library/preact";
import { openDB } from "idb";
import { afterEach, expect, test, vi } from "vitest";
import { demoLog } from "../../src/app/demo";
import { parseLog } from "../../src/store/backup";
import type { Log } from "../../src/store/wire";
import { aCalibration, aCar, aFlash, aStart } from "../helpers/logs";
import { type RenderedApp, renderApp } from "./renderApp";

const now = Date.parse("2026-06-10T15:30:00Z");
const gasoline = aCalibration({ id: "e10", name: "Pump gasoline", calibratedFor: 0.1, window: [0, 0.15] });
const twoCalibrations = aCar({ calibrations: [gasoline, aCalibration()] });
const field = (name: string | RegExp) => screen.getByRole("textbox", { name });
const button = (name: string | RegExp) => screen.getByRole("button", { name });
const item = (name: string) => within(screen.getByRole("listitem", { name }));

async function openCar(logs: readonly Log[] = [{ car: twoCalibrations, events: [aStart()] }]): Promise<RenderedApp> {
	const app = await renderApp({ at: "#/car", now, logs });
	await screen.findByRole("heading", { name: "Calibrations" });
	return app;
}

afterEach(() => {
	vi.restoreAllMocks();
	Reflect.deleteProperty(globalThis, "Notification");
	Reflect.deleteProperty(navigator, "storage");
	Reflect.deleteProperty(navigator, "canShare");
	Reflect.deleteProperty(navigator, "share");
});

test("the list says what each calibration is made for, and which one is flashed", async () => {
	await openCar();
	item("Pump gasoline").getByText("Flashed now");
	item("Stage 2, E30").getByText(/Made for 30.%, window 26–34.%\. Accepted: too much 1 in 20, too little 1 in 20\./);
	expect(item("Pump gasoline").getByRole("link").getAttribute("href")).toBe("#/calibration/e10");
	expect(screen.getByRole("link", { name: "A new calibration" }).getAttribute("href")).toBe("#/calibration");
});

test("another calibration is flashed with one tap, and taken back with another", async () => {
	const { user, events } = await openCar();
	await user.dblClick(item("Stage 2, E30").getByRole("button", { name: "This one is flashed now" }));
	await item("Stage 2, E30").findByText("Flashed now");
	expect(await events()).toHaveLength(2);
	expect((await events())[1]).toMatchObject({ kind: "calibration", calibration: "e30" });

	await user.click(await screen.findByRole("button", { name: "Undo" }));
	await item("Pump gasoline").findByText("Flashed now");
	const [, flash, taken] = await events();
	expect(taken).toMatchObject({ kind: "void", target: flash.id });
});

test("what is flashed last counts, even after a flash from a clock that was ahead", async () => {
	const ahead = aFlash({ at: "2026-07-01T00:00:00Z", calibration: "e10" });
	const { user, events } = await openCar([{ car: twoCalibrations, events: [aStart(), ahead] }]);
	await user.click(item("Stage 2, E30").getByRole("button", { name: "This one is flashed now" }));
	await item("Stage 2, E30").findByText("Flashed now");
	expect((await events()).at(-1)).toMatchObject({ kind: "calibration", calibration: "e30" });
});

test("name, capacity and unit are changed in place; a shown capacity stays exact in another unit", async () => {
	const { user, store } = await openCar();
	await user.clear(field("Name of the car"));
	await user.type(field("Name of the car"), "The old one");
	await user.click(screen.getByRole("radio", { name: "US gallons" }));
	expect(field("Tank capacity, gal")).toHaveProperty("value", "15.322");
	await user.click(button("Save the car"));
	await screen.findByText("The car is saved.");
	expect((await store.cars())[0]).toMatchObject({ name: "The old one", tank: { capacityL: 58 } });
	expect(await store.preference("settings")).toMatchObject({ units: { car: "gal" } });

	await user.clear(field("Tank capacity, gal"));
	await user.type(field("Tank capacity, gal"), "14");
	await user.click(button("Save the car"));
	await waitFor(async () => expect((await store.cars())[0].tank.capacityL).toBeCloseTo(52.996, 3));
});

test("a car without a name, or with a tank that no car has, is not saved", async () => {
	const { user, store } = await openCar();
	await user.clear(field("Name of the car"));
	await user.clear(field("Tank capacity, L"));
	await user.type(field("Tank capacity, L"), "0");
	await user.click(button("Save the car"));
	await screen.findByText(/Give the car a name/);
	screen.getByText(/must lie between 5\.0.L and 200\.0.L: check the number and the unit/);
	await waitFor(() => expect(document.activeElement).toBe(field("Name of the car")));
	expect(await store.cars()).toEqual([twoCalibrations]);
});

test("a capacity that becomes known takes its place, and the doubts that stood in for it go", async () => {
	const tank = { capacityL: 80, gaugeSd: 0.15, clickSd: 0.25 };
	const { user, store } = await openCar([{ car: aCar({ tank }), events: [aStart()] }]);
	expect(button("I don’t know the capacity").getAttribute("aria-pressed")).toBe("true");
	await user.type(field("Tank capacity, L"), "60");
	await user.click(button("Save the car"));
	await screen.findByText("The car is saved.");
	expect((await store.cars())[0].tank).toEqual({ capacityL: 60 });
});

test("one car gives way to another", async () => {
	const other = aCar({ id: "other", name: "The red one" });
	const logs = [
		{ car: twoCalibrations, events: [aStart()] },
		{ car: other, events: [] },
	];
	const { user, store } = await openCar(logs);
	await user.click(screen.getByRole("radio", { name: "The red one" }));
	await screen.findByRole("heading", { level: 1, name: "The red one" });
	expect(await store.preference("settings")).toMatchObject({ activeCar: "other" });
});

test("the display is chosen and remembered", async () => {
	const { user, store } = await openCar();
	await user.click(screen.getByRole("radio", { name: "Sun" }));
	await waitFor(() => expect(document.documentElement.dataset.theme).toBe("sun"));
	await waitFor(async () => expect(await store.preference("settings")).toMatchObject({ theme: "sun" }));
});

test("where the browser has no notifications, the app says so", async () => {
	await openCar();
	screen.getByText(/This browser has no notifications/);
	expect(screen.getByRole("checkbox", { name: /Notify me/ })).toHaveProperty("disabled", true);
});

test("notifications are asked for once they are wanted, and can be turned off", async () => {
	stubNotification("default", "granted");
	const { user, store } = await openCar();
	await user.click(screen.getByRole("checkbox", { name: /Notify me/ }));
	await waitFor(async () => expect(await store.preference("settings")).toMatchObject({ notify: true }));
	await user.click(screen.getByRole("checkbox", { name: /Notify me/ }));
	await waitFor(async () => expect(await store.preference("settings")).toMatchObject({ notify: false }));
});

test("a browser that refuses notifications leaves the setting off", async () => {
	stubNotification("default", "denied");
	const { user, store } = await openCar();
	await user.click(screen.getByRole("checkbox", { name: /Notify me/ }));
	await screen.findByText(/The browser refuses notifications/);
	expect(screen.getByRole("checkbox", { name: /Notify me/ })).toHaveProperty("checked", false);
	expect(await store.preference("settings")).not.toHaveProperty("notify");
});

test("a backup is a file that gives the same log", async () => {
	const saved = stubDownload();
	const { user, store } = await openCar();
	await user.click(button("Save a backup"));
	await screen.findByText(/Saved as heeltap-the-grey-one-2026-06-10\.json/);
	expect(saved.name).toBe("heeltap-the-grey-one-2026-06-10.json");
	const log = parseLog(await textOf(saved.blob));
	expect(log).toEqual({ ok: true, value: { car: twoCalibrations, events: await store.events("car") } });
});

test("a backup is handed on as text where the phone can, and saved where it will not", async () => {
	const saved = stubDownload();
	const shared: File[] = [];
	let refuse = false;
	Object.assign(navigator, {
		canShare: ({ files }: { files: File[] }) => files.every(({ name }) => name.endsWith(".txt")),
		share: async ({ files }: { files: File[] }) => {
			if (refuse) throw new DOMException("no", "NotAllowedError");
			shared.push(...files);
		},
	});
	const { user } = await openCar();
	await user.click(button("Send a backup"));
	await waitFor(() => expect(shared.map(({ name }) => name)).toEqual(["heeltap-the-grey-one-2026-06-10.txt"]));
	expect(parseLog(await textOf(shared[0])).ok).toBe(true);
	refuse = true;
	await user.click(button("Send a backup"));
	await screen.findByText(/would not send it/);
	expect(saved.name).toBe("heeltap-the-grey-one-2026-06-10.json");
});

test("opening a backup tells what was new, and which settings the two have otherwise", async () => {
	const { user, store } = await openCar();
	const other = {
		format: "heeltap-log",
		version: 1,
		car: { ...twoCalibrations, name: "Grey" },
		events: [aStart(), aFlash()],
	};
	const file = new File([JSON.stringify(other)], "log.json", { type: "application/json" });
	await user.upload(screen.getByLabelText("Open a backup"), file);
	await screen.findByText(/joined: 1 new entry, 1 known already\. The two had other settings \(name\)/);
	expect(await store.countEvents("car")).toBe(2);
	expect((await store.cars())[0].name).toBe("The grey one");
});

test("the app tells how many entries there are and whether the browser keeps them", async () => {
	let kept = false;
	const persist = async () => {
		kept = true;
		return kept;
	};
	const storage = { persisted: async () => kept, persist };
	Object.defineProperty(navigator, "storage", { configurable: true, value: storage });
	const { user } = await openCar();
	screen.getByText("On this phone: 1 entry for “The grey one”.");
	await screen.findByText(/The browser has not promised to keep this data/);
	await user.click(button("Ask the browser to keep it"));
	await screen.findByText(/The browser has promised not to clear this data/);
});

test("entries that only a newer app can read are counted, and a backup without them is warned of", async () => {
	const phone = "phone with a newer app";
	const app = await renderApp({ at: "#/car", now, phone, logs: [{ car: twoCalibrations, events: [aStart()] }] });
	const raw = await openDB(phone);
	await raw.put("events", { id: "new", at: "2031-01-01T00:00:00Z", kind: "of the future" }, ["car", "new"]);
	raw.close();
	await app.restart();
	await screen.findByText(/A newer version of the app wrote 1 entry that this one can’t read/);
	screen.getByText("On this phone: 2 entries for “The grey one”.");
});

test("a car is removed after a question that offers a backup", async () => {
	const saved = stubDownload();
	const { user, store } = await openCar();
	await user.click(button(/^Remove “The grey one”/));
	const dialog = within(await screen.findByRole("dialog", { name: "Remove “The grey one”?" }));
	dialog.getByText(/Its one entry and 2 calibrations go from this phone/);
	await user.click(dialog.getByRole("button", { name: "Save a backup first" }));
	await waitFor(() => expect(saved.name).toMatch(/^heeltap-the-grey-one/));
	await user.click(dialog.getByRole("button", { name: "Keep the car" }));
	expect(await store.cars()).toHaveLength(1);

	await user.click(button(/^Remove “The grey one”/));
	await user.click(await screen.findByRole("button", { name: "Remove it for good" }));
	await screen.findByRole("button", { name: "Start the account" });
	expect(await store.cars()).toEqual([]);
	expect(await store.countEvents("car")).toBe(0);
});

test("the invented car goes with one tap and comes back with another", async () => {
	const demo = demoLog(now);
	const short = { car: demo.car, events: demo.events.slice(0, 2) };
	const { user, store } = await openCar([short]);
	await user.click(button("Remove the invented car"));
	await screen.findByRole("button", { name: "Start the account" });
	expect(await store.cars()).toEqual([]);
	await user.click(await screen.findByRole("button", { name: "Undo" }));
	await waitFor(async () => expect(await store.countEvents("invented-1")).toBe(2));
	expect(await store.cars()).toEqual([demo.car]);
	await waitFor(() => expect(location.hash).toBe("#/car"));
});

test("the version and the cautions are to be found here", async () => {
	await openCar();
	screen.getByText(/Heeltap \d+\.\d+\.\d+ keeps the account/);
	screen.getByText(/Nothing leaves this phone/);
	expect(screen.getByText("Cautions").closest("details")?.textContent).toContain("Your tuner’s limits come first");
});

function stubNotification(permission: NotificationPermission, answer: NotificationPermission): void {
	Object.assign(globalThis, { Notification: { permission, requestPermission: async () => answer } });
}

/** jsdom downloads nothing: what would have been is kept here. */
function stubDownload(): { name: string; blob: Blob } {
	const saved = { name: "", blob: new Blob() };
	URL.createObjectURL = (blob) => {
		saved.blob = blob as Blob;
		return "blob:nowhere";
	};
	vi.spyOn(HTMLAnchorElement.prototype, "click").mockImplementation(function (this: HTMLAnchorElement) {
		saved.name = this.download;
	});
	return saved;
}

async function textOf(blob: Blob): Promise<string> {
	return new TextDecoder().decode(await blob.arrayBuffer());
}
