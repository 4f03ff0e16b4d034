import { screen, waitFor, within } from "@testing-library/preact";
import { expect, test } from "vitest";
import { watchFleet } from "../../src/app/fleetWatch";
import type { KeeperPort } from "../../src/app/keeperPort";
import { keeperOf } from "../../src/keeper/keeper";
import { measuredCar } from "../helpers/reports";
import { openDoubt, wrongStart } from "./doubtScreen";
import { opened } from "./opened";
import { type RenderedApp, renderApp } from "./renderApp";

const now = Date.parse("2026-06-10T12:00:00Z");
const inside = measuredCar("a", "Inside", 0.3, 2, now);
const rich = measuredCar("b", "Rich", 0.45, 5, now);
const silent = measuredCar("c", "Silent", 0.31, 30, now);

async function watched(phone: RenderedApp): Promise<RenderedApp> {
	const keeper = keeperOf(phone.store) as never;
	await watchFleet(
		phone.model,
		keeper,
		() => phone.clock.now,
		// A test may end, and its store be closed, while cars are still being reckoned.
		(error) => opened.has(phone.store) && expect.unreachable(String(error)),
	);
	return phone;
}

test("all cars are listed, what needs attention first, with when each was last heard of", async () => {
	await watched(await renderApp({ at: "#/cars", logs: [inside, silent, rich], now }));
	const list = await screen.findByRole("list", { name: "Cars, what needs attention first" });
	const rows = within(list).getAllByRole("listitem");
	expect(rows.map((row) => within(row).getByRole("button").textContent)).toEqual(["Rich", "Silent", "Inside"]);
	screen.getByText("1 of 3 cars is over a limit, or its entries contradict each other.");
	expect(rows[0]?.textContent).toMatch(
		/Likely outside the window About 45\s%.*Too much ethanol: 20 in 20.*Last entry 5 days ago/,
	);
	expect(rows[1]?.textContent).toContain("Not heard of for 30 days: it may have been filled since");
	expect(rows[2]?.textContent).toMatch(/^Insideon the screen nowInside the window/);
	expect(screen.getByRole("button", { name: "Rich" }).getAttribute("aria-describedby")).toBeTruthy();
});

test("a tap on a car opens its tank", async () => {
	const phone = await watched(await renderApp({ at: "#/cars", logs: [inside, rich], now }));
	await phone.user.click(await screen.findByRole("button", { name: "Rich" }));
	await screen.findByRole("heading", { name: "Boost: no" });
	expect(location.hash).toBe("#/tank");
	expect(phone.model.state().car?.id).toBe("b");
});

test("a warning outside the app leads to the tank of its car, and one of a car that is gone to the list", async () => {
	const phone = await watched(await renderApp({ at: "#/cars/b", logs: [inside, rich], now }));
	await screen.findByRole("heading", { name: "Boost: no" });
	expect(location.hash).toBe("#/tank");
	expect(phone.model.state().car?.id).toBe("b");
	location.hash = "#/cars/gone";
	await screen.findByRole("list", { name: "Cars, what needs attention first" });
	expect(location.hash).toBe("#/cars/gone");
	expect(phone.model.state().car?.id).toBe("b");
});

test("before they are reckoned, cars are said to be coming", async () => {
	await renderApp({ at: "#/cars", logs: [inside, rich], now });
	const row = (await screen.findByRole("button", { name: "Rich" })).closest("li");
	expect(row?.textContent).toContain("Being reckoned…");
	await screen.findByText(/1 car still to be reckoned…/);
});

test("the Tank screen says in a line that another car needs attention, and none where it does not", async () => {
	const phone = await watched(await renderApp({ at: "#/tank", logs: [inside, rich], now }));
	const line = await screen.findByRole("link", { name: "Another car needs attention" });
	expect(line.getAttribute("href")).toBe("#/cars");
	await phone.model.saveSettings({ activeCar: "b" });
	await waitFor(() => expect(screen.queryByRole("link", { name: "Another car needs attention" })).toBeNull());
});

test("from two cars on, the Car screen leads to all of them", async () => {
	await renderApp({ at: "#/car", logs: [inside, rich], now });
	expect((await screen.findByRole("link", { name: "All cars, what needs attention first" })).getAttribute("href")).toBe(
		"#/cars",
	);
});

test("with one car it does not", async () => {
	await renderApp({ at: "#/car", logs: [inside], now });
	await screen.findByRole("link", { name: "Tank report, to print or to send" });
	expect(screen.queryByRole("link", { name: "All cars, what needs attention first" })).toBeNull();
});

test("“I checked” takes a contradiction off badge and list, and leaves it on its own screen", async () => {
	const phone = await watched(await openDoubt(wrongStart));
	expect(phone.model.state().fleet?.over).toEqual(["car"]);
	await phone.user.click(await screen.findByRole("button", { name: "I checked" }));
	await screen.findByText(/^You have gone through it/);
	expect(phone.model.state().fleet?.over).toEqual([]);
	screen.getByRole("heading", { name: "What may be behind it" });
	expect(await phone.store.countEvents("car")).toBe(2);
});

test("Back does not open the car of a warning again", async () => {
	const phone = await watched(await renderApp({ at: "#/log", logs: [inside, rich], now }));
	const before = history.length;
	// The page is sent there: src/pwa/launch.ts.
	location.hash = "#/cars/b";
	await waitFor(() => expect(location.hash).toBe("#/tank"));
	expect(history.length).toBe(before + 1);
	history.back();
	await waitFor(() => expect(location.hash).toBe("#/log"));
	expect(phone.model.state().car?.id).toBe("b");
});

test("where the choice of a car can't be written, no other car's tank is shown for it", async () => {
	const full = new DOMException("full", "QuotaExceededError");
	const wrap = (keeper: KeeperPort): KeeperPort => ({ ...keeper, savePreference: () => Promise.reject(full) });
	const phone = await watched(await renderApp({ at: "#/cars", logs: [inside, rich], now, wrap }));
	await phone.user.click(await screen.findByRole("button", { name: "Rich" }));
	await screen.findByRole("alert");
	expect(location.hash).toBe("#/cars");
});
