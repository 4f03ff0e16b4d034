import { screen, waitFor, within } from "@testing-library/preact";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import type { KeeperPort } from "../../src/app/keeperPort";
import { parseReport } from "../../src/store/report";
import { aFlash } from "../helpers/logs";
import { measuredCar } from "../helpers/reports";
import { openDoubt, wrongStart } from "./doubtScreen";
import { renderApp } from "./renderApp";

const now = Date.parse("2026-06-10T12:00:00Z");
const log = measuredCar("car", "The grey one", 0.45, 2, now);
const saved: Blob[] = [];

beforeEach(() => {
	URL.createObjectURL = (blob: Blob) => {
		saved.push(blob);
		return "blob:saved";
	};
	URL.revokeObjectURL = () => {};
	HTMLAnchorElement.prototype.click = () => {};
});
afterEach(() => {
	saved.length = 0;
	vi.restoreAllMocks();
});

test("the report tells the estimate, what it means, the calibration, the entries behind it, when, and by which app and model", async () => {
	const events = [...log.events, aFlash({ calibration: "car e30", at: "2026-06-01T10:00:00Z" })];
	await renderApp({ at: "#/report", logs: [{ ...log, events }], now });
	const page = await screen.findByRole("article", { name: "Tank report: The grey one" });
	within(page).getByText(/^Made Jun 10, 2026, .* by Heeltap \d+\.\d+\.\d+, model \d+\.$/);
	within(page).getByText("Boost: no");
	within(page).getByRole("img", { name: /^Twenty equally likely ethanol contents/ });
	const section = (name: string) => within(page).getByRole("region", { name });
	expect(section("In the tank").textContent).toMatch(/Ethanol, most likely about45\s%Nine times in ten/);
	expect(section("Against the window").textContent).toMatch(
		/Too much ethanol \(lean\)20 in 20 \(100\s%\), accepted are 5\s%/,
	);
	expect(section("Warnings").textContent).toMatch(/Too much ethanol: lean under boost\. .*Stay out of boost/);
	expect(section("Calibration in force: “Stage 2, E30”").textContent).toMatch(/Window26–34\s%.*Flashed Jun 1, 2026/);
	const entries = within(section("What it rests on")).getAllByRole("listitem");
	expect(entries[0]?.textContent).toMatch(/The tank was measured: 45\s%→ about 45\s%, 9 in 10: /);
	await waitFor(() => expect(section("What it rests on").textContent).toMatch(/\d+\s% of the fuel now in the tank/));
	within(section("Cautions")).getByText(/Your tuner’s limits come first/);
	within(page).getByText(/^A report shows the tank as the log had it at that time/);
});

test("only the report is printed, and other screens print as they are", async () => {
	const print = vi.spyOn(window, "print").mockImplementation(() => {});
	const { user } = await renderApp({ at: "#/report", logs: [log], now });
	await user.click(await screen.findByRole("button", { name: "Print, or save as a PDF" }));
	expect(print).toHaveBeenCalledTimes(1);
	expect(document.documentElement.dataset.prints).toBe("report");
	await user.click(screen.getByRole("link", { name: "Back to the tank" }));
	await screen.findByRole("heading", { name: "Boost: no" });
	await waitFor(() => expect(document.documentElement.dataset.prints).toBeUndefined());
});

test("the file holds the log and what is said of it, and is no note in the log itself", async () => {
	const { user, store } = await renderApp({ at: "#/report", logs: [log], now });
	await user.click(await screen.findByRole("button", { name: "Save as a file" }));
	await screen.findByText(/^Saved as heeltap-report-the-grey-one-2026-06-10\.json\.$/);
	const report = parseReport(await (saved[0] as Blob).text());
	expect(report).toMatchObject({
		ok: true,
		value: { log: { car: log.car }, note: { says: { calibration: "car e30", grave: false, surprise: null } } },
	});
	if (!report.ok || !report.value.note) throw new Error("it is a report");
	const { made, says } = report.value.note;
	expect(Date.parse(made)).toBe(now);
	expect(says.figures.above).toBeGreaterThan(0.99);
	expect(says.last).toBe("2026-06-08T12:00:00.000Z");
	expect(await store.countEvents("car")).toBe(log.events.length);
});

test("a contradiction is told on the report and in its file", async () => {
	const { user } = await openDoubt(wrongStart, { at: "#/report" });
	const warnings = await screen.findByRole("region", { name: "Warnings" });
	await waitFor(() =>
		expect(warnings.textContent).toMatch(/The last entries contradict each other\. .*Until it is settled/),
	);
	await user.click(screen.getByRole("button", { name: "Save as a file" }));
	await waitFor(() => expect(saved).toHaveLength(1));
	expect(parseReport(await (saved[0] as Blob).text())).toMatchObject({ value: { note: { says: { grave: true } } } });
});

test("where nothing is known, there is nothing to report", async () => {
	await renderApp({ at: "#/report", logs: [{ car: log.car, events: [] }], now });
	await screen.findByText("Nothing is known of this tank yet: there is nothing to report.");
	expect(screen.queryByRole("button", { name: "Save as a file" })).toBeNull();
});

test("a check that failed is said, never printed as “None.”, and no file goes out without it", async () => {
	const wrap = (keeper: KeeperPort): KeeperPort => ({
		...keeper,
		contradiction: () => Promise.reject(new Error("no check")),
	});
	await openDoubt(wrongStart, { at: "#/report", wrap });
	const warnings = await screen.findByRole("region", { name: "Warnings" });
	await waitFor(() =>
		expect(warnings.textContent).toContain("Whether the last entries contradict each other could not be checked."),
	);
	expect(warnings.textContent).not.toContain("None.");
	expect(screen.getByRole("button", { name: "Save as a file" })).toHaveProperty("disabled", true);
	screen.getByText(/^What the report does not know the file can’t say/);
});
