import { screen, waitFor, within } from "@testing-library/preact";
import { expect, test, vi } from "vitest";
import type { KeeperPort } from "../../src/app/keeperPort";
import { isAnythingUnsaved } from "../../src/app/unsaved";
import { followLaunches, type Launched } from "../../src/pwa/launch";
import { formatLog } from "../../src/store/backup";
import { measuredCar, reportText } from "../helpers/reports";
import { renderApp } from "./renderApp";

const now = Date.parse("2026-06-10T12:00:00Z");
const made = new Date(now - 3_600_000).toISOString();
const inside = measuredCar("a", "Inside", 0.3, 2, now);
const rich = measuredCar("b", "Rich", 0.45, 5, now);
const weak = measuredCar("c", "Weak", 0.2, 5, now);
const file = (text: string, name: string) => new File([text], name, { type: "text/plain" });

const rowsNow = () =>
	within(screen.getByRole("list", { name: "Reported cars, what needs attention first" })).getAllByRole("listitem");
const names = () => rowsNow().map((row) => within(row).getByRole("heading").textContent);
const checked = () => waitFor(() => expect(screen.queryByText(/still to be held against/)).toBeNull());

test("many files are opened at once, one row a car, what needs attention first; nothing is kept", async () => {
	const phone = await renderApp({ at: "#/reports", now });
	const mangled = reportText(weak, made).slice(0, 500);
	await phone.user.upload(await screen.findByLabelText("Open report files"), [
		file(reportText(inside, made), "inside.txt"),
		file(mangled, "mangled.txt"),
		file(reportText(rich, made), "rich.txt"),
		file(formatLog(weak), "weak.json"),
	]);
	await screen.findByRole("heading", { name: "Inside" });
	await checked();
	expect(names().slice(0, 2).sort()).toEqual(["Rich", "Weak"]);
	expect(names()[2]).toBe("Inside");
	screen.getByText("2 of 3 cars over a limit, or with entries that contradict each other.");
	expect(
		within(screen.getByRole("alert", { name: "Not opened" })).getByText(/^mangled\.txt: line \d+, column \d+: /),
	).toBeTruthy();
	const row = rowsNow().find((each) => each.textContent?.startsWith("Rich"));
	expect(row?.textContent).toMatch(
		/Report made Jun 10, 2026, .* by Heeltap 0\.9\.0, with 3 entries\. Held against its entries/,
	);
	expect(rowsNow().find((each) => each.textContent?.startsWith("Weak"))?.textContent).toContain(
		"A log without a report",
	);
	expect(await phone.store.cars()).toEqual([]);
});

test("“Keep” makes a watched car of one, and the car on the screen stays", async () => {
	const phone = await renderApp({ at: "#/reports", logs: [inside], now });
	await phone.user.upload(await screen.findByLabelText("Open report files"), file(reportText(rich, made), "rich.txt"));
	await phone.user.click(await screen.findByRole("button", { name: "Keep Rich" }));
	await screen.findByText("Kept");
	expect((await phone.events("b")).map(({ id }) => id)).toEqual(rich.events.map(({ id }) => id));
	expect(phone.model.state().car?.id).toBe("a");
	expect(phone.model.state().cars.map(({ name }) => name)).toEqual(["Inside", "Rich"]);
	await checked();
});

test("a car that is kept never takes the place of the one on the screen, even where that was never chosen", async () => {
	const phone = await renderApp({ at: "#/reports", logs: [rich], now });
	await phone.model.saveSettings({ activeCar: null });
	expect(phone.model.state().car?.id).toBe("b");
	// Its id comes first.
	await phone.model.watch({ text: formatLog(inside) });
	expect(phone.model.state().car?.id).toBe("b");
	expect(phone.model.state().settings.activeCar).toBe("b");
});

test("reports are pasted one after the other; of two of one car the later is shown, and both are counted", async () => {
	const phone = await renderApp({ at: "#/reports", now });
	const earlier = reportText(rich, "2026-06-01T12:00:00Z");
	const box = await screen.findByRole("textbox", { name: "Or paste reports" });
	await phone.user.click(box);
	await phone.user.paste(`Anna: ${reportText(rich, made)}\nand before:\n${earlier}`);
	await phone.user.click(screen.getByRole("button", { name: "Open what is pasted" }));
	await screen.findByText(/2 reports of this car are here: this is the newest\./);
	expect(rowsNow()).toHaveLength(1);
	expect(rowsNow()[0]?.textContent).toContain("Report made Jun 10, 2026");
	await checked();
});

test("a report that says other than its entries is called out, and the entries count", async () => {
	const phone = await renderApp({ at: "#/reports", now });
	const figures = { median: 0.3, low: 0.29, high: 0.31, below: 0, above: 0 } as never;
	const lie = reportText(rich, made, { figures });
	await phone.user.upload(await screen.findByLabelText("Open report files"), file(lie, "lie.txt"));
	await screen.findByText(/^The report said|The report said about 30/);
	expect(rowsNow()[0]?.textContent).toMatch(/Likely outside the window About 45\s%/);
});

test("a text without a report is said to be one, and a report that contradicts this phone’s log is not kept", async () => {
	const phone = await renderApp({ at: "#/reports", logs: [rich], now });
	await phone.user.type(await screen.findByRole("textbox", { name: "Or paste reports" }), "hello");
	await phone.user.click(screen.getByRole("button", { name: "Open what is pasted" }));
	await screen.findByText(/^There is no report in this text/);
	const forged = { ...rich, events: rich.events.map((event) => ({ ...event, at: "2026-06-02T12:00:00Z" })) };
	await phone.user.upload(screen.getByLabelText("Open report files"), file(reportText(forged, made), "forged.txt"));
	await screen.findByText(/This car is on this phone already/);
	await phone.user.click(await screen.findByRole("button", { name: "Keep Rich" }));
	await screen.findByText(/^Rich: /);
	expect(await phone.store.countEvents("b")).toBe(3);
	expect((await phone.store.events("b")).map(({ at }) => at).sort()).toEqual(rich.events.map(({ at }) => at).sort());
});

const handed = (name: string, text: string): Launched => ({ name, getFile: async () => file(text, name) });

function launchQueue() {
	let launch = (_: { files: readonly Launched[] }) => {};
	const queue = {
		setConsumer(consumer: typeof launch) {
			launch = consumer;
		},
	};
	followLaunches(Object.assign(window, { launchQueue: queue }));
	return (...files: readonly Launched[]) => launch({ files });
}

test("many files that the app is opened with are opened as if chosen here, more of them too, and none in silence", async () => {
	const launch = launchQueue();
	const lost = { name: "lost.txt", getFile: () => Promise.reject(new DOMException("gone", "NotFoundError")) };
	await renderApp({ at: "#/log", logs: [inside], now });
	launch(handed("rich.txt", reportText(rich, made)), handed("weak.txt", reportText(weak, made)), lost);
	await screen.findByRole("heading", { name: "Rich" });
	await screen.findByRole("heading", { name: "Weak" });
	await screen.findByText(/^lost\.txt: The phone would not give the file/);
	expect(isAnythingUnsaved()).toBe(true);
	launch(handed("inside.txt", reportText(inside, made)), handed("rich.txt", reportText(rich, made)));
	await waitFor(() => expect(rowsNow()).toHaveLength(3));
	await checked();
});

test("many files that another app shared are opened here, and one that was too large is told", async () => {
	const responses = [
		["rich.txt", reportText(rich, made), {}],
		["weak.txt", reportText(weak, made), {}],
		["huge.txt", "", { "x-too-large": "1" }],
	].map(([name, text, more]) => {
		const headers = new Headers({ "x-name": String(name), ...(more as object) });
		return { headers, blob: async () => new Blob([String(text)]) };
	});
	const cache = { keys: async () => responses.map((_, i) => i), match: async (i: number) => responses[i] };
	const caches = { open: async () => cache, delete: vi.fn(async () => true) };
	vi.stubGlobal("caches", caches);
	await renderApp({ at: "#/reports/file1", now });
	await screen.findByRole("heading", { name: "Rich" });
	await screen.findByRole("heading", { name: "Weak" });
	await screen.findByText(/^huge\.txt: The file is over 12 MB/);
	expect(caches.delete).toHaveBeenCalledTimes(1);
	await checked();
	vi.unstubAllGlobals();
});

test("where nothing waits any more, that is said", async () => {
	await renderApp({ at: "#/reports/file1", now });
	await screen.findByText("Handed to the app: no report waits here, or it was opened already: open it again.");
});

test("a check that broke off, and a file that is gone, are told apart from one that takes too long", async () => {
	const wrap = (keeper: KeeperPort): KeeperPort => ({
		...keeper,
		checkReport: () => Promise.reject(new Error("no check")),
	});
	const phone = await renderApp({ at: "#/reports", now, wrap });
	const away = file(reportText(weak, made), "weak.txt");
	const bytes = away.arrayBuffer.bind(away);
	away.arrayBuffer = vi.fn(async () => Promise.reject(new DOMException("gone", "NotFoundError")));
	vi.mocked(away.arrayBuffer).mockImplementationOnce(bytes);
	await phone.user.upload(await screen.findByLabelText("Open report files"), [
		file(reportText(rich, made), "rich.txt"),
		away,
	]);
	await screen.findByText(/It could not be held against its entries: this is what the report says\./);
	await screen.findByText(/The file is no longer where it was: open it again\./);
	expect(screen.queryByText(/would take too long/)).toBeNull();
});
