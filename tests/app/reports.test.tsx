import { screen, waitFor, within } from "@testing-library/preact";
import { expect, test } from "vitest";
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
