import { act, screen, waitFor, within } from "@testing-library/preact";
import { afterEach, describe, expect, test, vi } from "vitest";
import { backupNotes, noteBackup, notePostponed } from "../../src/app/backupNotes";
import { lookAtBackups } from "../../src/app/backupState";
import { askOnceToPersist } from "../../src/app/keptData";
import type { LogEvent } from "../../src/domain/event";
import { formatLog } from "../../src/store/backup";
import { aCar, aFill, aStart } from "../helpers/logs";
import { answerQuestion } from "./answerQuestion";
import { type RenderedApp, renderApp } from "./renderApp";

const now = Date.parse("2026-06-30T12:00:00Z");
const day = 86_400_000;
const button = (name: string | RegExp) => screen.getByRole("button", { name });
const iso = (instant: number) => new Date(instant).toISOString();
/** So many fills of one known fuel, a day apart, the last one yesterday: nothing to warn of. */
const fills = (count: number): LogEvent[] =>
	Array.from({ length: count }, (_, i) =>
		aFill({
			id: `f${i}`,
			stop: `s${i}`,
			at: iso(now - (count - i) * day),
			litres: 10,
			product: { id: "x", range: [0.3, 0.3] },
		}),
	);
const start = (contents: number) =>
	aStart({ at: iso(now - 40 * day), contents: { value: contents, sd: 0.001 }, gauge: 0.5 });
const logOf = (count: number, contents = 0.3) => ({ car: aCar(), events: [start(contents), ...fills(count)] });

function offerStorage(storage: Partial<StorageManager>): void {
	Object.defineProperty(navigator, "storage", { configurable: true, value: storage });
}

afterEach(() => {
	vi.restoreAllMocks();
	for (const name of ["storage", "canShare", "share", "standalone"]) Reflect.deleteProperty(navigator, name);
	Reflect.deleteProperty(globalThis, "GestureEvent");
});

async function openTank(count: number, options: Partial<Parameters<typeof renderApp>[0]> = {}): Promise<RenderedApp> {
	offerStorage({ persisted: async () => true });
	const app = await renderApp({ at: "#/tank", now, logs: [logOf(count)], ...options });
	await look(app);
	return app;
}

const look = (app: RenderedApp) => act(() => lookAtBackups(app.model, app.model, app.clock.now));
const line = () => screen.findByRole("region", { name: "Backup" });
const card = () => screen.findByRole("region", { name: "Back up the log" });
async function nothing(): Promise<void> {
	await screen.findByRole("heading", { name: "Last change" });
	// The reminder's code and its look at the form take a moment.
	await new Promise((done) => setTimeout(done, 300));
	expect(screen.queryByRole("region", { name: /^Back ?up/ })).toBeNull();
}

function stubDownload(): string[] {
	const names: string[] = [];
	URL.createObjectURL = () => "blob:log";
	URL.revokeObjectURL = () => {};
	vi.spyOn(HTMLAnchorElement.prototype, "click").mockImplementation(function (this: HTMLAnchorElement) {
		names.push(this.download);
	});
	return names;
}

describe("the Tank screen", () => {
	test("reminds with a line of ten entries, and is quiet once they are saved", async () => {
		const names = stubDownload();
		const { user, model } = await openTank(10);
		within(await line()).getByText("11 entries of the log are in no backup.");
		await user.click(button("Save a backup"));
		await waitFor(() => expect(names).toEqual(["heeltap-the-grey-one-2026-06-30.json"]));
		await nothing();
		expect((await backupNotes(model, "car")).last).toMatchObject({ entries: 11, how: "saved" });
	});

	test("reminds with a card of thirty, which “Not now” puts off for ten more", async () => {
		const app = await openTank(29);
		within(await card()).getByText(
			/30 entries of the log are in no backup\. What is in no backup is lost with the phone/,
		);
		await app.user.click(button("Not now"));
		await nothing();
		await app.model.append(fills(40).slice(30, 39));
		await look(app);
		await nothing();
		await app.model.append(fills(40).slice(39));
		await look(app);
		await card();
	});

	test("reminds with a card of fifteen where the browser has promised nothing, and says why", async () => {
		const app = await openTank(14);
		await line();
		offerStorage({ persisted: async () => false });
		await look(app);
		within(await card()).getByText(/the browser may clear it when space runs short/);
	});

	test("puts warnings of the fuel first: then the card is a line below them", async () => {
		const lean = { car: aCar(), events: [start(0.6), ...fills(29)].slice(0, 30) };
		await openTank(0, {
			logs: [{ ...lean, events: lean.events.map((event) => ({ ...event, product: e85 }) as never) }],
		});
		const warning = await screen.findByRole("alert", { name: /Too much ethanol/ });
		const reminder = await line();
		expect(warning.compareDocumentPosition(reminder) & Node.DOCUMENT_POSITION_FOLLOWING).toBeTruthy();
		expect(screen.queryByRole("region", { name: "Back up the log" })).toBeNull();
	});

	test("does not remind while a fill is half typed, or was poured a moment ago", async () => {
		const app = await openTank(29, { now: now - day + 10 * 60_000 });
		await nothing();
		app.clock.now = now;
		await app.model.saveDraft("car/fill", {
			stop: "s",
			unit: "L",
			at: null,
			gauge: null,
			triedAt: null,
			place: null,
			instead: [],
			pours: [{ id: "p", product: e85, typed: "1", toClick: false }],
		});
		location.hash = "#/car";
		await screen.findByRole("heading", { name: "Backup" });
		location.hash = "#/tank";
		await nothing();
		await app.model.dropDraft("car/fill");
		location.hash = "#/car";
		await screen.findByRole("heading", { name: "Backup" });
		location.hash = "#/tank";
		await card();
	});

	test("does not remind while part of the log is missing, nor of an invented car", async () => {
		const app = await openTank(29);
		await card();
		act(() => app.model.damaged({ cars: [], copied: true }));
		await nothing();
		const invented = aCar({ id: "invented-9" });
		await app.store.merge({ ...logOf(16), car: invented });
		act(() => app.model.damaged(null));
		await app.model.saveSettings({ activeCar: invented.id });
		await waitFor(() => expect(app.model.state().account?.car.id).toBe(invented.id));
		await look(app);
		await nothing();
	});
});

describe("the Car screen", () => {
	test("tells at once when the last backup was made, and how many entries came after it", async () => {
		stubDownload();
		const app = await openTank(4, { at: "#/car" });
		await screen.findByText("No backup has left this phone: 5 entries are here only.");
		await app.user.click(button("Save a backup"));
		await screen.findByText("Last backup: saved within the last hour, with 5 entries. Nothing was added since.");
		app.clock.now += 2 * day;
		await app.model.append([aFill({ id: "more", stop: "more", at: iso(now + day) })]);
		await screen.findByText("Last backup: saved 2 days ago, with 5 entries. 1 entry since then is here only.");
	});

	test("counts a backup that was sent, and not one that the driver did not send after all", async () => {
		let answer: () => Promise<void> = () => Promise.reject(new DOMException("stopped", "AbortError"));
		Object.assign(navigator, { canShare: () => true, share: () => answer() });
		const app = await openTank(4, { at: "#/car" });
		await app.user.click(await screen.findByRole("button", { name: "Send a backup" }));
		await screen.findByText(/No backup has left this phone/);
		expect((await backupNotes(app.model, "car")).last).toBeNull();
		answer = async () => {};
		await app.user.click(button("Send a backup"));
		await screen.findByText(/Last backup: sent within the last hour, with 5 entries/);
	});

	test("counts a file that was opened as far as it goes, and keeps a fuller one in mind", async () => {
		const app = await openTank(4, { at: "#/car" });
		const { car, events } = logOf(4);
		const file = (count: number) =>
			new File([formatLog({ car, events: events.slice(0, count) })], "log.json", { type: "application/json" });
		await app.user.upload(screen.getByLabelText("Open a backup"), file(3));
		await screen.findByText(/a file that was opened here within the last hour, with 3 entries\. 2 entries since/);
		await noteBackup(app.model, "car", { at: iso(now), entries: 5, how: "sent" });
		await app.user.upload(screen.getByLabelText("Open a backup"), file(4));
		await screen.findByText(/joined: 0 new entries, 4 known already/);
		expect((await backupNotes(app.model, "car")).last).toMatchObject({ entries: 5, how: "sent" });
	});

	test("forgets all of it with the car", async () => {
		const app = await openTank(4, { at: "#/car" });
		await noteBackup(app.model, "car", { at: iso(now), entries: 5, how: "sent" });
		await notePostponed(app.model, "car", { at: iso(now), entries: 5 });
		await app.model.removeCar("car");
		expect(await backupNotes(app.model, "car")).toEqual({ last: null, postponed: null });
	});

	test("says what Safari’s engine does to a tab, and not to an app on the home screen", async () => {
		Object.assign(globalThis, { GestureEvent: class {} });
		const app = await openTank(4, { at: "#/car" });
		await screen.findByText(/deletes what a page has stored after seven days of use without a visit/);
		Object.assign(navigator, { standalone: true });
		location.hash = "#/log";
		await waitFor(() => expect(screen.queryByText(/seven days/)).toBeNull());
		location.hash = "#/car";
		await screen.findByText(/The browser has promised not to clear this data by itself/);
		expect(screen.queryByText(/seven days/)).toBeNull();
		expect(app.model.state().failure).toBeNull();
	});
});

describe("askOnceToPersist()", () => {
	test("asks once in a tab, and once more where the app is installed", async () => {
		const persist = vi.fn(async () => false);
		offerStorage({ persisted: async () => false, persist });
		const { model } = await renderApp();
		for (let save = 0; save < 3; save++) await askOnceToPersist(model);
		expect(persist).toHaveBeenCalledTimes(1);
		Object.assign(navigator, { standalone: true });
		for (let save = 0; save < 3; save++) await askOnceToPersist(model);
		expect(persist).toHaveBeenCalledTimes(2);
	});

	test("is called with the first saved fill, and not before", async () => {
		const persist = vi.fn(async () => true);
		offerStorage({ persisted: async () => false, persist });
		const app = await renderApp({ at: "#/fill", now, logs: [{ car: aCar(), events: [start(0.3)] }] });
		const { user } = app;
		await user.click(await screen.findByRole("button", { name: "5" }));
		expect(persist).not.toHaveBeenCalled();
		await user.click(button(/^Save 5/));
		await answerQuestion(app);
		await waitFor(() => expect(persist).toHaveBeenCalledTimes(1));
	});
});

const e85 = { id: "flex-51-83", range: [0.51, 0.83] };
